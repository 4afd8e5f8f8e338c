"""Bounds found among few tasks hold for all; drawn-in sessions and pieces lead to real plans."""

from __future__ import annotations

from dataclasses import replace

from entremetry.planning import (
    Delay,
    Goal,
    Merge,
    Person,
    Problem,
    Service,
    Status,
    plan,
)
from entremetry.planning.building import built
from entremetry.planning.closure import closure
from entremetry.planning.counting import hand_windows
from entremetry.planning.drawing_in import DrawnIn, presences
from entremetry.planning.freshest import tied
from entremetry.planning.goals import Goals
from entremetry.planning.leeway import Leeway
from entremetry.planning.pieces import InPieces, together
from entremetry.planning.search import Search
from entremetry.planning.staged import Staged
from entremetry.planning.validating import validate
from unit.planning.small_kitchen import QUICK, SERVED, alone, dome, session, task

FRESH = (Goal.FRESHNESS,)


def domes(number: int) -> Problem:
    """The small kitchen with so many moulds and domes, all served at once."""
    one = dome()
    names = [f"{i}." for i in range(number)]
    return replace(
        one,
        resources=tuple(replace(kind, capacity=2 * number) for kind in one.resources),
        tasks=tuple(replace(t, id=name + t.id) for name in names for t in one.tasks),
        delays=tuple(
            replace(d, before=name + d.before, after=name + d.after)
            for name in names
            for d in one.delays
        ),
        services=tuple(Service(task=f"{name}serve", at=SERVED) for name in names),
    )


def staged(problem: Problem) -> Staged:
    """The goals of a problem after its first plan, before any goal."""
    search, model = Search(limits=QUICK), built(problem, Leeway())
    answer = search.run(model.cp, None, 5.0)
    goals = Goals(model=model, windows=hand_windows(problem, closure(problem)))
    return Staged(
        model=model, search=search, goals=goals, plan=model.plan(answer.solver), answer=answer
    )


def test_only_what_longest_delays_tie_to_ageing_tasks_bounds_freshness() -> None:
    few = tied(dome(), closure(dome()))
    assert {one.id for one in few.tasks} == {"mousse", "fill", "glaze", "thaw", "serve"}
    assert [one.task for one in few.services] == ["serve"]


def test_few_tasks_are_never_less_fresh_than_all_of_them() -> None:
    for problem in (dome(), domes(2)):
        few = plan(tied(problem, closure(problem)), goals=FRESH, limits=QUICK).goals[0]
        whole = plan(problem, goals=FRESH, limits=QUICK).goals[0]
        assert few.proved and whole.proved
        assert few.value <= whole.value


def test_tied_tasks_keep_the_window_that_the_others_leave_them() -> None:
    problem = alone(
        task("first", 30),
        task("last", 10, freshness=1),
        delays=(Delay(before="first", after="last", least=100),),
    )
    few = tied(problem, closure(problem))
    assert [(one.id, one.earliest) for one in few.tasks] == [("last", 130)]


def test_freshness_with_all_goals_is_as_good_as_trying_it_at_once() -> None:
    """Idle time first, then freshness: one weighted sum gives the same."""
    problem = domes(2)
    result = plan(problem, limits=QUICK)
    model = built(problem, Leeway())
    goals, search = Goals(model=model), Search(limits=QUICK)
    bench, fresh = goals.begin(Goal.BENCH), goals.begin(Goal.FRESHNESS)
    model.cp.add(goals.begin(Goal.SESSIONS) <= result.goals[0].value)
    model.cp.add(bench <= result.goals[1].value)
    model.cp.minimize(fresh)
    answer = search.run(model.cp, Goal.FRESHNESS, 10.0)
    assert result.goals[2].bound <= answer.value
    assert not result.goals[2].proved or result.goals[2].value == answer.value


def test_sessions_are_drawn_in_without_moving_what_ages() -> None:
    before = staged(domes(2))
    fresh = {p.task: p.end for p in before.plan.placed if p.task.endswith("fill")}
    drawn = DrawnIn(staged=before)
    longest = max(end - start for start, end in presences(before).values())
    drawn.shorten(3.0)
    assert not validate(domes(2), before.plan)
    assert max(end - start for start, end in presences(before).values()) <= longest
    assert {p.task: p.end for p in before.plan.placed if p.task.endswith("fill")} == fresh
    assert drawn.most is None or drawn.most < longest


def test_work_in_pieces_is_a_plan_of_the_whole() -> None:
    always = Person(id="cook", sessions=(session("long", 0, 43),))
    problem = replace(domes(12), people=(always,))
    model, search = built(problem, Leeway()), Search(limits=QUICK)
    pieces = InPieces(model=model, search=search, windows=closure(problem))
    assert len(list(pieces.pieces())) == 2
    answer = pieces.answer(10.0)
    assert answer is not None
    assert validate(problem, model.plan(answer.solver)) == ()


def test_what_belongs_together_stays_in_one_piece() -> None:
    assert sorted(map(len, together(domes(3)))) == [1, 1, 1, 1, 1, 1, 6, 6, 6]
    merged = alone(
        task("a", 5), task("b", 5), merges=(Merge(tasks=("a", "b"), together=task("ab", 6)),)
    )
    assert list(together(merged)) == [{"a", "b", "ab"}]


def test_merged_tasks_are_planned_for_all_goals() -> None:
    problem = alone(
        task("a", 5, freshness=1),
        task("b", 5, freshness=1),
        task("c", 20),
        merges=(Merge(tasks=("a", "b"), together=task("ab", 6)),),
        delays=(Delay(before="c", after="a"),),
    )
    result = plan(problem, limits=QUICK)
    assert result.status is Status.PLANNED and result.proved_optimal
    assert result.plan is not None and result.plan.at("a").within == "ab"
