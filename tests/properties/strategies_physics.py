"""Foods, materials and bodies of any sensible kind."""

from __future__ import annotations

import numpy as np
from hypothesis import strategies as st

from entremetry.physics import Composition, Food, Structure, dilute_liquidus
from entremetry.physics.conduction import (
    Body,
    Contact,
    Region,
    Surroundings,
    arc,
    outline,
    rectangle,
    round_body,
)
from entremetry.physics.food import food_material

ZERO = 273.15


@st.composite
def compositions(draw: st.DrawFn) -> Composition:
    """Mass fractions that make a whole, with some water."""
    parts = [draw(st.floats(0.0, 1.0)) for _ in range(5)]
    water = draw(st.floats(0.2, 0.95))
    rest = sum(parts) or 1.0
    shares = [(1.0 - water) * part / rest for part in parts]
    if sum(parts) == 0.0:
        shares[2] = 1.0 - water
    return Composition(
        water=water,
        protein=shares[0],
        fat=shares[1],
        carbohydrate=shares[2],
        fibre=shares[3],
        ash=shares[4],
    )


@st.composite
def foods(draw: st.DrawFn) -> Food:
    """Foods that freeze, dense or aerated."""
    return Food(
        composition=draw(compositions()),
        liquidus=dilute_liquidus(ZERO - draw(st.floats(0.3, 8.0))),
        air=draw(st.floats(0.0, 0.7)),
        structure=draw(st.sampled_from(Structure)),
        water_activity=draw(st.floats(0.0, 1.0)),
    )


@st.composite
def surroundings(draw: st.DrawFn) -> Surroundings:
    """Air from -35 to 30 °C with any of its parts."""
    return Surroundings(
        temperature=ZERO + draw(st.floats(-35.0, 30.0)),
        coefficient=draw(st.floats(0.0, 200.0)),
        contact=draw(st.sampled_from([0.0, 0.01])),
        emissivity=draw(st.floats(0.0, 1.0)),
        humidity=draw(st.sampled_from([None, 0.3, 0.9])),
    )


@st.composite
def bodies(draw: st.DrawFn) -> Body:
    """Domes of a food with a cylinder of another inside, on coarse grids."""
    radius = draw(st.floats(0.015, 0.09))
    edge = outline(
        ("base", [(0.0, 0.0), (radius, 0.0)]),
        ("skin", arc((0.0, 0.0), radius, 0.0, np.pi / 2, 40)),
        ("axis", [(0.0, radius), (0.0, 0.0)]),
    )
    insert = Region(
        name="insert",
        material=food_material("insert", draw(foods())),
        points=rectangle(0.0, 0.1 * radius, draw(st.floats(0.2, 0.6)) * radius, 0.6 * radius),
    )
    cells = draw(st.integers(4, 9))
    gap = draw(st.sampled_from([0.0, 1e-3, 0.02, 10.0]))
    return round_body(
        edge,
        food_material("outer", draw(foods())),
        (insert,),
        spacing=radius / cells,
        contacts=(Contact(between=("body", "insert"), resistance=gap),),
    )
