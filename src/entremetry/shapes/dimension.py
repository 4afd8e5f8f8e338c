"""Dimensions of shapes, checked before anything is computed from them."""

from __future__ import annotations

import math

from entremetry.errors import OutsideRange, UnknownName
from entremetry.words import decimal, say, say_later

GREATEST = 10.0
"""Longest dimension accepted; no mould is larger, a slip of the unit is. [m]"""

MOST_POINTS = 4_000_000
"""About how many points are spread over a surface at most."""

CHORD_ERROR = 2e-5
"""Greatest distance of a drawn outline from the curve it stands for. [m]"""


def millimetres(length: float) -> str:
    """Write a length the way makers read it."""
    return decimal(f"{length * 1000:.6g} mm")


def millilitres(volume: float) -> str:
    """Write a volume the way makers read it."""
    return decimal(f"{volume * 1e6:.6g} ml")


def refuse(name: str, found: float, accepted: str) -> OutsideRange:
    """Return the error for a dimension that cannot be; its name is still to be said."""
    return OutsideRange.of(say(name), millimetres(found), accepted)


def require_length(name: str, value: float) -> None:
    """Raise OutsideRange unless a length is finite, above zero and at most 10 m."""
    if not 0.0 < value <= GREATEST:
        accepted = say("more than 0 mm, at most {most}", most=millimetres(GREATEST))
        raise refuse(name, value, accepted)


def require_between(name: str, value: float, low: float, high: float, reason: str) -> None:
    """Raise OutsideRange unless a length lies in a closed interval, with the reason."""
    slack = 1e-12 * max(abs(low), abs(high))
    if not low - slack <= value <= high + slack:
        accepted = say(
            "{low} to {high}, {reason}",
            low=millimetres(low),
            high=millimetres(high),
            reason=say(reason),
        )
        raise refuse(name, value, accepted)


def require_known(thing: str, name: str, known: tuple[str, ...]) -> None:
    """Raise UnknownName unless a name is one of those known."""
    if name not in known:
        raise UnknownName(thing, name, known)


def require_factor(factor: float) -> None:
    """Raise OutsideRange unless a scaling factor is finite and above zero."""
    if not (factor > 0.0 and math.isfinite(factor)):
        found = decimal(f"{factor:g}")
        raise OutsideRange.of(say("scaling factor"), found, say("a number above 0"))


def require_spacing(spacing: float, area: float) -> None:
    """Raise OutsideRange unless a spacing gives a number of points that can be held."""
    least = math.sqrt(area / MOST_POINTS)
    if not spacing >= least:
        accepted = say("{least} or more", least=millimetres(least))
        raise refuse(say_later("spacing of points on the surface"), spacing, accepted)


def inside_height(level: float, height: float) -> float:
    """Return a level, held between the closed end and the rim.

    Raises OutsideRange if it is not a number.
    """
    if math.isnan(level):
        raise OutsideRange.of(say("level"), say("not a number"), say("a length"))
    return min(max(level, 0.0), height)
