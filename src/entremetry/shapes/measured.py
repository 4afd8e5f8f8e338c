"""Moulds known by the water they hold."""

from __future__ import annotations

from entremetry.errors import OutsideRange
from entremetry.shapes.dimension import millilitres
from entremetry.shapes.solid import Solid
from entremetry.words import say

MOST = 1.0
"""Largest volume accepted: a cubic metre. [m3]"""


def measured_by_water(volume: float, like: Solid) -> Solid:
    """Return a body similar to another that holds a measured volume [m3].

    The volume is exact; every other figure is only as good as the likeness.
    Raises OutsideRange unless the volume is above zero and at most a cubic metre.
    """
    if not 0.0 < volume <= MOST:
        accepted = say("more than 0, at most {most}", most=millilitres(MOST))
        raise OutsideRange.of(say("volume measured by water"), millilitres(volume), accepted)
    return like.scaled((volume / like.volume) ** (1.0 / 3.0))
