"""Syrups, gelatine and sagging gels against printed values."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from entremetry.physics.gelatine import BloomRule, bloom_at, equivalent_mass
from entremetry.physics.sag import sag
from entremetry.physics.solution import SUCROSE, freezing_point, water_activity
from entremetry.physics.sweetness import sweetness
from entremetry.physics.syrup import (
    boiling_elevation,
    sucrose_solubility,
    syrup_density,
    syrup_viscosity,
)

FOLDER = Path(__file__).parent
ZERO = 273.15


def rows(name: str) -> list[dict[str, str]]:
    """Rows of a table of this folder."""
    with (FOLDER / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


@pytest.mark.parametrize("row", rows("crc_handbook_102_syrups"))
def test_density_and_viscosity_of_syrups(row: dict[str, str]) -> None:
    sucrose, temperature = float(row["sucrose_percent"]) / 100, float(row["temperature_c"]) + ZERO
    found = {
        "density_kg_m3": lambda: syrup_density(sucrose, temperature),
        "viscosity_mpa_s": lambda: syrup_viscosity(sucrose, temperature) * 1e3,
    }[row["quantity"]]()
    assert found == pytest.approx(float(row["expected"]), abs=float(row["tolerance"]))


@pytest.mark.parametrize("row", rows("nbs_solubility_sucrose"))
def test_solubility_of_sucrose(row: dict[str, str]) -> None:
    found = 100 * sucrose_solubility(float(row["temperature_c"]) + ZERO)
    assert found == pytest.approx(float(row["sucrose_percent"]), abs=0.45)


@pytest.mark.parametrize("row", rows("browne_1912_boiling"))
def test_boiling_point_elevation(row: dict[str, str]) -> None:
    found = boiling_elevation(float(row["sucrose_percent"]) / 100)
    assert found == pytest.approx(float(row["elevation_c"]), abs=0.05)


def test_a_weak_syrup_boils_hardly_above_water() -> None:
    assert 0.0 < boiling_elevation(0.02) < 0.05


def test_viscosity_of_60_percent_at_40_degrees() -> None:
    # Tabulated 21.28 mPa s, 3 %.
    assert syrup_viscosity(0.60, 313.15) * 1e3 == pytest.approx(21.28, rel=0.03)


@pytest.mark.parametrize(("sucrose", "expected"), [(0.26, 0.98), (0.50, 0.93), (0.65, 0.87)])
def test_water_activity_of_sucrose(sucrose: float, expected: float) -> None:
    # New York State Department of Agriculture: principal groups of foods by water activity.
    assert water_activity({SUCROSE: sucrose}, 1 - sucrose) == pytest.approx(expected, abs=0.012)


@pytest.mark.parametrize(("sucrose", "depression"), [(0.10, 0.63), (0.20, 1.47), (0.40, 4.45)])
def test_freezing_point_of_sucrose(sucrose: float, depression: float) -> None:
    # crc_handbook_102, table of sucrose.
    found = ZERO - freezing_point({SUCROSE: sucrose}, 1 - sucrose)
    assert found == pytest.approx(depression, abs=0.05)


def test_gel_strength_grows_as_the_square_of_the_concentration() -> None:
    # ward_courts_1977, p. 509: 7.6 g for 7.5 g turns 175 into 179.7.
    assert bloom_at(175.0, 0.0667 * 7.6 / 7.5) == pytest.approx(179.7, abs=0.1)


@pytest.mark.parametrize(
    ("to", "linear", "root"),
    [(160.0, 1.250, 1.118), (220.0, 0.909, 0.953), (130.0, 1.538, 1.240)],
)
def test_both_rules_for_bloom(to: float, linear: float, root: float) -> None:
    assert equivalent_mass(1.0, 200.0, to) == pytest.approx(linear, abs=5e-4)
    found = equivalent_mass(1.0, 200.0, to, BloomRule.SQUARE_ROOT)
    assert found == pytest.approx(root, abs=5e-4)


def test_the_gel_of_the_sag_glass() -> None:
    # nielsen_2001: 23.5 % at 429 Pa if the gel slips; the glass is 79.4 mm high and tapers, the
    # column here does not, so 2.5 points are allowed. Jelly of 65 % solids: 1316 kg/m3.
    assert 100 * sag(0.0794, 1316.0, 429.0) == pytest.approx(23.5, abs=2.5)


def test_sweetness_of_an_acid_syrup_of_40_de() -> None:
    # belitz_2009, table 19.7: 17 glucose, 13 maltose, 70 higher; sources quote 0.25 to 0.50.
    found = sweetness({"glucose": 0.17, "maltose": 0.13, "dextrins": 0.70})
    assert found.usual == pytest.approx(0.24, abs=0.005)
    assert found.low < 0.25 <= found.high
