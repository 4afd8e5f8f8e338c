"""Change a formula as little as its wishes allow, or prove that no formula can meet them.

The masses of the lines are the unknowns. Shares, ratios and the yield are straight in them once
their ends are numbers; freezing point and ice are curved. Whether the firm wishes can be met is
settled by linear programs (HiGHS); the formula itself is the one with the smallest relative
changes, in the sense of least squares, that draws every wish towards its aim (SLSQP).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from entremetry.formula._conflict import smallest_conflict
from entremetry.formula._demand import Demand, Pull, bound, demand, pull, wish_words
from entremetry.formula._feasibility import MISSED, missed, reach
from entremetry.formula._least_change import least_change
from entremetry.formula._least_distance import least_distance
from entremetry.formula._model import Model, limits, model
from entremetry.formula.wish import Conflict, Problem, Solution
from entremetry.physics.arrays import Floats

AT_AIM = 1e-9  # tolerances


def rebalanced(problem: Problem) -> Solution:
    """Masses that meet the wishes with the least change, or the conflict that leaves none.

    A problem whose formula is at all aims already comes back with the same masses.
    Wishes that are not firm are met as well if all of them can be; otherwise they give way, as
    little as the least squares let them, and are named.

    Raises
    ------
    SolverError
        If a linear program does not end.
    """
    built = model(problem)
    if _is_at_all_aims(built, problem):
        return Solution(masses=tuple(line.mass for line in problem.lines))
    bounds = [bound(problem, index) for index in range(len(problem.lines))]
    asked = [each for each in bounds if each is not None]
    firm = [*asked, *(demand(built, wish) for wish in problem.wishes if wish.firm)]
    x = _met(problem, built, firm)
    if x is not None:
        return _solution(problem, built, x)
    return _refused(built, firm)


def _is_at_all_aims(built: Model, problem: Problem) -> bool:
    """Tell whether nothing is asked that is not so already."""
    here = np.zeros(len(problem.lines))
    inside = all(line.low <= line.mass <= line.high for line in problem.lines)
    return inside and all(abs(pull(built, w).at(built, here)[0]) < AT_AIM for w in problem.wishes)


def _met(problem: Problem, built: Model, firm: Sequence[Demand]) -> Floats | None:
    """Changes that meet all wishes, or else at least the firm ones.

    What is found needs no proof that it can be found, so the linear programs come second.
    """
    soft = [demand(built, wish) for wish in problem.wishes if not wish.firm]
    gentle = [*firm, *_gentle(problem)] if soft else firm
    found = _changes(problem, built, gentle, soft)
    if found is not None or not reach(built, firm).is_met:
        return found
    for demands in (gentle, firm):
        for held in (_spared(built, demands, soft), []):
            found = _changes(problem, built, demands, held)
            if found is not None:
                return found
    return None


def _gentle(problem: Problem) -> list[Demand]:
    """Demands that no line is halved or doubled for what may as well give way."""
    lines = tuple(
        replace(each, low=max(each.low, each.mass / 2.0), high=min(each.high, each.mass * 2.0))
        if each.low <= each.mass <= each.high
        else each
        for each in problem.lines
    )
    made = [bound(replace(problem, lines=lines), index) for index in range(len(lines))]
    return [each for each in made if each is not None]


def _changes(
    problem: Problem, built: Model, firm: Sequence[Demand], held: Sequence[Demand]
) -> Floats | None:
    """The least changes that meet the firm demands and some of the others."""
    demands = [*firm, *held]
    pulls = _pulls(problem, built, held)
    ends = limits(problem.lines)
    found = least_change(built, demands, pulls, ends, np.zeros(len(problem.lines)))
    if found is not None:
        return found
    nearest = reach(built, demands)
    if not nearest.is_met:
        return None
    found = least_change(built, demands, pulls, ends, nearest.at)
    return found if found is not None else _nearest(built, demands, ends, nearest.at)


def _nearest(
    built: Model,
    demands: Sequence[Demand],
    ends: Sequence[tuple[float, float | None]],
    able: Floats,
) -> Floats | None:
    """The least changes that meet the demands, wherever their aims are."""
    for begin in (np.zeros_like(able), able):
        found = least_distance(built, demands, ends, begin)
        if found is not None:
            return found
    return None


def _pulls(problem: Problem, built: Model, held: Sequence[Demand]) -> list[Pull]:
    """What draws every wish to its aim.

    A wish that gives way draws no more than one line that is doubled resists: it is not to be
    closed in on at the cost of everything else.
    """
    words = {each.words for each in held}
    here = np.zeros(len(problem.lines))
    drawn = []
    for wish in problem.wishes:
        made = pull(built, wish)
        if not wish.firm and wish_words(wish) not in words:
            distance, _ = made.at(built, here)
            made = replace(made, weight=made.weight / max(1.0, distance**2))
        drawn.append(made)
    return drawn


def _spared(built: Model, firm: Sequence[Demand], soft: Sequence[Demand]) -> list[Demand]:
    """Soft demands that can be met while as little as possible of the others gives way."""
    if not soft:
        return []
    short = missed(built, firm, soft, np.zeros(len(built.start)))
    return [each for each, shortfall in zip(soft, short, strict=True) if shortfall < -MISSED]


def _solution(problem: Problem, built: Model, x: Floats) -> Solution:
    state = built.at(x)
    return Solution(
        masses=tuple(float(mass) for mass in built.masses(x)),
        gave_way=tuple(
            wish.measure.name
            for wish in problem.wishes
            if not wish.firm and not wish.holds(wish.measure.value(state))
        ),
    )


def _refused(built: Model, demands: Sequence[Demand]) -> Solution:
    """The fewest demands that stand in each other's way, if that is what is wrong."""

    def can_meet(chosen: Sequence[int]) -> bool:
        return reach(built, [demands[index] for index in chosen]).is_met

    everything = range(len(demands))
    proved = not can_meet(everything)
    fewest = smallest_conflict(len(demands), can_meet) if proved else tuple(everything)
    words = tuple(demands[index].words for index in fewest)
    return Solution(masses=(), conflict=Conflict(demands=words, proved=proved))
