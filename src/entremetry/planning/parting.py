"""Parts of a problem: tasks that belong together, and what lies between them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from entremetry.planning.problem import Problem


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


def only(problem: Problem, tasks: set[str]) -> Problem:
    """Return a problem of some of the tasks, with what lies between them."""
    return replace(
        problem,
        tasks=tuple(task for task in problem.tasks if task.id in tasks),
        delays=tuple(one for one in problem.delays if {one.before, one.after} <= tasks),
        spans=tuple(one for one in problem.spans if {one.first, one.last} <= tasks),
        services=tuple(one for one in problem.services if one.task in tasks),
        merges=tuple(one for one in problem.merges if one.together.id in tasks),
    )
