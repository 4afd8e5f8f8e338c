"""Takes the goals in their order, and aims at all of them before idle time is fixed.

Idle time costs the goals after it dearly if it is made small without a thought of them. So the best
of each later goal is found first; little idle time is then looked for among those plans, and only
after that, from there, among all.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from entremetry.planning.building import built
from entremetry.planning.closure import Closure
from entremetry.planning.drawing_in import DrawnIn
from entremetry.planning.freshest import tied
from entremetry.planning.goals import Goals
from entremetry.planning.leeway import Leeway
from entremetry.planning.result import Goal
from entremetry.planning.search import FEW_TASKS, close
from entremetry.planning.staged import GAPS, Staged

if TYPE_CHECKING:
    from ortools.sat.python import cp_model

    from entremetry.planning.linear import Linear

AIM_SHARE = 0.75
"""Part of the time for all but the first goal in which idle time is weighed against later goals."""
AT_FIRST = 0.65
"""Part of that time in which all later goals are kept at their best, and not only the first."""

Claim = tuple["Linear", int]
"""What a goal counts, and the most it may be."""

AIMS = (Goal.FRESHNESS, Goal.SPREAD)
"""Goals that idle time is weighed against."""


def pursue(staged: Staged, goals: Sequence[Goal], windows: Closure | None = None) -> None:
    """Work on each goal in order, within its share of the time that is left."""
    for index, goal in enumerate(goals):
        if (
            goal is Goal.BENCH
            and windows is not None
            and affordable(staged, goal, staged.search.left / 4)
        ):
            later = [one for one in goals[index + 1 :] if one in AIMS]
            aim(staged, later, windows, AIM_SHARE * staged.search.left)
        left = staged.search.left
        if not staged.goes_on or not affordable(staged, goal, left / 2):
            return
        staged.stage(goal, left / share(len(goals) - index))


def affordable(staged: Staged, goal: Goal, seconds: float) -> bool:
    """Tell whether there is time to write down what a goal counts."""
    plain = goal in (Goal.FRESHNESS, Goal.FINISH, Goal.MOVES)
    return plain or staged.search.affords(staged.model.problem, seconds)


def aim(staged: Staged, later: Sequence[Goal], windows: Closure, seconds: float) -> None:
    """Look for little idle time among the plans that are best for later goals."""
    ends = staged.search.spent + seconds
    claims = best_of(staged, later, windows, seconds / 2)
    bench = staged.goals.begin(Goal.BENCH)
    for kept in range(len(claims), 0, -1):
        left = ends - staged.search.spent
        if isinstance(bench, int) or left <= 0 or staged.cancelled:
            return
        gap, model = GAPS[Goal.BENCH], held(staged, claims[:kept])
        part = left if kept == 1 else AT_FIRST * left
        answer = staged.optimise(Goal.BENCH, bench, part, gap, model, nearby=True)
        staged.aimed = Goal.BENCH
        if answer.found and close(answer.value, answer.bound, gap):
            return


def held(staged: Staged, claims: Sequence[Claim]) -> cp_model.CpModel:
    """Return a model that keeps some goals as good as they are."""
    model = staged.model.cp.clone()
    for objective, most in claims:
        model.add(objective <= most)
    return model


def best_of(staged: Staged, later: Sequence[Goal], windows: Closure, seconds: float) -> list[Claim]:
    """Find how good the later goals can be, one after the other, with sessions drawn in."""
    ends = staged.search.spent + seconds
    claims: list[Claim] = []
    drawn = DrawnIn(staged=staged)
    for goal in later:
        objective, left = staged.goals.begin(goal), ends - staged.search.spent
        if isinstance(objective, int) or left <= 0 or staged.cancelled:
            continue
        if goal is Goal.FRESHNESS:
            narrow(staged, objective, windows, left / 2)
        model = held(staged, claims) if claims else None
        if model is not None and drawn.most is not None:
            drawn.post(model, drawn.most)
        gap = GAPS.get(goal, 0.0)
        answer = staged.optimise(goal, objective, left / 4, gap, model)
        if not claims:
            staged.bounded(goal, objective, answer)
        if answer.found:
            claims.append((objective, int(answer.value * (1 + gap))))
        if len(claims) == 1 and staged.goes_on:
            drawn.shorten((ends - staged.search.spent) / 2)
    return claims


def narrow(staged: Staged, objective: Linear, windows: Closure, seconds: float) -> None:
    """Bound freshness among the few tasks that it hangs on, then fill in all others."""
    began = staged.search.spent
    few = built(tied(staged.model.problem, windows), Leeway())
    few.cp.minimize(Goals(model=few).freshness())
    answer = staged.search.apart().run(few.cp, Goal.FRESHNESS, seconds, ways=FEW_TASKS)
    staged.bounded(Goal.FRESHNESS, objective, answer)
    staged.spend(Goal.FRESHNESS, began)
    staged.cancelled = answer.cancelled
    if answer.found and not answer.cancelled:
        filled = staged.model.cp.clone()
        for name, times in few.times.items():
            whole = staged.model.times[name]
            filled.add(whole.start == answer.solver.value(times.start))
            filled.add(whole.end == answer.solver.value(times.end))
        staged.keep(staged.search.run(filled, None, seconds, quick=True))


def share(stages: int) -> float:
    """Part of the time for the next goal: half of what is left, all of it for the last."""
    return 1.0 if stages == 1 else 2.0
