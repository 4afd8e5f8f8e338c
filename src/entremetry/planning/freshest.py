"""How fresh everything can be at best: looked for among the tasks that age decides, and no others.

What ages is tied by longest delays to what comes just before and after it; the rest of the work may
lie anywhere earlier. Without the rest a bound is found in a second, and it holds with the rest.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import replace

from entremetry.planning.closure import Closure
from entremetry.planning.parting import only, tied_to
from entremetry.planning.problem import Problem
from entremetry.planning.task import Side, Task


def tied(problem: Problem, windows: Closure) -> Problem:
    """Return a problem of the tasks that ageing ones are tied to, each within its window.

    Every plan of the whole problem is, for these tasks, a plan of this one.
    """
    kept = tied_to((task.id for task in problem.all_tasks if task.freshness), links(problem))
    few = only(problem, kept)
    return few.with_tasks(*(within(task, windows) for task in few.tasks))


def links(problem: Problem) -> Mapping[str, set[str]]:
    """Tasks that lie next to each task: by a longest delay, or because they may be done as one."""
    found: dict[str, set[str]] = defaultdict(set)
    pairs = [(one.before, one.after) for one in problem.delays if one.most is not None]
    pairs += [(one.together.id, name) for one in problem.merges for name in one.tasks]
    for one, other in pairs:
        found[one].add(other)
        found[other].add(one)
    return found


def within(task: Task, windows: Closure) -> Task:
    """Return a task that keeps to the window which other tasks leave it."""
    earliest, latest = windows.earliest[task.id, Side.START], windows.latest[task.id, Side.END]
    return replace(task, earliest=earliest, latest=latest)
