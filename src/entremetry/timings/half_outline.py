"""Half of a body's section, from the axis or the middle plane outward."""

from __future__ import annotations

from enum import StrEnum
from itertools import pairwise
from math import hypot

import numpy as np

from entremetry.shapes import Box, Floats, Log, Solid

LEVELS = 120
STRAIGHT = 1e-9  # m: points this close to the line between their neighbours are left out
ENDS_COUNT = 3.0  # a box less than so many times as long as wide loses heat through its ends too


class Lie(StrEnum):
    """How a body is cut to become a section: turned around its axis, or across one direction."""

    ROUND = "round"
    ALONG_LENGTH = "along its length"
    ALONG_WIDTH = "along its width"


def lie_of(cavity: Solid) -> Lie:
    """Logs and flat or long boxes are cut across their longer side, all else is turned."""
    if isinstance(cavity, Log):
        return Lie.ALONG_LENGTH
    if not isinstance(cavity, Box):
        return Lie.ROUND
    short, long = sorted((cavity.length, cavity.width))
    if long < ENDS_COUNT * short and short < ENDS_COUNT * cavity.height:
        return Lie.ROUND
    return Lie.ALONG_LENGTH if cavity.length >= cavity.width else Lie.ALONG_WIDTH


def half_wall(solid: Solid, lie: Lie, top: float | None = None) -> Floats:
    """Wall of a body as (across, level), from the closed end to the rim or to `top`. (n, 2) [m]

    `across` is half the width of a straight body, else the radius of the circle that has the
    body's area at that level. A ring's wall begins at its inner rim.
    """
    own = Lie.ALONG_LENGTH if isinstance(solid, Log) else Lie.ROUND
    profile = getattr(solid, "profile", None)
    if profile is not None and lie is own:
        wall = profile.points(max(solid.height, solid.width / 2.0) / LEVELS)
    else:
        levels = solid.height * np.linspace(0.0, 1.0, LEVELS + 1) ** 2
        wall = np.column_stack([[_across(solid, float(z), lie) for z in levels], levels])
    wall = _thinned(np.asarray(wall, dtype=np.float64))
    if top is None or top > solid.height - STRAIGHT:
        return wall
    return _clipped(wall, top, above=False, loop=False)


def closed(wall: Floats) -> Floats:
    """The wall with opening and axis: one closed outline, first point not repeated. (n, 2) [m]"""
    if is_ring(wall):
        return wall
    ends = [(0.0, wall[-1, 1]), (0.0, wall[0, 1])]
    beside = (wall[-1, 0], wall[0, 0])
    added = [end for end, across in zip(ends, beside, strict=True) if across > STRAIGHT]
    return np.concatenate([wall, np.array(added).reshape(-1, 2)])


def between(solid: Solid, low: float, high: float, lie: Lie) -> Floats:
    """Closed half section of a body between two of its levels. (n, 2) [m]"""
    outline = closed(half_wall(solid, lie))
    if low > STRAIGHT:
        outline = _clipped(outline, low, above=True)
    if high < solid.height - STRAIGHT:
        outline = _clipped(outline, high, above=False)
    return outline


def mirrored(outline: Floats, high: float) -> Floats:
    """The outline upside down, its level 0 at `high`, with its inside on the same hand."""
    return np.ascontiguousarray((outline * (1.0, -1.0) + (0.0, high))[::-1])


def enclosed(outline: Floats) -> float:
    """Area of a half section. [m2]"""
    x, z = outline[:, 0], outline[:, 1]
    return abs(float(np.sum(x * np.roll(z, -1) - np.roll(x, -1) * z))) / 2.0


def is_ring(wall: Floats) -> bool:
    """Whether a wall begins at an inner rim, away from the axis and above the closed end."""
    return bool(wall[0, 0] > STRAIGHT and wall[0, 1] > STRAIGHT)


def _across(solid: Solid, level: float, lie: Lie) -> float:
    if lie is Lie.ROUND:
        return float(np.sqrt(max(solid.area_at(level), 0.0) / np.pi))
    along = solid.length if lie is Lie.ALONG_LENGTH else solid.width
    if isinstance(solid, Box):
        side = solid.width if lie is Lie.ALONG_LENGTH else solid.length
        return max(side / 2.0 - solid.taper * (1.0 - level / solid.height), 0.0)
    return solid.area_at(level) / (2.0 * along)


def _thinned(wall: Floats) -> Floats:
    """The wall without points that lie on the line between those beside them."""
    kept, points = [0], wall.tolist()
    x, z = points[0]
    for place, (here, after) in enumerate(pairwise(points[1:]), start=1):
        across, up = after[0] - x, after[1] - z
        off = abs(across * (here[1] - z) - up * (here[0] - x))
        if off > STRAIGHT * hypot(across, up):
            kept.append(place)
            x, z = here
    return wall[[*kept, len(wall) - 1]]


def _clipped(points: Floats, level: float, *, above: bool, loop: bool = True) -> Floats:
    """The part of an outline, or of a line, on one side of a level."""
    kept: list[tuple[float, float]] = []
    sign = 1.0 if above else -1.0
    after = np.roll(points, -1, axis=0)
    if not loop:
        after[-1] = points[-1]
    for here, there in zip(points, after, strict=True):
        inside_here, inside_there = sign * (here[1] - level), sign * (there[1] - level)
        if inside_here >= 0.0:
            kept.append((float(here[0]), float(here[1])))
        if inside_here * inside_there < 0.0:
            share = inside_here / (inside_here - inside_there)
            kept.append((float(here[0] + share * (there[0] - here[0])), level))
    return np.array(kept)
