"""The level to which a volume fills a body."""

from __future__ import annotations

from collections.abc import Callable

from entremetry.errors import OutsideRange
from entremetry.shapes.dimension import millilitres
from entremetry.words import say

ROUNDING = 1e-12
"""Share of the whole by which a volume may exceed it through rounding alone."""


def require_volume(volume: float, whole: float) -> float:
    """Return the volume to fill, at most the whole.

    Raises OutsideRange if it is negative, not a number, or more than the body holds.
    """
    if not 0.0 <= volume <= whole * (1.0 + ROUNDING):
        accepted = say("0 to {most}", most=millilitres(whole))
        raise OutsideRange.of(say("volume to fill"), millilitres(volume), accepted)
    return min(volume, whole)


def level_by_bisection(
    volume_below: Callable[[float], float], height: float, volume: float
) -> float:
    """Return the level below which lies `volume`, halving until floats end.

    `volume_below` must rise with the level; `volume` is already checked. [m]
    """
    if volume == 0.0:
        return 0.0
    low, high = 0.0, height
    while low < (middle := 0.5 * (low + high)) < high:
        if volume_below(middle) < volume:
            low = middle
        else:
            high = middle
    return high
