"""Plans keep what they have to, and become good at one goal after the other."""

from __future__ import annotations

from dataclasses import replace

import pytest

from entremetry.planning import (
    Delay,
    Goal,
    Merge,
    Need,
    Part,
    Person,
    Resource,
    Side,
    Span,
    Status,
    plan,
    validate,
)
from entremetry.planning.result import COOK as GOALS
from unit.planning.small_kitchen import COOK, DAY, QUICK, SERVED, alone, dome, session, task


def test_a_small_kitchen_is_planned_and_proved() -> None:
    result = plan(dome(), limits=QUICK)
    assert result.status is Status.PLANNED and result.plan is not None
    assert tuple(report.goal for report in result.goals) == GOALS
    assert result.plan.at("serve").end == SERVED
    assert validate(dome(), result.plan) == ()
    assert 0 < result.first_plan <= result.seconds


def test_hands_work_in_sessions_while_waits_run_through_the_night() -> None:
    result = plan(dome(), limits=QUICK)
    assert result.plan is not None
    fill = result.plan.at("fill")
    free = [w for s in COOK.sessions for w in s.windows]
    assert [h.part for h in fill.hands] == [Part.OPENING, Part.CLOSING]
    for hands in (h for placed in result.plan.placed for h in placed.hands):
        assert any(w.start <= hands.start and hands.end <= w.end for w in free)
    assert fill.start < DAY < fill.end


def test_the_fewest_sessions_are_used() -> None:
    one = session("one", 8, 10)
    other = session("other", 14, 16)
    problem = replace(
        alone(task("a", 50), task("b", 50)), people=(Person(id="cook", sessions=(one, other)),)
    )
    result = plan(problem, goals=(Goal.SESSIONS,), limits=QUICK)
    assert (result.goals[0].value, result.proved_optimal) == (1, True)


def test_less_idle_waiting_at_the_bench_comes_before_freshness() -> None:
    problem = alone(
        task("a", 30), task("b", 30, freshness=1), delays=(Delay(before="a", after="b"),)
    )
    result = plan(problem, limits=QUICK)
    bench = next(report for report in result.goals if report.goal is Goal.BENCH)
    assert bench.value == 60
    fresh = next(report for report in result.goals if report.goal is Goal.FRESHNESS)
    assert (fresh.value, fresh.proved) == (0, True)


def test_work_is_spread_over_the_sessions_that_are_needed_anyway() -> None:
    sessions = (session("one", 8, 10), session("other", 14, 16))
    tasks = [task(f"t{number}", 35) for number in range(4)]
    problem = replace(alone(*tasks), people=(Person(id="cook", sessions=sessions),))
    result = plan(problem, goals=(Goal.SESSIONS, Goal.SPREAD), limits=QUICK)
    assert [report.value for report in result.goals] == [2, 70]


def test_two_temperatures_never_share_an_oven_and_one_does() -> None:
    def baked(first: str, second: str) -> int:
        needs = [
            (Need(resource="oven", part=Part.WAITING, state=state),) for state in (first, second)
        ]
        problem = alone(
            task("a", 0, 30, needs=needs[0]),
            task("b", 0, 30, needs=needs[1]),
            resources=(Resource(id="oven", capacity=2, changeover=15),),
        )
        return plan(problem, goals=(Goal.FINISH,), limits=QUICK).goals[0].value

    assert baked("180", "180") == 30
    assert baked("150", "180") == 75


def test_a_bowl_is_washed_between_two_uses() -> None:
    needs = (Need(resource="bowl"),)
    problem = alone(
        task("a", 0, 20, needs=needs),
        task("b", 0, 20, needs=needs),
        resources=(Resource(id="bowl", turnover=7),),
    )
    assert plan(problem, goals=(Goal.FINISH,), limits=QUICK).goals[0].value == 47


def test_a_freezer_takes_only_so_much_a_day() -> None:
    warm = (Need(resource="load", amount=3, lasting=DAY),)
    problem = alone(
        task("a", 0, 10, needs=warm),
        task("b", 0, 10, needs=warm),
        resources=(Resource(id="load", capacity=5),),
        end=3 * DAY,
    )
    assert plan(problem, goals=(Goal.FINISH,), limits=QUICK).goals[0].value == DAY + 10


def test_a_mould_is_taken_from_filling_to_unmoulding() -> None:
    tasks = [task(name, minutes) for name, minutes in (("fill", 10), ("out", 5), ("other", 10))]
    problem = alone(
        *tasks,
        delays=(Delay(before="fill", after="out", least=100),),
        spans=(
            Span(id="one", resource="mould", first="fill", last="out"),
            Span(id="two", resource="mould", first="other", last="other"),
        ),
        resources=(Resource(id="mould"),),
    )
    result = plan(problem, goals=(Goal.FINISH,), limits=QUICK)
    assert result.plan is not None and result.goals[0].value == 125
    other, fill, out = (result.plan.at(name) for name in ("other", "fill", "out"))
    assert other.end <= fill.start or other.start >= out.end


def test_work_is_shared_among_people_who_may_do_it() -> None:
    free = (session("day", 0, 2),)
    people = (Person(id="ann", sessions=free), Person(id="ben", sessions=free))
    problem = alone(task("a", 60), task("b", 60), task("c", 30, by=("ben",)), people=people)
    result = plan(problem, goals=(Goal.FINISH,), limits=QUICK)
    assert result.plan is not None and result.goals[0].value == 90
    assert {hands.person for hands in result.plan.at("c").hands} == {"ben"}


def test_equal_steps_are_merged_when_that_saves_time() -> None:
    syrup = task("syrup", 12)
    problem = alone(
        task("one", 10),
        task("other", 10),
        merges=(Merge(tasks=("one", "other"), together=syrup),),
    )
    result = plan(problem, goals=(Goal.BENCH,), limits=QUICK)
    assert result.plan is not None and result.goals[0].value == 12
    assert result.plan.at("one").within == "syrup" and not result.plan.at("one").hands


def test_steps_stay_apart_when_merging_saves_nothing() -> None:
    together = task("syrup", 25)
    merge = Merge(tasks=("one", "other"), together=together)
    problem = alone(task("one", 10), task("other", 10), merges=(merge,))
    result = plan(problem, goals=(Goal.BENCH,), limits=QUICK)
    assert result.plan is not None and result.goals[0].value == 20
    assert not result.plan.holds("syrup")


def test_a_delay_may_run_between_any_ends() -> None:
    delay = Delay(before="a", after="b", least=5, most=5, leaving=Side.START, reaching=Side.END)
    problem = alone(task("a", 0, 30), task("b", 0, 3), delays=(delay,))
    result = plan(problem, goals=(Goal.FINISH,), limits=QUICK)
    assert result.plan is not None
    assert result.plan.at("b").end - result.plan.at("a").start == 5


@pytest.mark.parametrize("goals", [(), (Goal.FINISH,)])
def test_an_empty_problem_has_an_empty_plan(goals: tuple[Goal, ...]) -> None:
    result = plan(alone(), goals=goals, limits=QUICK)
    assert result.plan is not None and result.plan.placed == ()
    assert result.proved_optimal
