"""Volumes add up, with the gas."""

from __future__ import annotations

import pytest

from entremetry.errors import BalanceError, OutsideRange
from entremetry.formula import (
    EMPTY,
    ETHANOL_DENSITY,
    Mix,
    chocolate_density,
    density,
    liquid_density,
    liquid_volume,
    volume,
)
from entremetry.larder.constituents import NAMES, Constituents
from entremetry.physics.component_density import component_density


@pytest.mark.parametrize("name", NAMES)
def test_every_constituent_takes_up_room(name: str) -> None:
    assert liquid_volume(Mix(constituents=Constituents(**{name: 1.0}))) > 0.0


def test_each_group_has_the_density_of_its_component() -> None:
    rho = component_density(293.15)
    expected = {
        "water": rho.water,
        "protein": rho.protein,
        "cocoa_butter": rho.fat,
        "lactose": rho.carbohydrate,
        "starch": rho.carbohydrate,
        "fibre": rho.fibre,
        "ash": rho.ash,
        "alcohol": ETHANOL_DENSITY,
    }
    for name, value in expected.items():
        assert liquid_density(Mix(constituents=Constituents(**{name: 0.2}))) == pytest.approx(value)


def test_warm_liquid_is_lighter() -> None:
    cream = Mix(constituents=Constituents(water=0.6, milk_fat=0.4))
    assert liquid_density(cream, 323.15) < liquid_density(cream, 277.15)


def test_gas_adds_its_volume() -> None:
    foam = Mix(constituents=Constituents(water=0.1), gas=1e-4)
    assert volume(foam) == pytest.approx(liquid_volume(foam) + 1e-4)
    assert density(foam) == pytest.approx(0.1 / volume(foam))


def test_nothing_has_no_density() -> None:
    with pytest.raises(BalanceError, match="the mix is empty"):
        density(EMPTY)


def test_a_temperature_outside_the_source_is_refused() -> None:
    with pytest.raises(OutsideRange):
        liquid_density(Mix(constituents=Constituents(water=1.0)), 500.0)


@pytest.mark.parametrize("fat", [0.2599, 0.4301, float("nan")])
def test_chocolate_outside_the_measured_bars_is_refused(fat: float) -> None:
    with pytest.raises(OutsideRange, match="banks_2012"):
        chocolate_density(fat)


def test_fatter_chocolate_is_lighter() -> None:
    values = [chocolate_density(percent / 100.0) for percent in range(26, 44)]
    assert values == sorted(values, reverse=True)
