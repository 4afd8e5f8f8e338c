"""Plans a problem from nothing."""

from __future__ import annotations

from collections.abc import Sequence

from entremetry.planning.building import built
from entremetry.planning.checked import checked
from entremetry.planning.closure import closure
from entremetry.planning.counting import count_conflict, hand_windows
from entremetry.planning.explaining import explained
from entremetry.planning.goals import Goals
from entremetry.planning.leeway import Leeway
from entremetry.planning.limits import Limits
from entremetry.planning.pieces import MANY, InPieces
from entremetry.planning.problem import Problem
from entremetry.planning.pursuing import pursue
from entremetry.planning.result import COOK, Goal, Result, Status
from entremetry.planning.search import Search
from entremetry.planning.staged import Staged

PIECES_SHARE = 0.8
"""Part of the time for a first plan in which it is looked for piece by piece, if it is large."""


def plan(problem: Problem, *, goals: Sequence[Goal] = COOK, limits: Limits | None = None) -> Result:
    """Return the best plan for a problem, or why there is none and what would have to give."""
    search, asked = Search(limits=limits or Limits()), tuple(goals)
    windows = closure(problem)
    refusal = windows.conflict or count_conflict(problem, windows)
    if refusal is not None:
        return explained(problem, search, (refusal,), asked=asked)
    model = built(problem, Leeway())
    reserve = min(search.limits.explaining, search.left / 2)
    answer = None
    if len(problem.tasks) > MANY:
        answer = InPieces(model=model, search=search, windows=windows).answer(
            PIECES_SHARE * (search.left - reserve)
        )
    if answer is None:
        answer = search.run(model.cp, None, search.left - reserve)
    if not answer.found:
        status = Status.IMPOSSIBLE if answer.impossible else Status.UNDECIDED
        return explained(problem, search, (), asked=asked, status=status)
    staged = Staged(
        model=model,
        search=search,
        goals=Goals(model=model, windows=hand_windows(problem, windows)),
        plan=model.plan(answer.solver),
        answer=answer,
        cancelled=answer.cancelled,
    )
    pursue(staged, asked, windows)
    result = Result(
        status=Status.PLANNED,
        problem=problem,
        asked=asked,
        plan=staged.plan,
        goals=staged.reports,
        cancelled=staged.cancelled,
        first_plan=search.first_plan,
        seconds=search.spent,
    )
    return checked(result)
