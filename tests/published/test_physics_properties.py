"""Thermal properties of food against printed numbers and an independent library."""

from __future__ import annotations

import csv
from pathlib import Path

import numpy as np
import pytest

from entremetry.physics.component_conductivity import component_conductivity
from entremetry.physics.component_density import component_density, ice_density
from entremetry.physics.component_heat_capacity import component_heat_capacity
from entremetry.physics.composition import Composition, density
from entremetry.physics.effective_conductivity import (
    effective_medium,
    levy,
    maxwell_eucken,
    parallel,
    series,
)
from entremetry.physics.food import Food, specific_enthalpy
from entremetry.physics.liquidus import dilute_liquidus, raoult_freezing_point
from entremetry.physics.short_formulas import chen_enthalpy, tchigeov_ice

HERE = Path(__file__).parent
NAMES = ("water", "protein", "fat", "carbohydrate", "fibre", "ash")
LIBRARY = dict(zip(NAMES, ("Water", "Protein", "Fat", "Carbohydrate", "Fiber", "Ash"), strict=True))
LAMB = Composition(water=0.7342, protein=0.2029, fat=0.0525, ash=0.0106)


def rows(name: str) -> list[dict[str, str]]:
    with (HERE / name).open(newline="") as file:
        return list(csv.DictReader(file))


def half_digit(text: str) -> float:
    """Half the last printed digit, and a hair."""
    return 0.5000001 * 10.0 ** -len(text.partition(".")[2])


@pytest.mark.parametrize("row", rows("choi_okos_1986_components.csv"))
def test_components_match_the_printed_rows(row: dict[str, str]) -> None:
    t, name = float(row["temperature_c"]) + 273.15, row["component"]
    rho = ice_density(t) if name == "ice" else getattr(component_density(t), name)
    k = getattr(component_conductivity(t), name)
    c = getattr(component_heat_capacity(t), name)
    for value, column in (
        (rho, "density_kg_m3"),
        (k, "conductivity_w_mk"),
        (c, "heat_capacity_j_kgk"),
    ):
        assert float(value) == pytest.approx(float(row[column]), abs=half_digit(row[column]))


@pytest.mark.parametrize("name", NAMES)
def test_components_match_coolprop_from_minus_40_to_150(name: str) -> None:
    from CoolProp.CoolProp import PropsSI

    fluid = f"INCOMP::Food{LIBRARY[name]}"
    for t in np.linspace(-40.0, 150.0, 39) + 273.15:
        k = float(getattr(component_conductivity(t), name))
        rho = getattr(component_density(float(t)), name)
        assert rho == pytest.approx(PropsSI("D", "T", t, "P", 1e6, fluid), rel=1e-12)
        assert k == pytest.approx(PropsSI("L", "T", t, "P", 1e6, fluid), rel=1e-12)
        if name != "water":
            c = float(getattr(component_heat_capacity(t), name))
            assert c == pytest.approx(PropsSI("C", "T", t, "P", 1e6, fluid), rel=1e-12)


def test_ice_matches_coolprop() -> None:
    from CoolProp.CoolProp import PropsSI

    for t in np.linspace(-40.0, 0.0, 9) + 273.15:
        assert ice_density(float(t)) == pytest.approx(
            PropsSI("D", "T", t, "P", 1e6, "INCOMP::FoodIce"), rel=1e-12
        )
        assert float(component_heat_capacity(t).ice) == pytest.approx(
            PropsSI("C", "T", t, "P", 1e6, "INCOMP::FoodIce"), rel=1e-12
        )


def test_water_is_not_the_low_copy() -> None:
    """The library's 4128.9 at 0 °C is 1.13 % low; the printed row has 4176.2."""
    from CoolProp.CoolProp import PropsSI

    library = PropsSI("C", "T", 273.15, "P", 1e6, "INCOMP::FoodWater")
    ours = float(component_heat_capacity(273.15).water)
    assert ours / library - 1.0 == pytest.approx(0.01146, abs=5e-5)
    steam_tables = PropsSI("C", "T", 293.15, "P", 101325.0, "Water")
    assert float(component_heat_capacity(293.15).water) == pytest.approx(steam_tables, rel=3e-3)


def test_fat_conducts_at_every_temperature() -> None:
    """With e-3 in place of e-4 fat would stop conducting near 65 °C; with plus it would rise."""
    k = component_conductivity(np.linspace(233.15, 423.15, 50)).fat
    assert np.all(np.diff(k) < 0.0)
    assert float(k[-1]) > 0.13


