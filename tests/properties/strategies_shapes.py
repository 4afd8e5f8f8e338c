"""Shapes drawn at the sizes makers use, and far beyond."""

from __future__ import annotations

import math
from typing import Any

from hypothesis import strategies as st

from entremetry.shapes import (
    Box,
    Cylinder,
    EllipsoidCap,
    Log,
    Prism,
    Revolution,
    Ring,
    Solid,
    Sphere,
    SphericalCap,
    TruncatedCone,
    hemisphere,
    measured_by_water,
)

LENGTHS = st.floats(0.005, 0.6)
SHARES = st.one_of(st.just(0.0), st.floats(1e-9, 1.0))
PARTS = st.floats(0.05, 0.95)


def built(maker: Any, **arguments: Any) -> Any:
    """Strategy of what a maker returns for drawn arguments."""
    return st.builds(lambda **drawn: maker(**drawn), **arguments)


def cap(diameter: float, part: float) -> SphericalCap:
    """A cap no higher than half its width."""
    return SphericalCap(diameter=diameter, height=part * diameter / 2)


def tall_cap(diameter: float, more: float) -> SphericalCap:
    """More than half a sphere."""
    return SphericalCap(diameter=diameter, height=(1.05 + more) * diameter / 2, past_half=True)


def ring(diameter: float, part: float, height: float, kind: Any) -> Ring:
    """A ring whose hole is a part of it."""
    return Ring(diameter=diameter, hole_diameter=part * diameter, height=height, cross_section=kind)


def log(length: float, width: float, more: float, kind: Any, part: float) -> Log:
    """A log of any section."""
    if kind == "half-round":
        return Log(length=length, width=width, height=width / 2 * (1 + more))
    if kind == "round-topped":
        return Log(length=length, width=width, height=width / 2 * part, cross_section=kind)
    height = width * (0.2 + more)
    corner = part * min(width / 2, height)
    return Log(length=length, width=width, height=height, cross_section=kind, corner_radius=corner)


def box(length: float, width: float, height: float, corner: float, taper: float) -> Box:
    """A box whose corners and taper are parts of half its shorter side."""
    half = min(length, width) / 2
    return Box(
        length=length,
        width=width,
        height=height,
        corner_radius=corner * half,
        taper=taper * half,
    )


def revolution(radii: list[float], rises: list[float]) -> Revolution:
    """A profile that always rises, so it cannot cross itself."""
    level, points = 0.0, [(radii[0], 0.0)]
    for radius, rise in zip(radii[1:], rises, strict=False):
        level += rise
        points.append((radius, level))
    return Revolution(points=tuple(points))


def star(radii: list[float], height: float, hole: bool) -> Prism:
    """A star-shaped outline about its middle, perhaps with a hole there."""
    turn = 2 * math.pi / len(radii)
    outline = tuple(
        (radius * math.cos(turn * place), radius * math.sin(turn * place))
        for place, radius in enumerate(radii)
    )
    small = 0.2 * min(radii)
    holes = (((small, 0.0), (-small / 2, small / 2), (-small / 2, -small / 2)),) if hole else ()
    return Prism(outline=outline, holes=holes, height=height)


SPHERES = built(Sphere, diameter=LENGTHS)
ROUND = st.one_of(
    built(hemisphere, diameter=LENGTHS),
    built(cap, diameter=LENGTHS, part=PARTS),
    built(tall_cap, diameter=LENGTHS, more=st.floats(0.0, 2.0)),
    SPHERES,
    built(Cylinder, diameter=LENGTHS, height=LENGTHS),
    built(TruncatedCone, diameter=LENGTHS, base_diameter=LENGTHS, height=LENGTHS),
    built(
        ring,
        diameter=LENGTHS,
        part=PARTS,
        height=LENGTHS,
        kind=st.sampled_from(["half-round", "flat"]),
    ),
    built(
        revolution,
        radii=st.lists(LENGTHS, min_size=2, max_size=6),
        rises=st.lists(st.floats(0.005, 0.2), min_size=5, max_size=5),
    ),
)
LOGS = built(
    log,
    length=LENGTHS,
    width=LENGTHS,
    more=st.floats(0.0, 1.5),
    kind=st.sampled_from(["half-round", "rounded", "round-topped"]),
    part=PARTS,
)
BOXES = built(
    box, length=LENGTHS, width=LENGTHS, height=LENGTHS, corner=SHARES, taper=st.floats(0.0, 0.9)
)
ELLIPSOIDS = built(
    lambda length, width, height, flatter: EllipsoidCap(
        length=length, width=width, height=height, half_depth=height * flatter
    ),
    length=LENGTHS,
    width=LENGTHS,
    height=LENGTHS,
    flatter=st.floats(1.0, 3.0),
)
PRISMS = built(
    star,
    radii=st.lists(st.floats(0.02, 0.2), min_size=5, max_size=9),
    height=LENGTHS,
    hole=st.booleans(),
)
PLAIN: st.SearchStrategy[Solid] = st.one_of(ROUND, LOGS, BOXES, ELLIPSOIDS, PRISMS)
SOLIDS: st.SearchStrategy[Solid] = st.one_of(
    PLAIN, st.builds(measured_by_water, st.floats(1e-6, 1e-3), PLAIN)
)
