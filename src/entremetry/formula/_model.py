"""A problem in numbers: relative changes of the free lines, and rows that must not be negative."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from entremetry.formula.state import weights
from entremetry.formula.wish import FormulaLine, Problem
from entremetry.larder.constituents import NAMES
from entremetry.physics.arrays import Floats

LEFT = 0.1  # part of the finished mix that a formula keeps at the least
LEAST_MASS = 1e-12  # kg


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Model:
    """State of the mix as a function of x, the change of each line relative to its start."""

    start: Floats
    state: Floats
    per_x: Floats

    def masses(self, x: Floats) -> Floats:
        """Masses of the lines. [kg]"""
        return self.start * (1.0 + x)

    def at(self, x: Floats) -> Floats:
        """State of the finished mix."""
        return self.state + self.per_x @ x


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Row:
    """A demand slope . x + level >= 0, scaled so that 1 is a whole tolerance."""

    slope: Floats
    level: float

    def at(self, x: Floats) -> float:
        """What is left of it; below zero it is not met."""
        return float(self.slope @ x + self.level)


def model(problem: Problem) -> Model:
    """Numbers of a problem."""
    start = np.array([line.mass for line in problem.lines])
    adds = np.array([line.adds for line in problem.lines]).T
    return Model(start=start, state=np.array(problem.fixed) + adds @ start, per_x=adds * start)


def ratio_row(built: Model, weights: Floats, width: float) -> Row:
    """Demand that a weighted sum of the state is not negative; `width` is one tolerance of it."""
    return Row(slope=(weights @ built.per_x) / width, level=float(weights @ built.state) / width)


def something_is_left(built: Model) -> Row:
    """Demand that a tenth of the mix is left; without it, no formula at all would keep shares."""
    whole = weights(dict.fromkeys(NAMES, 1.0))
    total = max(float(whole @ built.state), LEAST_MASS)
    return Row(
        slope=10.0 * (whole @ built.per_x) / total,
        level=10.0 * (float(whole @ built.state) / total - LEFT),
    )


def bound_rows(lines: Sequence[FormulaLine], index: int) -> list[Row]:
    """Demands that a line keeps within the bounds of its author."""
    line = lines[index]
    unit = np.zeros(len(lines))
    unit[index] = 100.0
    rows = [Row(slope=unit, level=100.0 * (1.0 - line.low / line.mass))] if line.low else []
    if np.isfinite(line.high):
        rows.append(Row(slope=-unit, level=100.0 * (line.high / line.mass - 1.0)))
    return rows


def limits(lines: Sequence[FormulaLine]) -> list[tuple[float, float | None]]:
    """Ends of x by the bounds of all lines; no mass is negative."""
    return [
        (line.low / line.mass - 1.0, None if np.isinf(line.high) else line.high / line.mass - 1.0)
        for line in lines
    ]