def test_lamb_at_5_degrees() -> None:
    """ASHRAE Refrigeration chapter 19, example 2: 3.59 kJ/(kg K), about 5390 kJ for 150 kg."""
    c = component_heat_capacity(278.15)
    value = sum(x * float(part) for x, part in zip(LAMB.fractions, c[:6], strict=True))
    assert value == pytest.approx(3590.85, rel=1e-4)
    lamb = Food(composition=LAMB, liquidus=dilute_liquidus(271.25))
    heat = specific_enthalpy(lamb, np.array([273.15, 283.15]))
    assert 150.0 * float(heat[1] - heat[0]) == pytest.approx(5386.3e3, rel=1e-3)


def test_beef_carcass_by_the_short_formulas() -> None:
    """ASHRAE Refrigeration chapter 19, examples 1 and 3."""
    assert tchigeov_ice(0.58, 271.45, 253.15) == pytest.approx(0.51638, abs=5e-5)
    chen = [chen_enthalpy(0.5821, 0.1748, 271.45, t) for t in (253.15, 271.45, 283.15)]
    assert chen == pytest.approx([48793.0, 243134.0, 280375.0], rel=1e-4)
    assert chen[2] - chen[0] == pytest.approx(231.582e3, rel=1e-4)


def test_own_enthalpy_of_beef_is_near_chens() -> None:
    """Another route to the same heat: components, ice in balance, latent heat of each degree."""
    beef = Food(
        composition=Composition(water=0.5821, protein=0.1748, fat=0.2255, ash=0.0082),
        liquidus=dilute_liquidus(271.45),
    )
    heat = specific_enthalpy(beef, np.array([253.15, 283.15]))
    assert float(heat[1] - heat[0]) == pytest.approx(231.582e3, rel=0.05)


@pytest.mark.parametrize("row", rows("carson_2005_conductivity.csv"))
def test_conductivity_models(row: dict[str, str]) -> None:
    c, d, e = float(row["continuous"]), float(row["dispersed"]), float(row["fraction"])
    found = {
        "parallel": parallel(c, d, e),
        "maxwell_eucken": maxwell_eucken(c, d, e),
        "effective_medium": effective_medium(c, d, e),
        "levy": levy(c, d, e),
        "inverted": maxwell_eucken(d, c, 1.0 - e),
        "series": series(c, d, e),
    }
    for name, value in found.items():
        assert float(value) == pytest.approx(float(row[name]), abs=0.6e-5)
    values = [float(value) for value in found.values()]
    assert values == sorted(values, reverse=True)


def test_lean_pork_at_minus_40() -> None:
    """ASHRAE Refrigeration chapter 19, example 4: density, parallel and series conductivity."""
    water, protein, fat, ash = 0.7263, 0.1955, 0.0714, 0.0102
    ice = tchigeov_ice(water, 270.95, 233.15)
    assert ice == pytest.approx(0.67154, abs=5e-5)
    rho, k = component_density(233.15), component_conductivity(233.15)
    parts = [
        (water - ice, rho.water, k.water),
        (protein, rho.protein, k.protein),
        (fat, rho.fat, k.fat),
        (ash, rho.ash, k.ash),
        (ice, ice_density(233.15), k.ice),
    ]
    volumes = [mass / density for mass, density, _ in parts]
    whole = sum(volumes)
    assert 1.0 / whole == pytest.approx(991.85, abs=0.1)
    side = sum(v * float(part[2]) for v, part in zip(volumes, parts, strict=True)) / whole
    across = whole / sum(v / float(part[2]) for v, part in zip(volumes, parts, strict=True))
    assert side == pytest.approx(1.9617, abs=2e-4)
    assert across == pytest.approx(0.51866, abs=2e-4)


@pytest.mark.parametrize(
    ("percent", "celsius"),
    [(5, -0.286), (10, -0.604), (20, -1.359), (30, -2.329), (40, -3.623), (50, -5.434)],
)
def test_ideal_sucrose_solutions_in_the_small_depression_limit(
    percent: float, celsius: float
) -> None:
    """1.86 K kg/mol times molality; the exact ideal law lies on the warmer side of it."""
    ratio = percent / (100.0 - percent) * 18.01528 / 342.30
    exact = raoult_freezing_point(ratio) - 273.15
    assert celsius <= exact + 5e-3
    assert exact == pytest.approx(celsius, rel=0.05)


def test_milk_freezes_at_its_known_point() -> None:
    """Leighton 1927: -0.55 °C, of which lactose 0.306 and salts 0.244; here from particles."""
    lactose = 0.306 / 1.86 * 18.01528e-3
    salts = 0.244 / 1.86 * 18.01528e-3
    assert raoult_freezing_point(lactose + salts) - 273.15 == pytest.approx(-0.55, abs=5e-3)


def test_volumes_add_up() -> None:
    assert density(Composition(water=1.0), 293.15) == pytest.approx(995.740, abs=5e-4)
