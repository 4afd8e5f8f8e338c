"""What cannot fit by counting alone: more minutes of work than there are free hands or units.

A solver finds this hard to prove; adding up is instant. Each stretch between the earliest start of
some work and the latest end of some work is compared with the minutes there are in it.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from entremetry.planning.closure import Closure
from entremetry.planning.fact import Conflict, Fact, FactKind
from entremetry.planning.plan_model import hand_parts
from entremetry.planning.problem import Problem
from entremetry.planning.resource import Person
from entremetry.planning.task import Part, Side, Task

MOST_STRETCHES = 40
"""Starts, and ends, that are tried for one resource: enough for kitchens, quick for any input."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """Work of `amount` unit-minutes that lies somewhere between two minutes."""

    task: str
    start: int
    end: int
    amount: int


def count_conflict(problem: Problem, windows: Closure) -> Conflict | None:
    """Return the first stretch that holds more work than there is room for, if any does."""
    if not problem.merges:
        for people, loads in hand_loads(problem, windows).items():
            if found := hands_conflict([problem.person(name) for name in people], loads):
                return found
        for resource, loads in use_loads(problem, windows).items():
            if found := use_conflict(resource, problem.resource(resource).capacity, loads):
                return found
    return None


def hand_loads(problem: Problem, windows: Closure) -> Mapping[tuple[str, ...], list[Load]]:
    """Hands-on work by the people who may do it; the work of some is also work of more."""
    groups = {tuple(one.id for one in problem.hands_for(task)) for task in problem.tasks}
    groups.add(tuple(one.id for one in problem.people))
    loads: dict[tuple[str, ...], list[Load]] = {group: [] for group in groups if group}
    for task in problem.tasks:
        able = {one.id for one in problem.hands_for(task)}
        for group, listed in loads.items():
            if able <= set(group):
                listed.extend(hands_of(task, windows))
    return loads


def hands_of(task: Task, windows: Closure) -> Iterator[Load]:
    """Yield both stretches of hands of a task, each within its window."""
    start, end = windows.earliest[task.id, Side.START], windows.latest[task.id, Side.END]
    if task.hands_on:
        last = windows.latest[task.id, Side.START] + task.hands_on
        yield Load(task=task.id, start=start, end=last, amount=task.hands_on)
    if task.closing:
        first = windows.earliest[task.id, Side.END] - task.closing
        yield Load(task=task.id, start=first, end=end, amount=task.closing)


def hand_windows(problem: Problem, windows: Closure) -> dict[tuple[str, Part], tuple[int, int]]:
    """Minutes between which each stretch of hands has to lie."""
    found: dict[tuple[str, Part], tuple[int, int]] = {}
    for task in problem.tasks:
        parts = [part for part, _ in hand_parts(task)]
        for part, load in zip(parts, hands_of(task, windows), strict=True):
            found[task.id, part] = (load.start, load.end)
    return found


def hands_conflict(people: Sequence[Person], loads: Sequence[Load]) -> Conflict | None:
    """Compare the work within each run of sessions with the free minutes of those people."""
    free = [session for one in people for session in one.planned]

    def room(start: int, end: int) -> int:
        return sum(session.free(start, end) for session in free)

    found = overfull(loads, room)
    if found is None:
        return None
    names, wanted, there, bounds = found
    work = Fact(kind=FactKind.HANDS_WANTED, subjects=names, minutes=wanted)
    hands = Fact(kind=FactKind.HANDS_FREE, subjects=tuple(p.id for p in people), minutes=there)
    return Conflict(facts=(work, hands, bounds))


def use_loads(problem: Problem, windows: Closure) -> Mapping[str, list[Load]]:
    """Least use of each resource by each task."""
    loads: dict[str, list[Load]] = defaultdict(list)
    for task in problem.tasks:
        length = {
            Part.WHOLE: task.least,
            Part.OPENING: task.hands_on,
            Part.WAITING: task.waiting,
            Part.CLOSING: task.closing,
        }
        start, end = windows.earliest[task.id, Side.START], windows.latest[task.id, Side.END]
        for need in task.needs:
            if need.lasting is None and length[need.part]:
                amount = need.amount * length[need.part]
                loads[need.resource].append(Load(task=task.id, start=start, end=end, amount=amount))
    return loads


def use_conflict(resource: str, capacity: int, loads: Sequence[Load]) -> Conflict | None:
    """Compare the use within each stretch with the unit-minutes there are."""
    found = overfull(loads, lambda start, end: capacity * (end - start))
    if found is None:
        return None
    names, wanted, there, bounds = found
    work = Fact(kind=FactKind.USE_WANTED, subjects=(resource, *names), minutes=wanted)
    free = Fact(kind=FactKind.USE_FREE, subjects=(resource,), minutes=there)
    return Conflict(facts=(work, free, bounds))


Overfull = tuple[tuple[str, ...], int, int, Fact]


def overfull(loads: Sequence[Load], room: Callable[[int, int], int]) -> Overfull | None:
    """Return the shortest stretch with too much work: the fewest tasks of it, wanted, there is."""
    starts = thinned(sorted({load.start for load in loads}))
    ends = thinned(sorted({load.end for load in loads}))
    pairs = ((end - start, start, end) for start in starts for end in ends if end > start)
    for _, start, end in sorted(pairs):
        inside = [load for load in loads if load.start >= start and load.end <= end]
        there = room(start, end)
        if sum(load.amount for load in inside) > there:
            names, wanted = fewest(inside, there)
            bounds = Fact(kind=FactKind.HORIZON, minutes=start, until=end)
            return names, wanted, there, bounds
    return None


def fewest(loads: Sequence[Load], room: int) -> tuple[tuple[str, ...], int]:
    """Return the largest works that together are too many, and what they add up to."""
    names: dict[str, None] = {}
    wanted = 0
    for load in sorted(loads, key=lambda load: -load.amount):
        if wanted > room:
            break
        names[load.task] = None
        wanted += load.amount
    return tuple(names), wanted


def thinned(values: Sequence[int]) -> Sequence[int]:
    """Return evenly spread values, with the first and the last, where there are too many."""
    step = max(1, -(-len(values) // MOST_STRETCHES))
    return sorted({*values[::step], *values[-1:]})
