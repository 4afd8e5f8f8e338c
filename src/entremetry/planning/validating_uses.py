"""Checks that no more of a resource is in use than there is, and in one state at a time."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from entremetry.planning.history import History
from entremetry.planning.plan import Placed, Plan
from entremetry.planning.problem import Problem
from entremetry.planning.task import Need, Part, Side, Task
from entremetry.planning.violation import Violation


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """An amount taken from `start` up to and without `end`."""

    who: str
    start: int
    end: int
    amount: int
    state: str = ""


def capacity_violations(
    problem: Problem, plan: Plan, history: History | None
) -> Iterator[Violation]:
    """Yield every resource that is asked for too much, or in two states at once, after now."""
    now = problem.start if history is None else history.now
    taken: dict[str, list[Taken]] = defaultdict(list)
    for name, one in everything_taken(problem, plan):
        taken[name].append(one)
    for resource in problem.resources:
        uses = taken[resource.id]
        yield from overload(resource.id, resource.capacity, resource.turnover, uses, now)
        yield from mixed_states(resource.id, resource.changeover, uses, now)


def everything_taken(problem: Problem, plan: Plan) -> Iterator[tuple[str, Taken]]:
    """Yield all that is taken by tasks and between tasks, with the id of the resource."""
    tasks = {task.id: task for task in problem.tasks}
    tasks |= {merge.together.id: merge.together for merge in problem.merges}
    by_name = {placed.task: placed for placed in plan.placed}
    for placed in plan.placed:
        if not placed.within:
            for need in tasks[placed.task].needs:
                yield need.resource, taken_by(placed, tasks[placed.task], need)
    for span in problem.spans:
        first, last = by_name[span.first], by_name[span.last]
        start = first.start if span.leaving is Side.START else first.end
        end = last.start if span.reaching is Side.START else last.end
        yield span.resource, Taken(who=span.id, start=start, end=end, amount=span.amount)


def taken_by(placed: Placed, task: Task, need: Need) -> Taken:
    """Return what one need takes, and when."""
    start, end = placed.start, placed.end
    if need.part is Part.OPENING:
        end = placed.start + task.hands_on
    elif need.part is Part.CLOSING:
        start = placed.end - task.closing
    elif need.part is Part.WAITING:
        start, end = placed.start + task.hands_on, placed.end - task.closing
    if need.lasting is not None:
        end = start + need.lasting
    return Taken(who=task.id, start=start, end=end, amount=need.amount, state=need.state)


def overload(
    resource: str, capacity: int, turnover: int, uses: list[Taken], now: int
) -> Iterator[Violation]:
    """Yield the minutes at which more is taken than there is, and one of those who take it."""
    steps: list[tuple[int, int, str]] = []
    for use in uses:
        start, end = max(use.start, now), use.end + turnover
        if end > start:
            steps += [(start, use.amount, use.who), (end, -use.amount, use.who)]
    level = 0
    for minute, amount, who in sorted(steps):
        level += amount
        if level > capacity and amount > 0:
            yield Violation(
                law=f"no more is used than there is (minute {minute})", subjects=(resource, who)
            )


def mixed_states(
    resource: str, changeover: int, uses: list[Taken], now: int
) -> Iterator[Violation]:
    """Yield pairs in different states that overlap, or follow too soon on each other."""
    active = sorted((u for u in uses if u.state and u.end > u.start), key=lambda u: u.start)
    for index, one in enumerate(active):
        for other in active[index + 1 :]:
            if other.start >= one.end + changeover:
                continue
            if one.state != other.state and max(other.start, one.start) >= now:
                yield Violation(law="one state at a time", subjects=(resource, one.who, other.who))
