"""Planning keeps to its time, tells of progress, and can be stopped; and known traps stay shut."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from entremetry.errors import SolverError
from entremetry.planning import (
    Delay,
    Goal,
    GoalReport,
    Limits,
    Need,
    Person,
    Placed,
    Plan,
    Problem,
    Progress,
    Resource,
    Result,
    Status,
    plan,
)
from entremetry.planning import __file__ as front
from entremetry.planning.checked import checked
from unit.planning.small_kitchen import DAY, QUICK, alone, dome, session, task


def many(count: int) -> Problem:
    """So many tasks in chains of four, with an oven and a freezer, over half a year."""
    tasks = [
        task(f"t{i}", 3, 20 * (i % 4), needs=(Need(resource="oven"),) if i % 4 == 2 else ())
        for i in range(count)
    ]
    delays = [Delay(before=f"t{i}", after=f"t{i + 1}") for i in range(count - 1) if i % 4 < 3]
    days = tuple(session(f"d{day}", 24 * day + 9, 24 * day + 18) for day in range(20))
    return alone(
        *tasks,
        delays=tuple(delays),
        people=(Person(id="cook", sessions=days),),
        resources=(Resource(id="oven", capacity=2),),
        end=21 * DAY,
    )


def test_two_thousand_tasks_are_answered_within_the_limit() -> None:
    seen: list[Progress] = []
    limits = Limits(seconds=6.0, explaining=1.0, workers=1, progress=seen.append)
    result = plan(many(2000), goals=(Goal.SESSIONS,), limits=limits)
    assert result.status in {Status.PLANNED, Status.UNDECIDED}
    assert result.plan is None or len(result.plan.placed) == 2000


def test_two_thousand_tasks_in_a_circle_are_refused_by_name() -> None:
    problem = many(2000)
    back = Delay(before="t1999", after="t1996")
    result = plan(replace(problem, delays=(*problem.delays, back)), limits=QUICK)
    assert result.status is Status.IMPOSSIBLE
    named = {name for fact in result.conflicts[0].facts for name in fact.subjects}
    assert named == {"t1996", "t1997", "t1998", "t1999"}


def test_progress_is_told_for_each_goal() -> None:
    seen: list[Progress] = []
    plan(dome(), limits=replace(QUICK, progress=seen.append))
    assert seen[0].goal is None
    assert {told.goal for told in seen} >= {Goal.SESSIONS, Goal.FRESHNESS}
    assert all(told.bound <= told.value and told.seconds > 0 for told in seen)


def test_cancelling_keeps_the_best_plan_so_far() -> None:
    seen: list[Progress] = []
    limits = Limits(seconds=30.0, workers=1, progress=seen.append, cancelled=lambda: bool(seen))
    result = plan(hard(), goals=(Goal.FRESHNESS, Goal.SPREAD), limits=limits)
    assert result.cancelled and result.plan is not None
    assert not result.proved_optimal


def hard() -> Problem:
    """Twenty-four tasks whose best order nobody proves in a few seconds."""
    needs = [(Need(resource=f"m{i % 3}"),) for i in range(24)]
    tasks = [
        task(f"t{i}", 5 + i % 7, 10 + i % 5, waiting_most=500, needs=need, freshness=1 + i % 4)
        for i, need in enumerate(needs)
    ]
    return alone(*tasks, resources=tuple(Resource(id=f"m{i}") for i in range(3)), end=2 * DAY)


def test_a_gap_is_never_called_a_proof() -> None:
    """The solver calls a plan optimal that is within a permitted gap."""
    near = GoalReport(goal=Goal.BENCH, value=1000, bound=995, seconds=1.0)
    sure = replace(near, bound=1000)
    result = Result(status=Status.PLANNED, problem=dome(), asked=(Goal.BENCH,), goals=(near,))
    assert not near.proved and near.gap == 0.005 and not result.proved_optimal
    assert replace(result, goals=(sure,)).proved_optimal
    assert not replace(result, goals=()).proved_optimal
    assert not replace(result, goals=(sure,), status=Status.BENT).proved_optimal


def test_a_wrong_plan_of_the_solver_is_not_let_out() -> None:
    wrong = Plan(placed=(Placed(task="a", start=0, end=3),))
    problem = alone(task("a", 0, 5))
    with pytest.raises(SolverError, match="breaks 1 facts"):
        checked(Result(status=Status.PLANNED, problem=problem, plan=wrong))


def test_a_hint_is_never_repaired() -> None:
    """The repair of hints ends the whole process (OR-tools issue 5025)."""
    texts = [path.read_text(encoding="utf-8") for path in Path(front).parent.glob("*.py")]
    assert not any("repair_hint" in text for text in texts)


def test_the_presence_of_a_session_never_counts_below_nothing() -> None:
    """With the last end before the first start, the bound of the idle time went negative."""
    result = plan(dome(), goals=(Goal.SESSIONS, Goal.BENCH), limits=QUICK)
    assert result.goals[1].bound >= sum(t.hands_on + t.closing for t in dome().tasks)


def test_every_goal_keeps_a_plan_when_time_is_short() -> None:
    """Without hints, a later goal once lost the plan that the one before had found."""
    result = plan(hard(), limits=Limits(seconds=2.0, workers=1))
    assert result.plan is not None and len(result.plan.placed) == 24
    assert len(result.goals) >= 2


def test_importing_the_room_loads_no_solver() -> None:
    import subprocess
    import sys

    code = "import sys, entremetry.planning; sys.exit('ortools' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
