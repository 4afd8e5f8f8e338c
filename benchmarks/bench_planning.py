"""A first plan for three desserts over three days, against a public job shop of the same solver.

Run by itself, it reports every goal of kitchens of about 50 and 150 tasks, plans anew after
overruns, and explains what cannot be: `python benchmarks/bench_planning.py`.
"""

from __future__ import annotations

import time
from collections.abc import Iterator
from dataclasses import replace

from figure import Figure, median_seconds
from planning_kitchen import END, cook, kitchen
from planning_public import job_shop

from entremetry.planning import (
    Done,
    Goal,
    History,
    Limits,
    Person,
    Plan,
    Problem,
    Result,
    Running,
    plan,
    replan,
)

SIZES = ((3, 0, 20.0), (5, 3, 60.0))
"""Desserts, garnishes for each, and seconds."""
SEEDS = (1, 2, 3)


def measure(rounds: int = 5) -> Figure:
    """Time the first plan of a kitchen of 57 tasks; the reference is proving ft06."""
    problem, shop = kitchen(3), job_shop("ft06").problem
    return Figure(
        name=f"first plan of {len(problem.tasks)} tasks in three days",
        seconds=median_seconds(lambda: plan(problem, goals=()), rounds),
        reference="proving the job shop ft06",
        reference_seconds=median_seconds(lambda: plan(shop, goals=(Goal.FINISH,)), rounds),
        target=0.3,
    )


def goals() -> Iterator[str]:
    """Report the goals of kitchens of both sizes: value, bound and seconds of each."""
    for desserts, extras, seconds in SIZES:
        for seed in SEEDS:
            problem = kitchen(desserts, extras=extras, seed=seed)
            result = plan(problem, limits=Limits(seconds=seconds))
            yield f"{len(problem.tasks)} tasks, kitchen {seed}: {told(result)}"


def told(result: Result) -> str:
    """One line for a result."""
    stages = ", ".join(
        f"{r.goal} {r.value} ({'proved' if r.proved else f'gap {r.gap:.1%}'}, {r.seconds:.1f} s)"
        for r in result.goals
    )
    return f"{result.status}, first plan {result.first_plan:.2f} s; {stages}"


def overruns() -> Iterator[str]:
    """Report planning anew after a step took 20 minutes more, at several points of a plan."""
    problem = kitchen(5, extras=3)
    before = plan(problem, goals=(Goal.SESSIONS,), limits=Limits(seconds=10.0)).plan
    if before is None:
        return
    with_hands = [placed for placed in before.placed if placed.hands and placed.end < END - 300]
    for placed in with_hands[:: max(1, len(with_hands) // 8)]:
        now = placed.end + 20
        began = time.perf_counter()
        result = replan(problem, before, history(before, placed.task, now))
        seconds = time.perf_counter() - began
        given = f"{len(result.changes)} facts given up"
        yield f"overrun of {placed.task}: {result.status}, {given}, {seconds:.2f} s"


def history(before: Plan, late: str, now: int) -> History:
    """A history by the plan, but that one task ended only now and what follows has not begun."""
    start = before.at(late).start
    told = [p for p in before.placed if p.start <= start]
    return History(
        now=now,
        done=tuple(
            Done(task=p.task, start=p.start, end=now if p.task == late else p.end)
            for p in told
            if p.task == late or p.end <= now
        ),
        running=tuple(
            Running(task=p.task, start=p.start) for p in told if p.task != late and p.end > now
        ),
    )


def impossible() -> Iterator[str]:
    """Report explanations: served too early, too few hours, one mould instead of five."""
    problem = kitchen(5, extras=3)
    early = tuple(replace(service, at=service.at - 900) for service in problem.services)
    day = Person(id="cook", sessions=cook().sessions[-1:])
    single = tuple(
        replace(one, capacity=1) if one.id == "mould" else one for one in problem.resources
    )
    cases: dict[str, Problem] = {
        "served 15 h earlier": replace(problem, services=early),
        "only the last day": problem.with_people(day),
        "one mould": replace(problem, resources=single),
    }
    for name, case in cases.items():
        began = time.perf_counter()
        result = plan(case, goals=())
        sizes = [len(conflict.facts) for conflict in result.conflicts]
        yield (
            f"{name}: {result.status}, facts in conflict {sizes}, "
            f"{len(result.alternatives)} ways out, {time.perf_counter() - began:.2f} s"
        )


def main() -> None:
    """Print everything."""
    print(measure(), flush=True)
    for part in (goals, overruns, impossible):
        for line in part():
            print(line, flush=True)


if __name__ == "__main__":
    main()
