"""Limits between times alone, without resources: windows of every task, or a circle of facts.

Every rule reads 'this time is at least that time plus some minutes'. The longest path from the
origin is the earliest time; a circle of positive length means that its rules contradict each
other (Bellman's and Ford's algorithm).
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from entremetry.planning import wish
from entremetry.planning.fact import Conflict, Fact
from entremetry.planning.problem import Problem
from entremetry.planning.task import Side, Task

Point = tuple[str, Side]
ORIGIN: Point = ("", Side.START)
LOOK_EVERY = 32
"""Rounds between two looks for a circle; a look at each round would be slow on long chains."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """`later` is at least `sooner` plus `minutes`, because of `fact`."""

    sooner: Point
    later: Point
    minutes: int
    fact: Fact


@dataclass(frozen=True, slots=True, kw_only=True)
class Closure:
    """Earliest and latest minute of both ends of each task, or why there are none."""

    earliest: Mapping[Point, int]
    latest: Mapping[Point, int]
    conflict: Conflict | None = None


def closure(problem: Problem) -> Closure:
    """Follow all limits between times to their ends."""
    rules = tuple(every_rule(problem))
    forward, circle = longest([(r.sooner, r.later, r) for r in rules])
    if circle:
        facts = tuple(dict.fromkeys(rule.fact for rule in circle))
        return Closure(earliest={}, latest={}, conflict=Conflict(facts=facts))
    backward, _ = longest([(r.later, r.sooner, r) for r in rules])
    return Closure(earliest=forward, latest={p: -back for p, back in backward.items()})


def every_rule(problem: Problem) -> Iterator[Rule]:
    """Yield all limits between two times."""
    merged = {name: merge.together for merge in problem.merges for name in merge.tasks}
    bounds = wish.horizon(problem.start, problem.end)
    for task in problem.tasks:
        start, end = (task.id, Side.START), (task.id, Side.END)
        both = [task, *filter(None, [merged.get(task.id)])]
        least, most = min(one.least for one in both), max(one.most for one in both)
        yield Rule(sooner=start, later=end, minutes=least, fact=wish.lasts(task))
        yield Rule(sooner=end, later=start, minutes=-most, fact=wish.wait_most(task))
        yield Rule(sooner=ORIGIN, later=start, minutes=problem.start, fact=bounds)
        yield Rule(sooner=end, later=ORIGIN, minutes=-problem.end, fact=bounds)
        yield from own_limits(task)
    yield from delay_rules(problem)
    for service in problem.services:
        end, fact = (service.task, Side.END), wish.served(service)
        yield Rule(sooner=ORIGIN, later=end, minutes=service.at, fact=fact)
        yield Rule(sooner=end, later=ORIGIN, minutes=-service.at, fact=fact)


def own_limits(task: Task) -> Iterator[Rule]:
    """Yield the earliest start and the latest end of a task."""
    if task.earliest is not None:
        start, fact = (task.id, Side.START), wish.earliest(task)
        yield Rule(sooner=ORIGIN, later=start, minutes=task.earliest, fact=fact)
    if task.latest is not None:
        end, fact = (task.id, Side.END), wish.latest(task)
        yield Rule(sooner=end, later=ORIGIN, minutes=-task.latest, fact=fact)


def delay_rules(problem: Problem) -> Iterator[Rule]:
    """Yield the limits from one task to another."""
    for delay in problem.delays:
        sooner, later = (delay.before, delay.leaving), (delay.after, delay.reaching)
        if delay.least is not None:
            fact = wish.at_least(delay)
            yield Rule(sooner=sooner, later=later, minutes=delay.least, fact=fact)
        if delay.most is not None:
            yield Rule(sooner=later, later=sooner, minutes=-delay.most, fact=wish.at_most(delay))


Edge = tuple[Point, Point, Rule]


def longest(edges: list[Edge]) -> tuple[dict[Point, int], list[Rule]]:
    """Return the longest path to each point from the origin, or a circle that has no end."""
    far = {ORIGIN: 0}
    cause: dict[Point, Edge] = {}
    leaving: dict[Point, list[Edge]] = defaultdict(list)
    for edge in edges:
        leaving[edge[0]].append(edge)
    moved, rounds = [ORIGIN], 0
    while moved:
        moved = advance(moved, leaving, far, cause)
        rounds += 1
        if rounds % LOOK_EVERY == 0 and (circle := circle_in(cause, moved)):
            return far, circle
    return far, []


def advance(
    moved: list[Point],
    leaving: Mapping[Point, list[Edge]],
    far: dict[Point, int],
    cause: dict[Point, Edge],
) -> list[Point]:
    """Follow the edges that leave the moved points; return the points that moved by that."""
    pushed: dict[Point, None] = {}
    for point in moved:
        for edge in leaving[point]:
            reached = far[point] + edge[2].minutes
            if edge[1] not in far or reached > far[edge[1]]:
                far[edge[1]] = reached
                cause[edge[1]] = edge
                pushed[edge[1]] = None
    return list(pushed)


def circle_in(cause: Mapping[Point, Edge], moved: list[Point]) -> list[Rule]:
    """Return the rules of a circle that the last points to move hang on, if there is one."""
    clear: set[Point] = set()
    for point in moved:
        path: dict[Point, None] = {}
        while point in cause and point not in clear and point not in path:
            path[point] = None
            point = cause[point][0]
        if point in path:
            return rules_round(cause, point)
        clear.update(path)
    return []


def rules_round(cause: Mapping[Point, Edge], point: Point) -> list[Rule]:
    """Return the rules met on the way round from a point to itself."""
    rules = [cause[point][2]]
    at = cause[point][0]
    while at != point:
        rules.append(cause[at][2])
        at = cause[at][0]
    return rules[::-1]
