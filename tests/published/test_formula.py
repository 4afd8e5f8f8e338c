"""Densities, foams, reductions and balances against printed numbers."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from entremetry.formula import (
    Mix,
    bake,
    chocolate_density,
    liquid_density,
    metrics,
    mixed,
    overrun,
    reduce_to_brix,
)
from entremetry.larder.constituents import Constituents

HERE = Path(__file__).parent
STATED_ERROR = 0.005  # of the additive rule on sugar solutions up to 70 %
BAR_ERROR = 20.0  # kg/m3, on single bars; the fit itself has 8.5 rms


def rows(name: str) -> list[dict[str, str]]:
    with (HERE / name).open(newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


@pytest.mark.parametrize("row", rows("crc_handbook_102_densities.csv"))
def test_sugar_solutions_have_their_printed_density(row: dict[str, str]) -> None:
    share = float(row["percent"]) / 100.0
    mix = Mix(constituents=Constituents(**{"water": 1.0 - share, row["solute"]: share}))
    expected = float(row["density_kg_m3"])
    assert liquid_density(mix) == pytest.approx(expected, rel=STATED_ERROR)


@pytest.mark.parametrize("row", rows("banks_2012_bars.csv"))
def test_bars_of_chocolate_have_their_measured_density(row: dict[str, str]) -> None:
    value = chocolate_density(float(row["fat_percent"]) / 100.0)
    assert value == pytest.approx(float(row["density_kg_m3"]), abs=BAR_ERROR)


def test_the_bars_scatter_by_no_more_than_is_stated() -> None:
    bars = rows("banks_2012_bars.csv")
    misses = [
        chocolate_density(float(bar["fat_percent"]) / 100.0) - float(bar["density_kg_m3"])
        for bar in bars
    ]
    assert (sum(miss**2 for miss in misses) / len(misses)) ** 0.5 < 10.0


def test_cream_of_238_g_a_cup_that_weighs_120_g_whipped_has_98_per_cent_overrun() -> None:
    """usda_sr28, 01053: US cup (236.588 ml) of heavy whipping cream, fluid 238 g, whipped 120 g."""
    cup = 236.588e-6
    assert 100.0 * overrun(0.238 / cup, 0.120 / cup) == pytest.approx(98.3, abs=0.05)
    assert 0.238 / cup / (1.0 + 0.983) == pytest.approx(507.0, abs=0.5)


def test_400_g_of_puree_at_10_brix_make_267_g_at_15() -> None:
    """A balance on solids: m = m0 B0 / B = 400 x 10 / 15 = 266.7 g."""
    puree = Mix(constituents=Constituents(water=0.360, fructose=0.040))
    assert 1000.0 * reduce_to_brix(puree, 15.0).mass == pytest.approx(266.7, abs=0.05)


def test_a_genoise_that_lost_11_per_cent_has_the_water_of_a_baked_one() -> None:
    """usda_sr28: 200 egg, 125 sugar, 125 flour hold 37.2 % water; baked sponge 29.4 %."""
    batter = Mix(
        constituents=Constituents(
            water=0.200 * 0.7615 + 0.125 * 0.0002 + 0.125 * 0.1192,
            sucrose=0.125 * 0.9998,
            starch=0.125 * 0.8808,
            protein=0.200 * 0.2385,
        )
    )
    assert 100.0 * metrics(batter).water == pytest.approx(37.2, abs=0.05)
    assert 100.0 * metrics(bake(batter, 0.110)).water == pytest.approx(29.4, abs=0.05)


def test_a_ganache_holds_the_water_and_sugar_of_the_worked_balance() -> None:
    """common_practice: a teaching text's ganache of 1300 g, water 24.5 %, sugar 18 %."""
    cream = Constituents(water=0.58, milk_fat=0.42) * 0.500
    syrup = Constituents(water=0.22, unsplit_sugars=0.78) * 0.050
    chocolate = Constituents(sucrose=0.30, cocoa_butter=0.70) * 0.650
    butter = Constituents(water=0.18, milk_fat=0.82) * 0.100
    told = metrics(mixed(*(Mix(constituents=part) for part in (cream, syrup, chocolate, butter))))
    assert 100.0 * told.water == pytest.approx(24.5, abs=0.05)
    assert 100.0 * told.sugars == pytest.approx(18.0, abs=0.05)
