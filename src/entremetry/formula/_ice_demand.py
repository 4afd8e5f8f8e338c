"""Demands on the balance with ice, which are curved in the masses.

The water activity of a mix depends on two ratios alone: R, the moles dissolved per mole of
liquid water, and Q, the same with each mole times the root of its Norrish constant:
ln a = -ln u - (Q/u)^2 with u = 1 + R. At a given activity with c = -ln a the border is
Q = u sqrt(c - ln u), a curve that bends downward and ends at R = e^c - 1. To stay on the dilute
side is therefore a convex demand, which tangents surround; to stay on the strong side is not, but
on a piece of R a chord surrounds it. Both make a curved demand into straight rows that no formula
which meets it can break, so that a refusal is a proof.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from entremetry.formula._model import Model, Row, ratio_row
from entremetry.formula.state import bent_moles, dissolved_moles, water_moles
from entremetry.physics.arrays import Floats

TANGENTS = 9
PIECES = 6
LEAST_WATER = 1e-9  # mol; keeps the ratios finite while a solver wanders


@dataclass(frozen=True, slots=True, kw_only=True)
class IceDemand:
    """A logarithm of water activity, with a part `liquid` of the free water left, on one side.

    `width` is one tolerance of the logarithm.
    """

    liquid: float
    log_activity: float
    dilute: bool
    width: float

    @property
    def _depth(self) -> float:
        return -self.log_activity

    def level(self, built: Model, x: Floats) -> float:
        """What is left of the demand, in tolerances; below zero it is not met."""
        sign = 1.0 if self.dilute else -1.0
        value, _ = log_activity(built, x, self.liquid)
        return sign * (value - self.log_activity) / self.width

    def slope(self, built: Model, x: Floats) -> Floats:
        """Slope of `level`."""
        sign = 1.0 if self.dilute else -1.0
        _, slope = log_activity(built, x, self.liquid)
        return sign * slope / self.width

    def choices(self, built: Model) -> list[list[Row]]:
        """Sets of rows, likeliest first; whoever meets the demand meets at least one whole set."""
        end = math.expm1(self._depth)
        if self.dilute:
            return [self._tangents(built, end)]
        edges = np.linspace(0.0, end, PIECES + 1)
        here = self._moles_per_water(built)
        spans = sorted(
            zip(edges[:-1], edges[1:], strict=True),
            key=lambda span: max(span[0] - here, here - span[1]),
        )
        beyond = [self._row(built, end, moles=1.0, bent=0.0)]
        pieces = [self._chord(built, float(a), float(b)) for a, b in spans]
        return [beyond, *pieces] if here > end else [*pieces, beyond]

    def _moles_per_water(self, built: Model) -> float:
        """R of the formula as it is."""
        water = self.liquid * float(water_moles() @ built.state)
        return float(dissolved_moles() @ built.state) / max(water, LEAST_WATER)

    def _tangents(self, built: Model, end: float) -> list[Row]:
        rows = [self._row(built, -end, moles=-1.0, bent=0.0)]
        for r in np.linspace(0.0, end * 0.98, TANGENTS):
            height, rise = self._border(float(r))
            rows.append(self._row(built, rise * r - height, moles=rise, bent=-1.0))
        return rows

    def _chord(self, built: Model, a: float, b: float) -> list[Row]:
        low, high = self._border(a)[0], self._border(b)[0]
        rise = (high - low) / (b - a)
        return [
            self._row(built, low - rise * a, moles=-rise, bent=1.0),
            self._row(built, a, moles=1.0, bent=0.0),
            self._row(built, -b, moles=-1.0, bent=0.0),
        ]

    def _border(self, r: float) -> tuple[float, float]:
        """Q on the border at R, and its slope."""
        root = math.sqrt(max(self._depth - math.log1p(r), 0.0))
        return (1.0 + r) * root, root - 0.5 / max(root, 1e-9)

    def _row(self, built: Model, floor: float, *, moles: float, bent: float) -> Row:
        """Demand moles R + bent Q >= floor."""
        water = self.liquid * water_moles()
        summed = moles * dissolved_moles() + bent * bent_moles() - floor * water
        width = float(water @ built.state) * self.width
        return ratio_row(built, summed, max(width, LEAST_WATER))


def log_activity(built: Model, x: Floats, liquid: float) -> tuple[float, Floats]:
    """Logarithm of the water activity of the solution, and its slope in x."""
    state = built.at(x)
    water, per_water = liquid * float(water_moles() @ state), liquid * water_moles() @ built.per_x
    water = max(water, LEAST_WATER)
    r, per_r = _ratio(dissolved_moles(), built, state, water, per_water)
    q, per_q = _ratio(bent_moles(), built, state, water, per_water)
    u = 1.0 + r
    value = -math.log(u) - (q / u) ** 2
    slope = -per_r / u - 2.0 * q / u * (per_q / u - q * per_r / u**2)
    return value, slope


def _ratio(
    weights: Floats, built: Model, state: Floats, water: float, per_water: Floats
) -> tuple[float, Floats]:
    ratio = max(float(weights @ state), 0.0) / water
    return ratio, (weights @ built.per_x - ratio * per_water) / water
