"""When life intervenes: the past is fact, the rest stays near, what cannot be saved is said."""

from __future__ import annotations

from dataclasses import replace

import pytest

from entremetry.errors import ProblemError
from entremetry.planning import (
    Delay,
    Done,
    FactKind,
    History,
    Person,
    Plan,
    Running,
    Status,
    plan,
    replan,
    validate,
)
from unit.planning.small_kitchen import DAY, HOUR, QUICK, alone, dome, session, task


@pytest.fixture(scope="module")
def before() -> Plan:
    """The plan of the dome."""
    found = plan(dome(), limits=QUICK).plan
    assert found is not None
    return found


def as_planned(before: Plan, now: int) -> History:
    """A history in which everything went by the plan."""
    done = [p for p in before.placed if p.end <= now]
    running = [p for p in before.placed if p.start < now < p.end]
    return History(
        now=now,
        done=tuple(Done(task=p.task, start=p.start, end=p.end) for p in done),
        running=tuple(Running(task=p.task, start=p.start) for p in running),
    )


@pytest.mark.parametrize("now", [0, 18 * HOUR, 19 * HOUR + 7, DAY, DAY + 10 * HOUR])
def test_nothing_moves_when_all_goes_by_the_plan(before: Plan, now: int) -> None:
    result = replan(dome(), before, as_planned(before, now), limits=QUICK)
    assert result.status is Status.PLANNED and result.proved_optimal
    assert result.goals[0].value == 0


def test_a_slow_freezer_moves_what_comes_after_it(before: Plan) -> None:
    insert = before.at("insert")
    now = insert.start + 60
    slow = dome().with_tasks(replace(dome().task("insert"), waiting=200))
    result = replan(slow, before, as_planned(before, now), limits=QUICK)
    assert result.plan is not None
    assert result.plan.at("insert").end >= insert.start + 20 + 200 + 5
    assert validate(result.problem, result.plan, as_planned(before, now)) == ()


def test_what_has_to_be_made_again_is_planned_again(before: Plan) -> None:
    mousse = before.at("mousse")
    history = as_planned(before, mousse.end)
    again = replace(history, done=tuple(d for d in history.done if d.task != "mousse"))
    result = replan(dome(), before, again, limits=QUICK)
    assert result.plan is not None and result.plan.at("mousse").start >= mousse.end


def test_the_past_is_fact_even_where_it_broke_the_rules() -> None:
    """A first version posted hours and lengths on the past too, and could not go on at all."""
    free = Person(id="cook", sessions=(session("late", 10, 20),))
    delay = Delay(before="a", after="b", least=30)
    problem = replace(
        alone(task("a", 20), task("b", 20), task("c", 20), delays=(delay,)), people=(free,)
    )
    first = plan(problem, limits=QUICK).plan
    assert first is not None
    history = History(
        now=700, done=(Done(task="a", start=1, end=90), Done(task="b", start=60, end=61))
    )
    result = replan(problem, first, history, limits=QUICK)
    assert result.status is Status.PLANNED and result.plan is not None
    assert (result.plan.at("a").start, result.plan.at("b").end) == (1, 61)


def test_what_cannot_be_saved_is_said() -> None:
    quick = Delay(before="out", after="glaze", most=3)
    problem = alone(task("out", 5), task("glaze", 10), delays=(quick,))
    first = plan(problem, limits=QUICK).plan
    assert first is not None
    history = History(now=500, done=(Done(task="out", start=400, end=405),))
    result = replan(problem, first, history, limits=QUICK)
    assert result.status is Status.BENT and not result.feasible
    (change,) = result.changes
    assert change.fact.kind is FactKind.AT_MOST
    assert change.by == 500 - 405 - 3


def test_a_running_wait_that_overran_keeps_an_open_end() -> None:
    problem = alone(
        task("freeze", 5, 60), task("out", 5), delays=(Delay(before="freeze", after="out"),)
    )
    first = plan(problem, limits=QUICK).plan
    assert first is not None
    history = History(now=300, running=(Running(task="freeze", start=10),))
    result = replan(problem, first, history, limits=QUICK)
    assert result.plan is not None and result.plan.at("freeze").end >= 300


def test_hands_that_are_busy_now_are_not_asked_for_more() -> None:
    problem = alone(task("stir", 60), task("other", 30))
    first = plan(problem, limits=QUICK).plan
    assert first is not None
    history = History(now=20, running=(Running(task="stir", start=0),))
    result = replan(problem, first, history, limits=QUICK)
    assert result.plan is not None and result.plan.at("other").start >= 60


@pytest.mark.parametrize(
    "history",
    [
        History(now=10, done=(Done(task="nothing", start=0, end=5),)),
        History(now=10, done=(Done(task="a", start=0, end=15),)),
        History(now=10, done=(Done(task="a", start=9, end=5),)),
        History(now=10, running=(Running(task="a", start=15),)),
        History(now=10, running=(Running(task="a", start=5, person="nobody"),)),
        History(
            now=10, done=(Done(task="a", start=0, end=5),), running=(Running(task="a", start=1),)
        ),
    ],
)
def test_a_history_that_cannot_be_is_refused(history: History) -> None:
    problem = alone(task("a", 5))
    with pytest.raises(ProblemError):
        replan(problem, Plan(placed=()), history, limits=QUICK)
