"""No number that is none leaves the room: it is refused, or the answer is finite."""

from __future__ import annotations

import dataclasses
import math
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

from entremetry import physics
from entremetry.errors import EntremetryError
from entremetry.physics import Bowl, Composition, Food, Liquid, Room, gelatine, humid_air, syrup
from entremetry.physics import effective_conductivity as effective
from entremetry.physics import short_formulas as short
from entremetry.physics.appliance import Freezer, greatest_load, load
from entremetry.physics.conduction import (
    Block,
    Body,
    Contact,
    Course,
    Stage,
    Surroundings,
    Target,
    Variation,
    Wall,
    arc,
    box_body,
    outline,
    round_body,
    run,
)
from entremetry.physics.gels import starch_thickens_at
from entremetry.physics.glaze_pour import Dome
from entremetry.physics.sag import sag
from entremetry.physics.solution import ice_activity

BAD = [math.nan, math.inf, -math.inf, -1.0, 0.0, 1e300, -1e300]
STUFF = physics.constant_material("stuff", 0.3, 2e6)
AIR = Surroundings(temperature=255.0, coefficient=10.0)
FREEZER = Freezer(set_point=255.0, power=100.0, leak=1.0, room=293.0, contents=4e4, exchange=6.0)
MIX = Composition(water=0.6, protein=0.05, fat=0.1, carbohydrate=0.24, ash=0.01)
FOOD = Food(composition=MIX, liquidus=physics.dilute_liquidus(270.0), air=0.3)
LIQUID = Liquid(mass=0.1, heat_capacity=3600.0, water_activity=0.97, solids=0.03)
BOWL = Bowl(opening=0.02, coefficient=8.0, wall=0.02, wall_coefficient=8.0)


def dome(radius: float, spacing: float = 0.006) -> Body:
    edge = outline(
        ("base", [(0.0, 0.0), (radius, 0.0)]),
        ("skin", arc((0.0, 0.0), radius, 0.0, math.pi / 2, 20)),
        ("axis", [(0.0, radius), (0.0, 0.0)]),
    )
    return round_body(edge, STUFF, spacing=spacing)


def frozen(radius: float, spacing: float, start: float, air: float, h: float, end: float) -> Any:
    around = Surroundings(temperature=air, coefficient=h)
    stage = Stage(surroundings={"skin": around, "base": around}, until=Target(temperature=end))
    found = run(dome(radius, spacing), {"body": start}, (stage,), None, Course(longest=1e5))
    assert found.reached or found.ends[-1].reason
    return found.values, found.heats, found.balance_error, found.end


def mixed(first: float, warm: float, heat: float, second: float, cold: float) -> float:
    part = physics.Part
    one = part(mass=first, temperature=warm, enthalpy=physics.constant_heat(heat))
    other = part(mass=second, temperature=cold, enthalpy=physics.constant_heat(3000.0))
    return physics.mixing_temperature([one, other])


def block(low: float, high: float) -> float:
    blocks = (Block(name="b", material=STUFF, low=(low, 0.0, 0.0), high=(high, 0.02, 0.01)),)
    return box_body((0.1, 0.05, 0.02), STUFF, blocks, 5e-3).volume


def freezer(duration: float, start: float, crowding: float) -> Any:
    return load(FREEZER, dome(0.03), {"body": start}, {"skin": AIR}, 4, duration, crowding).air


def most(duration: float, start: float, harmed: float) -> int:
    body = dome(0.03)
    return greatest_load(FREEZER, body, {"body": start}, {"skin": AIR}, duration, harmed, most=4)


