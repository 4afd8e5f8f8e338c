"""Plans anew when life intervenes: what is done is fact, the rest moves as little as needed."""

from __future__ import annotations

from entremetry.planning.amending import amended
from entremetry.planning.bending import bent, hint_plan
from entremetry.planning.building import built
from entremetry.planning.checked import checked
from entremetry.planning.conflicts import conflict_core
from entremetry.planning.fact import Change
from entremetry.planning.goals import Goals
from entremetry.planning.history import History
from entremetry.planning.history_faults import require_possible
from entremetry.planning.leeway import Leeway
from entremetry.planning.limits import Limits
from entremetry.planning.plan import Plan
from entremetry.planning.problem import Problem
from entremetry.planning.pursuing import pursue
from entremetry.planning.result import Goal, Result, Status
from entremetry.planning.search import Search
from entremetry.planning.staged import Staged

MOVES = (Goal.MOVES,)
AT_ONCE = 1.8
"""Seconds for planning anew, if the caller names none: somebody stands and waits."""


def replan(
    problem: Problem, before: Plan, history: History, *, limits: Limits | None = None
) -> Result:
    """Return a plan for what is still to come, near the plan before.

    If not every fact can be kept, as few as possible give, and `changes` names them.

    Raises
    ------
    ProblemError
        If history tells of what the problem does not know, or of a future.
    """
    require_possible(problem, history)
    search = Search(limits=limits or Limits(seconds=AT_ONCE))
    model = built(problem, Leeway(), history)
    hint_plan(model, before)
    answer = search.run(model.cp, None, search.left / 2, quick=True)
    if not answer.found:
        return relaxed(problem, before, history, search)
    staged = Staged(
        model=model,
        search=search,
        goals=Goals(model=model, before=before),
        plan=model.plan(answer.solver),
        answer=answer,
    )
    pursue(staged, MOVES)
    return answered(problem, staged, history, ())


def relaxed(problem: Problem, before: Plan, history: History, search: Search) -> Result:
    """Give up as little as possible, then move as little as possible."""
    found = bent(problem, search, search.left * 0.6, history=history, near=before)
    if found is None:
        core = conflict_core(problem, min(search.limits.explaining, search.left), history)
        return Result(
            status=Status.IMPOSSIBLE if core.facts else Status.UNDECIDED,
            problem=problem,
            asked=MOVES,
            conflicts=(core,) if core.facts else (),
            seconds=search.spent,
        )
    found.model.cp.add(found.price <= found.answer.value)
    staged = Staged(
        model=found.model,
        search=search,
        goals=Goals(model=found.model, before=before),
        plan=found.model.plan(found.answer.solver),
        answer=found.answer,
    )
    pursue(staged, MOVES)
    changes = found.slack.changes(staged.answer.solver)
    return answered(problem, staged, history, changes)


def answered(
    problem: Problem, staged: Staged, history: History, changes: tuple[Change, ...]
) -> Result:
    """Return a result that the validator passes, against the facts that did not give."""
    result = Result(
        status=Status.BENT if changes else Status.PLANNED,
        problem=amended(problem, changes),
        asked=MOVES,
        plan=staged.plan,
        goals=staged.reports,
        changes=changes,
        cancelled=staged.cancelled,
        first_plan=staged.search.first_plan,
        seconds=staged.search.spent,
    )
    return checked(result, history)
