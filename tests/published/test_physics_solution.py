"""Freezing points and water activities of solutions against printed tables."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from entremetry.errors import OutsideRange
from entremetry.physics.solution import (
    CITRIC_ACID,
    ETHANOL,
    FRUCTOSE,
    GLUCOSE,
    LACTOSE,
    MALTOSE,
    MILK_SALT,
    SUCROSE,
    freezing_point,
    ice_activity,
    water_activity,
)

SOLUTES = {s.name: s for s in (SUCROSE, GLUCOSE, FRUCTOSE, LACTOSE, MALTOSE, ETHANOL, CITRIC_ACID)}
TABLE = Path(__file__).with_name("crc_handbook_102_freezing_points.csv")


def rows() -> list[dict[str, str]]:
    lines = TABLE.read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


@pytest.mark.parametrize("row", rows(), ids=lambda row: f"{row['solute']}-{row['percent']}")
def test_depression_is_that_of_the_handbook(row: dict[str, str]) -> None:
    percent = float(row["percent"])
    found = 273.15 - freezing_point({SOLUTES[row["solute"]]: percent}, 100.0 - percent)
    assert found == pytest.approx(float(row["depression_k"]), abs=float(row["tolerance_k"]))


def test_fifteen_per_cent_of_dextrose_in_fahrenheit() -> None:
    """Leeder, Food Science and Technology Notes HFST-547-1 (1970): 28.63 °F, sucrose 30.16 °F."""
    for solute, fahrenheit in ((GLUCOSE, 28.63), (SUCROSE, 30.16)):
        celsius = freezing_point({solute: 15.0}, 85.0) - 273.15
        assert celsius * 1.8 + 32.0 == pytest.approx(fahrenheit, abs=0.05)


def test_milk_freezes_at_minus_0_55() -> None:
    """leighton_1927: 4.9 % lactose and the salts of 0.67 % ash in 87.11 % water."""
    found = freezing_point({LACTOSE: 4.9, MILK_SALT: 0.67}, 87.11)
    assert found - 273.15 == pytest.approx(-0.55, abs=0.02)


@pytest.mark.parametrize(
    ("celsius", "activity"),
    [(-5.0, 0.9526), (-12.0, 0.8897), (-18.0, 0.8389)],
)
def test_activity_over_ice(celsius: float, activity: float) -> None:
    """murphy_koop_2005: ratio of the vapour pressures over ice and undercooled water."""
    assert ice_activity(celsius + 273.15) == pytest.approx(activity, abs=5e-4)


@pytest.mark.parametrize(("percent", "activity"), [(26.0, 0.98), (50.0, 0.93)])
def test_water_activity_of_sucrose(percent: float, activity: float) -> None:
    """New York State Department of Agriculture, principal groups of foods by water activity."""
    found = water_activity({SUCROSE: percent}, 100.0 - percent)
    assert found == pytest.approx(activity, abs=0.006)


def test_the_ideal_law_is_a_fifth_short_at_42_per_cent() -> None:
    """The trap: 3.85 K by Raoult where the handbook has 4.93 K."""
    moles = 42.0 / 0.3423 / (58.0 / 0.01801528)
    ideal = 1.0 / (1.0 + moles)
    low, high = 260.0, 273.15
    for _ in range(60):
        middle = (low + high) / 2.0
        low, high = (middle, high) if ice_activity(middle) < ideal else (low, middle)
    assert 273.15 - low == pytest.approx(3.85, abs=0.03)
    assert 273.15 - freezing_point({SUCROSE: 42.0}, 58.0) == pytest.approx(4.93, abs=0.05)


def test_splitting_a_solute_and_scaling_change_nothing() -> None:
    one = water_activity({SUCROSE: 30.0, GLUCOSE: 10.0}, 60.0)
    other = SUCROSE.__class__(name="the same", molar_mass=0.3423, norrish=7.5, source="x")
    split = water_activity({SUCROSE: 12.0, other: 18.0, GLUCOSE: 10.0}, 60.0)
    scaled = water_activity({SUCROSE: 0.3, GLUCOSE: 0.1}, 0.6)
    assert split == pytest.approx(one, abs=1e-9)
    assert scaled == pytest.approx(one, abs=1e-9)


@pytest.mark.parametrize("water", [0.0, -1.0, float("nan")])
def test_no_water_is_refused(water: float) -> None:
    with pytest.raises(OutsideRange):
        water_activity({SUCROSE: 1.0}, water)


def test_too_much_dissolved_is_refused() -> None:
    with pytest.raises(OutsideRange, match="moles of solute"):
        freezing_point({ETHANOL: 90.0}, 10.0)
