"""How fresh everything can be at best: looked for among the tasks that age decides, and no others.

What ages is tied by longest delays to what comes just before and after it; the rest of the work may
lie anywhere earlier. Without the rest a bound is found in a second, and it holds with the rest.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import replace

from entremetry.planning.closure import Closure
from entremetry.planning.problem import Problem
from entremetry.planning.task import Side, Task


def tied(problem: Problem, windows: Closure) -> Problem:
    """Return a problem of the tasks that ageing ones are tied to, each within its window.

    Every plan of the whole problem is, for these tasks, a plan of this one.
    """
    kept = tied_to((task.id for task in problem.all_tasks if task.freshness), links(problem))
    return replace(
        problem,
        tasks=tuple(within(task, windows) for task in problem.tasks if task.id in kept),
        delays=tuple(one for one in problem.delays if {one.before, one.after} <= kept),
        spans=tuple(one for one in problem.spans if {one.first, one.last} <= kept),
        services=tuple(one for one in problem.services if one.task in kept),
        merges=tuple(one for one in problem.merges if one.together.id in kept),
    )


def links(problem: Problem) -> Mapping[str, set[str]]:
    """Tasks that lie next to each task: by a longest delay, or because they may be done as one."""
    found: dict[str, set[str]] = defaultdict(set)
    pairs = [(one.before, one.after) for one in problem.delays if one.most is not None]
    pairs += [(one.together.id, name) for one in problem.merges for name in one.tasks]
    for one, other in pairs:
        found[one].add(other)
        found[other].add(one)
    return found


def tied_to(tasks: Iterable[str], next_to: Mapping[str, set[str]]) -> set[str]:
    """Return tasks with all that lie next to them, and next to those."""
    found: set[str] = set()
    to_see = list(tasks)
    while to_see:
        task = to_see.pop()
        if task not in found:
            found.add(task)
            to_see.extend(next_to.get(task, ()))
    return found


def within(task: Task, windows: Closure) -> Task:
    """Return a task that keeps to the window which other tasks leave it."""
    earliest, latest = windows.earliest[task.id, Side.START], windows.latest[task.id, Side.END]
    return replace(task, earliest=earliest, latest=latest)
