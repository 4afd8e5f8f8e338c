"""Walls that rise from a plan outline: distances and points on them."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from entremetry.shapes.outline import along, grid_over
from entremetry.shapes.piece import Segment
from entremetry.shapes.solid import Floats


def clearance_of_sloping_wall(beside: Floats, z: Floats, height: float, taper: float) -> Floats:
    """Distance from a flat closed end and a wall that leans in by `taper` down to it.

    `beside` is the distance from the rim outline seen from above, positive inside. Inside a
    convex outline it is exact; outside a sharp sloping edge it may fall short of the distance.
    """
    over_floor = np.where(beside >= taper, np.abs(z), np.hypot(taper - beside, z))
    wall = Segment((taper, 0.0), (0.0, height)).nearest(beside, z)
    above = np.hypot(beside, np.minimum(z - height, 0.0))
    nearest = np.minimum(np.minimum(over_floor, wall), above)
    lean = taper * (1.0 - np.clip(z / height, 0.0, 1.0))
    inside = (z > 0.0) & (beside > lean)
    return np.where(inside, nearest, -nearest)


def upright_surface(
    plan: Callable[[float], tuple[Floats, ...]], levels: Floats, spacing: float
) -> Floats:
    """Return points on the walls at `levels` and on both end faces. (n, 3) [m]"""
    parts = []
    for level in levels:
        rings = [along(outline, spacing) for outline in plan(float(level))]
        if level in (levels[0], levels[-1]):
            rings.append(grid_over(plan(float(level)), spacing))
        flat = np.concatenate(rings)
        parts.append(np.column_stack([flat, np.full(len(flat), level)]))
    return np.concatenate(parts)
