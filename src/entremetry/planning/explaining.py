"""Says why there is no plan, and which plans there would be."""

from __future__ import annotations

from collections.abc import Sequence

from entremetry.planning.bending import alternatives
from entremetry.planning.checked import checked
from entremetry.planning.conflicts import conflict_core
from entremetry.planning.fact import Conflict, FactKind
from entremetry.planning.problem import Problem
from entremetry.planning.result import Goal, Result, Status
from entremetry.planning.search import Search

CORE_SHARE = 0.4
"""Part of the time of an explanation that looks for what conflicts; the rest for ways out."""

IN_TIME = 0.9
"""Part of the time that is shared out: models are written, and plans checked, in the rest."""

LEAST = 0.1
"""Seconds for an explanation if the time is up already."""


def explained(
    problem: Problem,
    search: Search,
    known: Sequence[Conflict],
    *,
    asked: tuple[Goal, ...] = (),
    status: Status = Status.IMPOSSIBLE,
) -> Result:
    """Return a result with conflicts and ways out, each with a plan that the validator passes.

    A way out that needs no change shows that the first answer was wrong; its plan is the answer.
    """
    began = search.spent
    seconds = IN_TIME * min(search.limits.explaining, max(search.left, LEAST))
    conflicts = tuple(known)
    if status is Status.IMPOSSIBLE and not plain(conflicts):
        core = conflict_core(problem, seconds * CORE_SHARE)
        conflicts = (core,) if core.facts else conflicts
    ways = tuple(alternatives(problem, search, began + seconds))
    right = next((way for way in ways if not way.changes), None)
    return checked(
        Result(
            status=status if right is None else Status.PLANNED,
            problem=problem,
            asked=asked,
            plan=None if right is None else right.plan,
            conflicts=conflicts if right is None else (),
            alternatives=ways if right is None else (),
            cancelled=search.limits.cancelled(),
            seconds=search.spent,
        )
    )


def plain(conflicts: Sequence[Conflict]) -> bool:
    """Tell whether what is known already cannot be said better.

    A count of hours says more than a list of absences, but not if one single task is too long.
    """
    tasks = {FactKind.HANDS_WANTED: 0, FactKind.USE_WANTED: 1}
    return bool(conflicts) and not any(
        fact.kind in tasks and len(fact.subjects[tasks[fact.kind] :]) == 1
        for one in conflicts
        for fact in one.facts
    )
