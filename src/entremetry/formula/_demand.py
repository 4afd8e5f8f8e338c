"""Wishes and bounds as demands: straight rows and curved demands, each with its words."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from entremetry.formula._ice_demand import IceDemand, log_activity
from entremetry.formula._model import Model, Row, bound_rows, ratio_row
from entremetry.formula._words import grams, number
from entremetry.formula.measure import FreezingPoint, IceShare, Share
from entremetry.formula.state import weights
from entremetry.formula.wish import FormulaLine, Problem, Wish
from entremetry.physics.arrays import Floats
from entremetry.physics.solution import ice_activity
from entremetry.words import say

THINNEST = 1e-9
WARMEST = 273.149  # K; pure water cannot be told from a mix that is any closer
FIRM = 4.0  # how much more a firm wish is drawn to its aim than one that may give way
LEAST_LIQUID = 1e-3  # part of the water that never counts as ice


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Demand:
    """What must hold, in words and in numbers."""

    words: str
    rows: tuple[Row, ...] = ()
    curved: tuple[IceDemand, ...] = ()

    def worst(self, built: Model, x: Floats) -> float:
        """What is left of the part that is met least, in tolerances."""
        straight = [row.at(x) for row in self.rows]
        return min([*straight, *(each.level(built, x) for each in self.curved)])


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Pull:
    """How far a wish is from its aim, in tolerances: a straight row or a curved demand."""

    weight: float
    row: Row | None = None
    curved: IceDemand | None = None

    def at(self, built: Model, x: Floats) -> tuple[float, Floats]:
        """Distance and its slope."""
        if self.row is not None:
            return self.row.at(x), self.row.slope
        if self.curved is None:
            return 0.0, np.zeros_like(x)
        return self.curved.level(built, x), self.curved.slope(built, x)


def demand(built: Model, wish: Wish) -> Demand:
    """Demand that a wish makes."""
    words = wish_words(wish)
    if isinstance(wish.measure, Share):
        return Demand(words=words, rows=tuple(_share_rows(built, wish, wish.measure)))
    return Demand(words=words, curved=tuple(_ice_demands(built, wish)))


def pull(built: Model, wish: Wish) -> Pull:
    """What draws a formula to the aim of a wish."""
    measure = wish.measure
    weight = FIRM if wish.firm else 1.0
    if isinstance(measure, Share):
        return Pull(weight=weight, row=_ratio(built, measure, wish.aim, _half(wish), 1.0))
    if _is_free_of_ice(wish, wish.aim):
        return Pull(weight=0.0)
    liquid, log = _ice_end(wish, wish.aim)
    width = _ice_width(built, *_ice_ends(wish))
    aimed = IceDemand(liquid=liquid, log_activity=log, dilute=True, width=width)
    return Pull(weight=weight, curved=aimed)


def bound(problem: Problem, index: int) -> Demand | None:
    """Demand that the author's bounds of a line make, if there are any."""
    rows = bound_rows(problem.lines, index)
    return Demand(words=_bound_words(problem.lines[index]), rows=tuple(rows)) if rows else None


def wish_words(wish: Wish) -> str:
    """A wish as a person reads it."""
    measure = wish.measure
    low, high = (number(measure.printed(end)) for end in (wish.low, wish.high))
    named = {"measure": say(measure.words), "unit": measure.unit}
    if math.isinf(wish.high):
        return say("{measure} at least {low} {unit}", low=low, **named)
    if math.isinf(wish.low):
        return say("{measure} at most {high} {unit}", high=high, **named)
    return say("{measure} between {low} and {high} {unit}", low=low, high=high, **named)


def _bound_words(line: FormulaLine) -> str:
    low = grams(line.low)
    if line.is_pinned:
        return say("{name} pinned at {mass}", name=line.name, mass=low)
    if math.isinf(line.high):
        return say("{name} at least {mass}", name=line.name, mass=low)
    return say(
        "{name} between {low} and {high} g",
        name=line.name,
        low=number(line.low * 1e3),
        high=number(line.high * 1e3),
    )


def _half(wish: Wish) -> float:
    """Half the width of a wish: the scale on which it is missed."""
    if math.isinf(wish.low) or math.isinf(wish.high):
        return max(wish.measure.tolerance(wish.aim), THINNEST)
    return max((wish.high - wish.low) / 2.0, THINNEST * max(abs(wish.aim), 1.0))


def _share_rows(built: Model, wish: Wish, share: Share) -> Iterator[Row]:
    half = _half(wish)
    if math.isfinite(wish.low):
        yield _ratio(built, share, wish.low, half, 1.0)
    if math.isfinite(wish.high):
        yield _ratio(built, share, wish.high, half, -1.0)


def _ratio(built: Model, share: Share, end: float, half: float, sign: float) -> Row:
    """Demand that a share is above (or below, with a negative sign) an end."""
    if not share.per:
        return _sum_row(built, share, end, half, sign)
    per = weights(share.per)
    under = max(float(per @ built.state), THINNEST)
    return ratio_row(built, sign * (weights(share.of) - end * per), half * under)


def _sum_row(built: Model, share: Share, end: float, half: float, sign: float) -> Row:
    row = ratio_row(built, sign * weights(share.of), half)
    return Row(slope=row.slope, level=row.level - sign * end / half)


def _ice_demands(built: Model, wish: Wish) -> Iterator[IceDemand]:
    """Below an upper freezing point is the strong side; above a lower share of ice the dilute."""
    low, high = _ice_ends(wish)
    width = _ice_width(built, low, high)
    for value, (liquid, log), lower in ((wish.low, low, True), (wish.high, high, False)):
        if math.isfinite(value) and not (lower and _is_free_of_ice(wish, value)):
            yield IceDemand(liquid=liquid, log_activity=log, dilute=lower, width=width)


def _is_free_of_ice(wish: Wish, value: float) -> bool:
    """Tell whether a value asks for no ice at all, which every stronger mix has as well."""
    return isinstance(wish.measure, IceShare) and value <= 0.0


def _ice_ends(wish: Wish) -> tuple[tuple[float, float], tuple[float, float]]:
    half = _half(wish)
    low = wish.low if math.isfinite(wish.low) else wish.aim - half
    high = wish.high if math.isfinite(wish.high) else wish.aim + half
    return _ice_end(wish, low), _ice_end(wish, high)


def _ice_end(wish: Wish, value: float) -> tuple[float, float]:
    """Part of the water that is liquid, and the logarithm of activity in balance with ice."""
    if isinstance(wish.measure, FreezingPoint):
        return 1.0, math.log(ice_activity(min(value, WARMEST)))
    temperature = wish.measure.temperature if isinstance(wish.measure, IceShare) else 273.15
    return max(1.0 - value, LEAST_LIQUID), math.log(ice_activity(temperature))


def _ice_width(built: Model, low: tuple[float, float], high: tuple[float, float]) -> float:
    """One tolerance, as a difference of the logarithm of water activity."""
    here = np.zeros(len(built.start))
    levels = [log_activity(built, here, liquid)[0] - log for liquid, log in (low, high)]
    return max(abs(levels[1] - levels[0]) / 2.0, THINNEST)
