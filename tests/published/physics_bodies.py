"""Bodies of the reference problems."""

from __future__ import annotations

import numpy as np

from entremetry.physics.conduction.body import Body
from entremetry.physics.conduction.outline import Region as Region
from entremetry.physics.conduction.outline import arc, outline, rectangle
from entremetry.physics.conduction.section_body import plane_body, round_body
from entremetry.physics.conduction.stage import Stage, Target
from entremetry.physics.conduction.surroundings import Surroundings
from entremetry.physics.material import Material

ZERO = 273.15


def slab(made: Material, half: float, cells: int) -> Body:
    """Half of a slab: the middle at level 0, the surface 'skin' above."""
    wide = half / cells
    edge = outline(
        ("middle", [(0, 0), (wide, 0)]),
        ("side", [(wide, 0), (wide, half)]),
        ("skin", [(wide, half), (0, half)]),
        ("side", [(0, half), (0, 0)]),
    )
    return plane_body(edge, made, spacing=wide)


def cylinder(made: Material, radius: float, cells: int) -> Body:
    """Endless cylinder, one cell high."""
    high = radius / cells
    edge = outline(
        ("end", [(0, 0), (radius, 0)]),
        ("skin", [(radius, 0), (radius, high)]),
        ("end", [(radius, high), (0, high)]),
        ("axis", [(0, high), (0, 0)]),
    )
    return round_body(edge, made, spacing=high)


def sphere(made: Material, radius: float, cells: int, regions: tuple[Region, ...] = ()) -> Body:
    """Hemisphere: with an insulated 'base' it is half a sphere."""
    edge = outline(
        ("base", [(0, 0), (radius, 0)]),
        ("skin", arc((0, 0), radius, 0, np.pi / 2)),
        ("axis", [(0, radius), (0, 0)]),
    )
    return round_body(edge, made, regions, spacing=radius / cells)


def short_cylinder(made: Material, radius: float, height: float, spacing: float) -> Body:
    """Cylinder with a base on a shelf."""
    corners = rectangle(0, 0, radius, height)
    edge = outline(
        ("base", corners[:2]),
        ("skin", corners[1:3]),
        ("skin", corners[2:]),
        ("axis", [corners[3], corners[0]]),
    )
    return round_body(edge, made, spacing=spacing)


def air(celsius: float, coefficient: float) -> Surroundings:
    """Air of constant temperature and coefficient."""
    return Surroundings(temperature=celsius + ZERO, coefficient=coefficient)


def until(of: str, celsius: float, falling: bool = True, **faces: Surroundings) -> Stage:
    """A stage that waits for a target."""
    target = Target(of=of, temperature=celsius + ZERO, falling=falling)
    return Stage(surroundings=faces, until=target)


def lasting(seconds: float, **faces: Surroundings) -> Stage:
    """A stage of a given length."""
    return Stage(surroundings=faces, duration=seconds)
