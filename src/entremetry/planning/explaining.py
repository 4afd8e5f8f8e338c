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


FEW = 6
"""As many facts as can be taken in at once; a count of hours is plainer than more of them."""


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
    seconds = search.limits.explaining
    conflicts = tuple(known)
    if status is Status.IMPOSSIBLE and not is_of_times(conflicts):
        conflicts = plainest(conflicts, conflict_core(problem, seconds * CORE_SHARE))
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


def is_of_times(conflicts: Sequence[Conflict]) -> bool:
    """Tell whether a circle of times is known, which nothing can make plainer."""
    counted = {FactKind.HANDS_WANTED, FactKind.USE_WANTED}
    return any(not counted & {fact.kind for fact in one.facts} for one in conflicts)


def plainest(counted: Sequence[Conflict], core: Conflict) -> tuple[Conflict, ...]:
    """Prefer a short list of facts to a count, and a count to a long list."""
    short = bool(core.facts) and core.smallest and len(core.facts) <= FEW
    if counted and not short:
        return tuple(counted)
    return (core,) if core.facts else ()
