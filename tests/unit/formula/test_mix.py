"""A mix is never less than nothing."""

from __future__ import annotations

import pytest

from entremetry.errors import BalanceError
from entremetry.formula import EMPTY, Mix, mixed
from entremetry.larder.constituents import Constituents


def test_mass_is_the_sum_of_the_constituents() -> None:
    mix = Mix(constituents=Constituents(water=0.6, sucrose=0.3, ash=0.1))
    assert mix.mass == pytest.approx(1.0)


def test_mixing_adds_masses_and_gas() -> None:
    foam = Mix(constituents=Constituents(water=0.1), gas=2e-4)
    syrup = Mix(constituents=Constituents(water=0.2, sucrose=0.3), gas=1e-5)
    both = mixed(foam, syrup)
    assert both.constituents == Constituents(water=0.1 + 0.2, sucrose=0.3)
    assert both.gas == pytest.approx(2.1e-4)


def test_nothing_mixed_is_the_empty_mix() -> None:
    assert mixed() == EMPTY


def test_less_than_nothing_is_refused_by_name() -> None:
    with pytest.raises(BalanceError, match="cannot hold -20 g of milk fat"):
        Mix(constituents=Constituents(water=1.0, milk_fat=-0.02))


@pytest.mark.parametrize("gas", [-1e-9, float("nan"), float("inf")])
def test_impossible_gas_is_refused(gas: float) -> None:
    with pytest.raises(BalanceError, match="ml of gas"):
        Mix(constituents=Constituents(water=1.0), gas=gas)


def test_a_constituent_that_is_no_number_is_refused() -> None:
    with pytest.raises(BalanceError, match="nan g of water"):
        Mix(constituents=Constituents(water=float("nan")))
