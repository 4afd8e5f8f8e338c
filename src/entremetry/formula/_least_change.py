"""The formula nearest to the author's, by relative least squares (SLSQP, through scipy)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from entremetry.formula._demand import Demand, Pull
from entremetry.formula._ice_demand import IceDemand
from entremetry.formula._model import Model
from entremetry.physics.arrays import Floats

MOST_STEPS = 300
CLOSE = 1e-13
MET = -1e-6  # tolerances
UNMOVED = 1e-7  # relative change that is none


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Least:
    """Half the sum of the squares of all relative changes and of all distances from the aims."""

    built: Model
    pulls: Sequence[Pull]
    free: Floats
    pinned: Floats

    def full(self, z: Floats) -> Floats:
        """Changes of all lines from those of the free ones."""
        x = self.pinned.copy()
        x[self.free] = z
        return x

    def value(self, z: Floats) -> tuple[float, Floats]:
        """Sum and slope."""
        x = self.full(z)
        total, slope = 0.5 * float(x @ x), x.copy()
        for each in self.pulls:
            distance, rise = each.at(self.built, x)
            total += 0.5 * each.weight * distance**2
            slope += each.weight * distance * rise
        return total, slope[self.free]


def least_change(
    built: Model,
    demands: Sequence[Demand],
    pulls: Sequence[Pull],
    ends: Sequence[tuple[float, float | None]],
    begin: Floats,
) -> Floats | None:
    """Relative changes that meet all demands, or None if none were found from this beginning."""
    from scipy.optimize import minimize

    free = np.array([high is None or high > low for low, high in ends])
    pinned = np.array(
        [0.0 if is_free else low for (low, _), is_free in zip(ends, free, strict=True)]
    )
    least = Least(built=built, pulls=pulls, free=free, pinned=pinned)
    inside = [end for end, is_free in zip(ends, free, strict=True) if is_free]
    x = pinned
    if inside:
        found = minimize(
            least.value,
            _within(begin[free], inside),
            jac=True,
            bounds=inside,
            constraints=_constraints(least, demands),
            method="SLSQP",
            options={"maxiter": MOST_STEPS, "ftol": CLOSE},
        )
        x = _still(least.full(np.asarray(found.x)))
    return x if all(each.worst(built, x) >= MET for each in demands) else None


def _still(x: Floats) -> Floats:
    """Changes without those that only rounding made."""
    still: Floats = np.where(np.abs(x) < UNMOVED, 0.0, x)
    return still


def _within(z: Floats, ends: Sequence[tuple[float, float | None]]) -> Floats:
    lows = np.array([low for low, _ in ends])
    highs = np.array([np.inf if high is None else high for _, high in ends])
    within: Floats = np.clip(z, lows, highs)
    return within


def _constraints(least: Least, demands: Sequence[Demand]) -> list[dict[str, Any]]:
    rows = [row for demand in demands for row in demand.rows]
    curved = [each for demand in demands for each in demand.curved]
    made: list[dict[str, Any]] = [_curved(least, each) for each in curved]
    if rows:
        slopes = np.array([row.slope for row in rows])[:, least.free]
        levels = np.array([row.level for row in rows])
        made.append({"type": "ineq", "fun": lambda z: slopes @ z + levels, "jac": lambda z: slopes})
    return made


def _curved(least: Least, each: IceDemand) -> dict[str, Any]:
    def level(z: Floats) -> float:
        return each.level(least.built, least.full(z))

    def slope(z: Floats) -> Floats:
        free: Floats = each.slope(least.built, least.full(z))[least.free]
        return free

    return {"type": "ineq", "fun": level, "jac": slope}
