"""One body inside another: where an insert lies, and how thick the wall around it is."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.shapes.solid import Floats, Solid
from entremetry.words import say

Offset = tuple[float, float]
Towards = Literal["side", "closed end", "rim"]

SPACING = 0.0005
"""Distance between the points at which a wall is measured. [m]"""

MOST_POINTS = 150_000
"""Above about this many points the spacing grows instead."""

MANY = 20_000
"""Up to so many points, measuring all is quicker than finding out which can matter."""

FEW = 100
"""So many points are measured to find out which of the others can matter."""

ROUNDING = 1e-7
"""Distances between points are this exact, from the difference of their squares. [m]"""

STEP = 1e-6
"""Step by which a direction is felt out. [m]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class WallThickness:
    """The thinnest wall around an insert; negative by as much as it sticks into the wall."""

    thinnest: float
    at: tuple[float, float, float]
    towards: Towards


def thinnest_wall(
    cavity: Solid,
    insert: Solid,
    *,
    level: float,
    offset: Offset = (0.0, 0.0),
    turned: bool = False,
    spacing: float = SPACING,
) -> WallThickness:
    """Return the thinnest wall between an insert and the cavity it lies in.

    Parameters
    ----------
    cavity, insert : Solid
        The mould and what lies in it.
    level : float
        Level of the cavity at which the insert's nearer end lies. [m]
    offset : pair of float
        Shift of the insert's axis from the cavity's, along x and y. [m]
    turned : bool
        True if the insert lies turned over, its opening towards the cavity's closed end.
    spacing : float
        Greatest distance between the points at which the wall is measured. [m]

    Returns
    -------
    WallThickness
        Thinnest distance [m], where on the insert, and towards which part of the cavity:
        'rim' if that point lies at the rim level or above.

    Notes
    -----
    Measured at points on the insert, its corners included. As a distance changes by no more
    than one moves, the result is too large by less than `spacing`; on smooth walls by about
    spacing squared over eight radii.
    """
    points = _near_the_wall(cavity, placed_surface(insert, level, offset, turned, spacing))
    distances = cavity.clearance(points)
    thinnest = float(np.min(distances))
    near = points[distances <= thinnest + 1e-9]
    point = near[np.argmin(near[:, 2])]
    return WallThickness(
        thinnest=thinnest,
        at=(float(point[0]), float(point[1]), float(point[2])),
        towards=_towards(cavity, point),
    )


def gap_between(
    a: Solid,
    level_a: float,
    offset_a: Offset,
    b: Solid,
    level_b: float,
    offset_b: Offset,
    *,
    turned_a: bool = False,
    turned_b: bool = False,
    spacing: float = SPACING,
) -> float:
    """Return the least distance between two inserts; negative if they overlap. [m]

    An overlap counts by how deep the deepest point of either surface lies in the other.

    Levels, offsets and `turned` as in `thinnest_wall`, and as exact.
    """
    of_a = placed_surface(a, level_a, offset_a, turned_a, spacing)
    of_b = placed_surface(b, level_b, offset_b, turned_b, spacing)
    from_b = depth_inside(b, _taken_back(of_a, b, level_b, offset_b, turned_b))
    from_a = depth_inside(a, _taken_back(of_b, a, level_a, offset_a, turned_a))
    return -float(max(np.max(from_a), np.max(from_b)))


def depth_inside(solid: Solid, points: Floats) -> Floats:
    """Return how deep points (n, 3) lie inside a body closed at its rim; negative outside."""
    walls, below_rim = solid.clearance(points), solid.height - points[:, 2]
    outside = np.hypot(np.minimum(walls, 0.0), np.minimum(below_rim, 0.0))
    return np.where((walls < 0.0) | (below_rim < 0.0), -outside, np.minimum(walls, below_rim))


def placed_surface(
    insert: Solid, level: float, offset: Offset, turned: bool, spacing: float = SPACING
) -> Floats:
    """Return points on an insert as it lies in the cavity. (n, 3) [m]"""
    if not all(math.isfinite(place) for place in (level, *offset)):
        raise OutsideRange.of(say("place of an insert"), f"{level:g}, {offset}", say("lengths"))
    coarsest = math.sqrt(2.0 * insert.wall_area / MOST_POINTS)
    points = insert.surface(max(spacing, coarsest))
    if turned:
        points = points * (1.0, -1.0, -1.0) + (0.0, 0.0, insert.height)
    return points + (offset[0], offset[1], level)


def placed_section(
    insert: Solid, level: float, offset: Offset = (0.0, 0.0), turned: bool = False
) -> tuple[Floats, ...]:
    """Return the outlines (x, z) of an insert's own axial section as it lies in the cavity.

    An offset along y is not drawn: the insert is shown cut through its own axis. [m]
    """
    outlines = insert.section()
    if turned:
        outlines = tuple(outline * (1.0, -1.0) + (0.0, insert.height) for outline in outlines)
    return tuple(outline + (offset[0], level) for outline in outlines)


def volume_within(insert: Solid, level: float, turned: bool, low: float, high: float) -> float:
    """Return the volume of an insert between two levels of the cavity. [m3]"""
    if turned:
        top = level + insert.height
        return max(insert.volume_below(top - low) - insert.volume_below(top - high), 0.0)
    return max(insert.volume_below(high - level) - insert.volume_below(low - level), 0.0)


def _near_the_wall(cavity: Solid, points: Floats) -> Floats:
    """Return the points that may be nearest to the wall.

    A few points are measured; another point's distance is at least that of the nearest of
    them less the way between the two.
    """
    if len(points) <= MANY:
        return points
    few = points[:: len(points) // FEW + 1]
    distances = cavity.clearance(few)
    ways = points @ (-2.0 * few.T)  # squares of the ways at first
    ways += np.sum(points**2, axis=1)[:, None]
    ways += np.sum(few**2, axis=1)
    np.sqrt(np.maximum(ways, 0.0, out=ways), out=ways)
    kept: Floats = points[np.max(distances - ways, axis=1) <= np.min(distances) + ROUNDING]
    return kept


def _taken_back(
    points: Floats, insert: Solid, level: float, offset: Offset, turned: bool
) -> Floats:
    """Return points of the cavity in the insert's own frame."""
    points = points - (offset[0], offset[1], level)
    return points * (1.0, -1.0, -1.0) + (0.0, 0.0, insert.height) if turned else points


def _towards(cavity: Solid, point: Floats) -> Towards:
    """Say which part of the cavity a point is nearest to."""
    if point[2] >= cavity.height - 1e-9:
        return "rim"
    steps = np.concatenate([np.eye(3), -np.eye(3)]) * STEP
    felt = cavity.clearance(point + steps)
    x, y, z = felt[:3] - felt[3:]
    return "closed end" if z > math.hypot(x, y) else "side"
