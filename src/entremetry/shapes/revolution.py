"""Any body of revolution, from points of its profile or from a table of measured diameters."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, field

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.shapes.crossing import first_crossing
from entremetry.shapes.dimension import GREATEST, millimetres, refuse, require_factor
from entremetry.shapes.piece import Point, Segment
from entremetry.shapes.profile import Profile
from entremetry.shapes.revolved import Revolved
from entremetry.words import say, say_later

MOST_POINTS = 2000


@dataclass(frozen=True, slots=True, kw_only=True)
class Revolution(Revolved):
    """A body of revolution whose profile runs straight from point to point.

    Parameters
    ----------
    points : pairs of (radius, level)
        From the closed end to the rim, or from the rim to the closed end. A first radius
        above zero at level 0 means a flat closed end. A ring with a hole starts and ends at
        the rim level: inner rim, closed end, outer rim. [m]
    """

    points: tuple[Point, ...]
    profile: Profile = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        points = tuple((float(radius), float(level)) for radius, level in self.points)
        object.__setattr__(self, "points", points)
        object.__setattr__(self, "profile", _profile(_in_order(points)))

    @property
    def height(self) -> float:
        """Distance from the closed end to the rim. [m]"""
        return self.profile.height

    def scaled(self, factor: float) -> Revolution:
        """Similar body with every length multiplied."""
        require_factor(factor)
        return Revolution(points=tuple((u * factor, z * factor) for u, z in self.points))


def revolution_from_table(rows: Iterable[tuple[float, float]]) -> Revolution:
    """Return the body with measured (level, diameter) rows, levels rising from 0. [m]

    Raises OutsideRange if a level does not lie above the one before.
    """
    table = [(float(level), float(diameter)) for level, diameter in rows]
    for (before, _), (level, _) in zip(table, table[1:], strict=False):
        if not level > before:
            least = millimetres(before)
            accepted = say("more than the level of the row before, {least}", least=least)
            raise refuse(say_later("level in the table"), level, accepted)
    return Revolution(points=tuple((diameter / 2.0, level) for level, diameter in table))


def _in_order(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """Return checked points from the axis, or from an inner rim, to the outer rim."""
    _require_points(points)
    top = max(level for _, level in points)
    if points[-1][1] < top and points[0][1] == top:
        points = points[::-1]
    if points[-1][1] < top:
        rim = say("the rim, {level}", level=millimetres(top))
        raise refuse(say_later("last level of the profile"), points[-1][1], rim)
    if points[0][1] == top and points[0][0] > points[-1][0]:
        points = points[::-1]
    return _with_closed_end(_without_opening(points, top), top)


def _require_points(points: tuple[Point, ...]) -> None:
    """Raise OutsideRange unless there are points, each with a radius and level that can be."""
    if not 2 <= len(points) <= MOST_POINTS:
        accepted = say("2 to {most}", most=MOST_POINTS)
        raise OutsideRange.of(say("points of the profile"), f"{len(points)}", accepted)
    for radius, level in points:
        _require_length_or_none(say_later("radius in the profile"), radius)
        _require_length_or_none(say_later("level in the profile"), level)
    lowest = min(level for _, level in points)
    if lowest != 0.0:
        raise refuse(say_later("lowest level of the profile"), lowest, say("0 mm, the closed end"))


def _require_length_or_none(name: str, value: float) -> None:
    """Raise OutsideRange unless a length is from 0 to 10 m."""
    if not 0.0 <= value <= GREATEST:
        raise refuse(name, value, say("0 mm to {most}", most=millimetres(GREATEST)))


def _without_opening(points: tuple[Point, ...], top: float) -> tuple[Point, ...]:
    """Drop level lines at the rim: they close the opening, they are no wall."""
    while len(points) > 2 and points[-1][1] == top == points[-2][1]:
        points = points[:-1]
    while len(points) > 2 and points[0][1] == top == points[1][1]:
        points = points[1:]
    return points


def _with_closed_end(points: tuple[Point, ...], top: float) -> tuple[Point, ...]:
    """Add the axis below a flat closed end; refuse a profile that hangs in the air."""
    radius, level = points[0]
    if radius > 0.0 and level == 0.0:
        return ((0.0, 0.0), *points)
    if radius > 0.0 and level != top:
        accepted = say(
            "0 mm, or the rim ({level}) for a ring, or a radius of 0 mm", level=millimetres(top)
        )
        raise refuse(say_later("first level of the profile"), level, accepted)
    return points


def _profile(points: tuple[Point, ...]) -> Profile:
    """Return the profile, refused if it crosses itself or encloses nothing."""
    kept = [points[0]]
    kept += [b for a, b in zip(points, points[1:], strict=False) if math.dist(a, b) > 0.0]
    edges = np.array([(a, b) for a, b in zip(kept, kept[1:], strict=False)])
    if any(radius == 0.0 for radius, _ in kept[1:-1]):
        raise refuse(
            say_later("radius in the profile"), 0.0, say("0 mm only at its first or last point")
        )
    found = first_crossing(edges, ()) if len(edges) > 1 else None
    if found:
        raise OutsideRange(
            say(
                "profile: its lines {one} and {other} cross or touch; "
                "accepted: a line that does not cross itself",
                one=found[0] + 1,
                other=found[1] + 1,
            )
        )
    height = max(level for _, level in kept)
    profile = Profile(tuple(Segment(a, b) for a, b in zip(kept, kept[1:], strict=False)), height)
    if not profile.square_below(height) > 0.0:
        raise OutsideRange(say("profile: it encloses no volume; accepted: some radius above 0 mm"))
    return profile
