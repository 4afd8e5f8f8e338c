"""Half of a body's section, from the axis outward."""

from __future__ import annotations

import numpy as np

from entremetry.shapes import Box, Floats, Log, Ring, Solid

LEVELS = 160


def half_outline(solid: Solid, *, straight: bool) -> Floats:
    """Wall of a body as (across, level), from the closed end to the rim. (n, 2) [m]

    `across` is half the width of a straight body, else the radius of the circle that has the
    body's area at that level. A ring with a hole gives its whole closed outline but the opening,
    from the inner rim to the outer one.
    """
    if isinstance(solid, Ring):
        return _band(solid)
    levels = _levels(solid)
    if straight:
        across = [_half_width(solid, level) for level in levels]
    else:
        across = [np.sqrt(solid.area_at(level) / np.pi) for level in levels]
    return np.column_stack([across, levels])


def between(solid: Solid, low: float, high: float, *, straight: bool) -> Floats:
    """Closed half section of a body between two of its levels. (n, 2) [m]"""
    if isinstance(solid, Ring):
        return _clipped(_clipped(_band(solid), low, above=True), high, above=False)
    low, high = max(low, 0.0), min(high, solid.height)
    wall = half_outline(solid, straight=straight)
    inner = wall[(wall[:, 1] > low + 1e-9) & (wall[:, 1] < high - 1e-9)]
    ends = [(float(np.interp(level, wall[:, 1], wall[:, 0])), level) for level in (low, high)]
    outer = np.concatenate([[ends[0]], inner, [ends[1]]])
    outline = np.concatenate([[(0.0, low)], outer, [(0.0, high)]])
    return outline[1:] if outline[1, 0] < 1e-9 else outline


def mirrored(outline: Floats, high: float) -> Floats:
    """The outline upside down, its level 0 at `high`, with its inside on the same hand."""
    return np.ascontiguousarray((outline * (1.0, -1.0) + (0.0, high))[::-1])


def _levels(solid: Solid) -> Floats:
    """Levels close together near the closed end, where a round body curves most."""
    return solid.height * np.linspace(0.0, 1.0, LEVELS + 1) ** 2


def _half_width(solid: Solid, level: float) -> float:
    if isinstance(solid, Log):
        return solid.width_at(level) / 2.0
    if isinstance(solid, Box):
        return float(solid.width / 2.0 - solid.taper * (1.0 - level / solid.height))
    return solid.area_at(level) / (2.0 * solid.length)


def _band(ring: Ring) -> Floats:
    """Section of a ring's band from the inner rim down, across and up to the outer rim."""
    right = max(ring.section(), key=lambda outline: float(outline[:, 0].mean()))
    start = np.lexsort((right[:, 0], -right[:, 1]))[0]
    turned = np.roll(right, -start, axis=0)
    if turned[1, 1] > turned[-1, 1] - 1e-12 and turned[1, 1] >= ring.height - 1e-9:
        turned = np.concatenate([turned[:1], turned[:0:-1]])
    return np.ascontiguousarray(turned)


def _clipped(outline: Floats, level: float, *, above: bool) -> Floats:
    """The part of a closed outline on one side of a level."""
    kept: list[tuple[float, float]] = []
    sign = 1.0 if above else -1.0
    for here, there in zip(outline, np.roll(outline, -1, axis=0), strict=True):
        inside_here, inside_there = sign * (here[1] - level), sign * (there[1] - level)
        if inside_here >= 0.0:
            kept.append((float(here[0]), float(here[1])))
        if inside_here * inside_there < 0.0:
            share = inside_here / (inside_here - inside_there)
            kept.append((float(here[0] + share * (there[0] - here[0])), level))
    return np.array(kept)