CASES: dict[str, tuple[Callable[..., Any], tuple[float, ...]]] = {
    "bloom_at": (gelatine.bloom_at, (200.0, 0.02)),
    "body's layer": (lambda t: dome(0.03).spread("skin", t), (0.002,)),
    "boiling_elevation": (syrup.boiling_elevation, (0.6,)),
    "box": (lambda a, b, s: box_body((a, b, 0.02), STUFF, spacing=s).volume, (0.1, 0.05, 5e-3)),
    "block": (block, (0.01, 0.05)),
    "bowl": (lambda a, h, w: Bowl(opening=a, coefficient=h, wall=w), (0.02, 8.0, 0.02)),
    "chen": (short.chen_enthalpy, (0.6, 0.1, 271.0, 260.0)),
    "component density": (physics.component_density, (280.0,)),
    "component enthalpy": (physics.component_enthalpy, (280.0,)),
    "composition": (lambda w, f: Composition(water=w, fat=f), (0.6, 0.4)),
    "constant_material": (lambda k, c: physics.constant_material("x", k, c).conduction, (0.3, 2e6)),
    "contact": (lambda r: Contact(between=("a", "b"), resistance=r), (0.01,)),
    "cool": (
        lambda s, e: physics.cool(LIQUID, BOWL, Room(temperature=293.0), s, e),
        (355.0, 318.0),
    ),
    "course": (lambda a, b, c: Course(accuracy=a, longest=b, longest_step=c), (0.04, 1e5, 300.0)),
    "density": (physics.density, (MIX, 280.0, 0.3)),  # type: ignore[dict-item]
    "deposit": (physics.deposit, (270.0, 293.0, 0.5, 5.0)),
    "dew_point": (physics.dew_point, (293.0, 0.5)),
    "dilute_liquidus": (lambda t: physics.dilute_liquidus(t).temperatures, (270.0,)),
    "dome": (lambda t, r: Dome(material=STUFF, temperature=t, radius=r), (255.0, 0.04)),
    "effective_medium": (effective.effective_medium, (0.4, 0.024, 0.3)),
    "equivalent_mass": (gelatine.equivalent_mass, (0.01, 200.0, 160.0)),
    "film": (physics.film_thickness, (0.5, 5e-3, 0.1, 1250.0, 0.08)),
    "film volume": (physics.film_volume, (5e-3, 0.1, 1250.0, 0.08)),
    "food's material": (
        lambda a, b: physics.food_material("x", FOOD, a, b).conduction,
        (235.0, 370.0),
    ),
    "forced_sphere": (physics.forced_sphere, (270.0, 280.0, 0.1, 2.0)),
    "freezer": (freezer, (7200.0, 290.0, 1.0)),
    "freezer's most": (most, (7200.0, 290.0, 258.0)),
    "heat_of_evaporation": (humid_air.heat_of_evaporation, (300.0,)),
    "ice_activity": (ice_activity, (263.0,)),
    "ice_fraction": (lambda t: physics.ice_fraction(FOOD, t), (265.0,)),
    "levy": (effective.levy, (0.4, 2.0, 0.3)),
    "liquid": (
        lambda m, c, a: Liquid(mass=m, heat_capacity=c, water_activity=a, solids=0.0),
        (0.1, 3600.0, 0.9),
    ),
    "loss": (lambda t: physics.loss(LIQUID, BOWL, Room(temperature=293.0), t), (350.0,)),
    "mass_at_solids": (physics.mass_at_solids, (1.0, 0.2, 0.6)),
    "maxwell_eucken": (effective.maxwell_eucken, (0.4, 0.024, 0.3)),
    "mixing": (mixed, (1.0, 300.0, 3500.0, 1.0, 280.0)),
    "natural_level": (lambda *x: physics.natural_level(*x, True), (270.0, 280.0, 0.01, 0.3)),
    "natural_sphere": (physics.natural_sphere, (270.0, 280.0, 0.1)),
    "natural_wall": (physics.natural_wall, (270.0, 280.0, 0.1)),
    "pole": (physics.pole_thickness, (5e-3, 0.1, 1250.0, 0.08)),
    "pore": (humid_air.pore_conductivity, (270.0, 0.9)),
    "power_for": (physics.power_for, (10.0, 40.0, 340e3)),
    "radiation": (physics.radiative_coefficient, (270.0, 280.0, 0.9)),
    "reduce": (
        lambda m, e, p, s, c: physics.reduce(m, e, p, start=s, heat_capacity=c),
        (1.0, 0.8, 1000.0, 293.0, 3600.0),
    ),
    "run": (frozen, (0.03, 0.006, 293.0, 255.0, 10.0, 260.0)),
    "sag": (sag, (0.05, 1000.0, 1e4)),
    "saturation": (humid_air.saturation_pressure, (280.0,)),
    "specific_enthalpy": (lambda t: physics.specific_enthalpy(FOOD, t), (265.0,)),
    "starch": (starch_thickens_at, (0.3,)),
    "sucrose_solubility": (syrup.sucrose_solubility, (293.0,)),
    "surroundings": (
        lambda t, h, r, e, u: Surroundings(
            temperature=t, coefficient=h, contact=r, emissivity=e, humidity=u
        ),
        (280.0, 8.0, 0.01, 0.9, 0.5),
    ),
    "syrup_density": (syrup.syrup_density, (0.5, 293.0)),
    "syrup_viscosity": (syrup.syrup_viscosity, (0.5, 293.0)),
    "tchigeov": (short.tchigeov_ice, (0.6, 271.0, 260.0)),
    "vapour_density": (humid_air.vapour_density, (600.0, 270.0)),
    "vapour_transfer": (humid_air.vapour_transfer, (5.0,)),
    "variation": (
        lambda a, b, c: Variation(coefficient=a, size=b, air=c),
        (1.0, 1.0, 0.0),
    ),
    "wall": (
        lambda a, b, c, d: Wall(thickness=a, conductivity=b, heat_capacity=c, contact=d),
        (0.002, 0.2, 1e6, 0.01),
    ),
}


def numbers(value: Any) -> list[float]:
    """All floats within an answer."""
    if dataclasses.is_dataclass(value):
        return [n for f in dataclasses.fields(value) for n in numbers(getattr(value, f.name))]
    if isinstance(value, tuple | list):
        return [n for each in value for n in numbers(each)]
    if isinstance(value, np.ndarray):
        return [float(n) for n in value.ravel()]
    return [float(value)] if isinstance(value, float | np.floating) else []


@pytest.mark.parametrize("name", CASES)
def test_a_number_that_is_none_is_refused_or_the_answer_is_finite(name: str) -> None:
    function, good = CASES[name]
    assert all(math.isfinite(n) for n in numbers(function(*good)))
    for place in range(len(good)):
        if not isinstance(good[place], float):
            continue
        for bad in BAD:
            values = [*good[:place], bad, *good[place + 1 :]]
            try:
                found = function(*values)
            except EntremetryError:
                continue
            assert math.isfinite(bad), f"argument {place} took {bad}"
            assert all(math.isfinite(n) for n in numbers(found)), f"argument {place}, {bad}"


@pytest.mark.parametrize(
    "function",
    [
        physics.component_density,
        physics.component_conductivity,
        physics.component_enthalpy,
        humid_air.saturation_pressure,
        humid_air.air_conductivity,
        lambda t: physics.ice_fraction(FOOD, t),
        lambda t: physics.specific_enthalpy(FOOD, t),
        STUFF.enthalpy,
    ],
)
def test_no_temperatures_give_no_numbers_and_one_that_is_none_spoils_all(
    function: Callable[..., Any],
) -> None:
    assert numbers(function(np.zeros(0))) == []
    with pytest.raises(EntremetryError):
        function(np.array([265.0, math.nan]))
