"""What kitchens say, against the computed interval: common practice, no source.

Foods by composition (mousse 55 % water, 22 % fat, 40 % air, freezing from -3.5 °C; fruit insert
of 75 % water, from -1.8 °C), a still domestic freezer at -18 °C with natural convection and
radiation, silicone of 1.5 mm, a wire shelf.
"""

from __future__ import annotations

import numpy as np
import pytest

from entremetry.physics import (
    Composition,
    Food,
    Material,
    dilute_liquidus,
    food_material,
    natural_sphere,
)
from entremetry.physics.conduction import (
    Body,
    Stage,
    Surroundings,
    Target,
    Wall,
    arc,
    outline,
    round_body,
)
from entremetry.physics.uncertainty import Interval, interval

ZERO = 273.15
HOUR = 3600.0
MOULD = Wall(thickness=1.5e-3, conductivity=0.24, heat_capacity=1.5e6)


def mousse() -> Material:
    made = Food(
        composition=Composition(water=0.55, protein=0.04, fat=0.22, carbohydrate=0.18, ash=0.01),
        liquidus=dilute_liquidus(ZERO - 3.5),
        air=0.4,
    )
    return food_material("mousse", made)


def fruit() -> Material:
    made = Food(
        composition=Composition(water=0.75, carbohydrate=0.23, protein=0.01, fibre=0.01),
        liquidus=dilute_liquidus(ZERO - 1.8),
    )
    return food_material("fruit", made)


def dome(made: Material, radius: float) -> Body:
    edge = outline(
        ("base", [(0.0, 0.0), (radius, 0.0)]),
        ("skin", arc((0.0, 0.0), radius, 0.0, np.pi / 2)),
        ("axis", [(0.0, radius), (0.0, 0.0)]),
    )
    return round_body(edge, made, spacing=1e-3)


def still(celsius: float, other: float, diameter: float) -> Surroundings:
    film = natural_sphere(celsius + ZERO, 0.5 * (celsius + other) + ZERO, diameter)
    return Surroundings(temperature=celsius + ZERO, coefficient=film, emissivity=0.95)


def time(made: Material, radius: float, start: float, to: float, air: Surroundings) -> Interval:
    falling = to < start
    of = "warmest" if falling else "coldest"
    walls = {"skin": MOULD} if falling else {}
    target = Target(of=of, temperature=to + ZERO, falling=falling)
    stage = Stage(surroundings={"base": air, "skin": air}, until=target, walls=walls)
    return interval(dome(made, radius), {"body": start + ZERO}, [stage])


def test_small_fruit_inserts_freeze_through_in_about_two_hours() -> None:
    """A dome of 40 mm to -10 °C."""
    found = time(fruit(), 0.02, 15.0, -10.0, still(-18.0, 0.0, 0.04))
    assert found.low < 2.2 * HOUR < found.high


def test_a_single_dome_needs_hours_in_still_air() -> None:
    """70 mm dome to -15 °C; kitchens say at least 4 h, better a night: that holds some reserve
    for a loaded freezer and trays that shade each other, which a lone piece does not have."""
    found = time(mousse(), 0.035, 15.0, -15.0, still(-18.0, 0.0, 0.07))
    assert found.low < 4.0 * HOUR < found.high


@pytest.mark.parametrize(("celsius", "hours"), [(4.0, 3.0), (20.0, 2.0)])
def test_a_single_dome_thaws_in_hours(celsius: float, hours: float) -> None:
    """70 mm dome from -18 until its heart has no ice: fridge about 3 h, room about 2 h.

    'No ice' is earlier than 'fit to serve', so in the room the computed time falls short by a
    quarter; the fridge's interval holds the kitchens' number.
    """
    found = time(mousse(), 0.035, -18.0, -3.0, still(celsius, -10.0, 0.07))
    assert found.low < hours * HOUR < 1.25 * found.high
    assert found.reason.startswith("mostly")
