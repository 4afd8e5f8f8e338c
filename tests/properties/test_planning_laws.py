"""Laws of every plan, on kitchens drawn at random."""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from entremetry.planning import (
    Delay,
    Goal,
    Limits,
    Need,
    Problem,
    Resource,
    Side,
    Status,
    Task,
    plan,
    replan,
    validate,
)
from properties.strategies_planning import END, history, kitchen, kitchens

QUICK = Limits(seconds=3.0, explaining=0.4, workers=1)
FEW = settings(max_examples=25)
MANY = settings(max_examples=200)


@MANY
@given(kitchens)
def test_every_plan_keeps_hours_delays_and_capacities(problem: Problem) -> None:
    result = plan(problem, goals=(Goal.SESSIONS,), limits=QUICK)
    assert result.status in {Status.PLANNED, Status.IMPOSSIBLE}
    if result.plan is not None:
        assert validate(problem, result.plan) == ()
    for way in result.alternatives:
        assert validate(way.problem, way.plan) == ()
        assert way.changes and way.problem != problem


@FEW
@given(kitchens)
def test_all_goals_together_keep_what_the_first_ones_reached(problem: Problem) -> None:
    first = plan(problem, goals=(Goal.SESSIONS,), limits=QUICK)
    result = plan(problem, limits=QUICK)
    assert result.status is first.status
    if result.goals and result.goals[0].proved and first.proved_optimal:
        assert result.goals[0].value == first.goals[0].value
    assert all(report.bound <= report.value for report in result.goals)


@FEW
@given(kitchens, st.integers(0, END - 1), st.integers(0, 10**6))
def test_planning_anew_never_moves_the_past(problem: Problem, now: int, seed: int) -> None:
    first = plan(problem, goals=(Goal.SESSIONS,), limits=QUICK).plan
    if first is None:
        return
    past = history(first, now)
    late = slower(problem, {one.task for one in past.done}, Random(seed))
    result = replan(late, first, past, limits=QUICK)
    if result.plan is None:
        return
    assert validate(result.problem, result.plan, past) == ()
    for done in past.done:
        at = result.plan.at(done.task)
        assert (at.start, at.end) == (done.start, done.end)
    for placed in result.plan.placed:
        told = placed.within or placed.task
        assert placed.start >= now or told in past.told


def slower(problem: Problem, done: set[str], random: Random) -> Problem:
    """Let some of what is still to come take longer."""
    slow = [t for t in problem.tasks if t.id not in done and t.waiting and random.random() < 0.5]
    longer = [replace(t, waiting=t.waiting + 30, waiting_most=t.longest_wait + 30) for t in slow]
    return problem.with_tasks(*longer)


@FEW
@given(kitchens, st.integers(0, END - 1))
def test_nothing_moves_if_nothing_happened(problem: Problem, now: int) -> None:
    first = plan(problem, goals=(Goal.SESSIONS,), limits=QUICK).plan
    if first is not None:
        result = replan(problem, first, history(first, now), limits=QUICK)
        assert result.status is Status.PLANNED and result.goals[0].value == 0


@given(st.integers(0, 10**9))
def test_the_earliest_end_is_that_of_trying_every_start(seed: int) -> None:
    """Three tasks on one or two machines with lags both ways, against all starts one by one."""
    random = Random(seed)
    lengths = [random.randint(1, 3) for _ in range(3)]
    amounts = [random.randint(1, 2) for _ in range(3)]
    lags = [(i, j, random.randint(-4, 4)) for i, j in ((0, 1), (1, 2), (2, 0))]
    expected = tried(lengths, amounts, lags)
    tasks = tuple(
        Task(id=str(i), waiting=length, needs=(Need(resource="machine", amount=amount),))
        for i, (length, amount) in enumerate(zip(lengths, amounts, strict=True))
    )
    problem = Problem(
        end=HORIZON,
        tasks=tasks,
        delays=tuple(lagged(*lag) for lag in lags),
        resources=(Resource(id="machine", capacity=2),),
    )
    result = plan(problem, goals=(Goal.FINISH,), limits=QUICK)
    assert (result.goals[0].value if result.goals else None) == expected


HORIZON = 12


def lagged(one: int, other: int, lag: int) -> Delay:
    """At least `lag` from start to start; a negative one is a longest time the other way."""
    start = Side.START
    if lag >= 0:
        names = {"before": str(one), "after": str(other)}
        return Delay(**names, least=lag, leaving=start, reaching=start)  # type: ignore[arg-type]
    names = {"before": str(other), "after": str(one)}
    return Delay(**names, least=None, most=-lag, leaving=start, reaching=start)  # type: ignore[arg-type]


def tried(lengths: list[int], amounts: list[int], lags: list[tuple[int, int, int]]) -> int | None:
    """Earliest end of all, by trying every combination of starts."""
    best = None
    for starts in product(*(range(HORIZON - length + 1) for length in lengths)):
        end = max(start + length for start, length in zip(starts, lengths, strict=True))
        kept = all(starts[j] >= starts[i] + lag for i, j, lag in lags)
        if kept and (best is None or end < best) and fits(starts, lengths, amounts):
            best = end
    return best


def fits(starts: tuple[int, ...], lengths: list[int], amounts: list[int]) -> bool:
    """Tell whether two units are enough in every minute."""
    return all(
        sum(
            amount
            for start, length, amount in zip(starts, lengths, amounts, strict=True)
            if start <= minute < start + length
        )
        <= 2
        for minute in range(HORIZON)
    )


@given(st.integers(0, 10**9))
def test_the_drawn_kitchens_are_sound(seed: int) -> None:
    assert kitchen(seed) == kitchen(seed)
