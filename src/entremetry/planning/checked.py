"""Lets no plan out that the validator does not pass."""

from __future__ import annotations

from entremetry.errors import SolverError
from entremetry.planning.history import History
from entremetry.planning.plan import Plan
from entremetry.planning.problem import Problem
from entremetry.planning.result import Result
from entremetry.planning.validating import validate


def checked(result: Result, history: History | None = None) -> Result:
    """Return a result whose plans, those of its alternatives too, keep every fact.

    Raises
    ------
    SolverError
        If one does not: the solver or the model is at fault, not the user.
    """
    if result.plan is not None:
        require_valid(result.problem, result.plan, history)
    for alternative in result.alternatives:
        require_valid(alternative.problem, alternative.plan, history)
    return result


def require_valid(problem: Problem, plan: Plan, history: History | None) -> None:
    """Refuse a plan that breaks a fact."""
    found = validate(problem, plan, history)
    if found:
        shown = "\n".join(str(violation) for violation in found[:5])
        raise SolverError(f"the solver gave a plan that breaks {len(found)} facts:\n{shown}")
