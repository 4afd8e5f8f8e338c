"""Losses take what they say and refuse what is not there."""

from __future__ import annotations

import pytest

from entremetry.errors import BalanceError
from entremetry.formula import (
    Mix,
    bake,
    brix,
    drain,
    evaporate,
    leave_behind,
    reduce_to_brix,
    reduce_to_mass,
    take_out,
    take_up,
    trim,
)
from entremetry.larder.constituents import Constituents

SYRUP = Mix(constituents=Constituents(water=0.360, sucrose=0.040))
TIPSY = Mix(constituents=Constituents(water=0.06, alcohol=0.04, sucrose=0.05))


def test_evaporating_takes_water_and_nothing_else() -> None:
    after = evaporate(TIPSY, 0.02)
    assert after.constituents == Constituents(water=0.06 - 0.02, alcohol=0.04, sucrose=0.05)


def test_evaporating_all_the_water_is_allowed() -> None:
    assert evaporate(SYRUP, 0.36).constituents.water == 0.0


def test_evaporating_more_water_than_there_is_names_both_amounts() -> None:
    with pytest.raises(BalanceError, match="cannot evaporate 400 g of water: there are only 360 g"):
        evaporate(SYRUP, 0.4)


def test_a_negative_amount_is_refused() -> None:
    with pytest.raises(BalanceError, match="zero or more"):
        evaporate(SYRUP, -0.001)
    with pytest.raises(BalanceError, match="zero or more"):
        take_up(SYRUP, float("nan"))


def test_draining_takes_water() -> None:
    assert drain(SYRUP, 0.1).mass == pytest.approx(0.3)


def test_taking_up_adds_water() -> None:
    assert take_up(SYRUP, 0.04).constituents.water == pytest.approx(0.4)


def test_reducing_leaves_the_mass_asked_for() -> None:
    after = reduce_to_mass(SYRUP, 0.18)
    assert after.mass == pytest.approx(0.18, abs=1e-15)
    assert after.constituents.sucrose == 0.04


def test_reducing_to_what_is_there_changes_nothing() -> None:
    assert reduce_to_mass(SYRUP, SYRUP.mass).constituents == SYRUP.constituents


def test_reducing_to_more_than_there_is_is_refused() -> None:
    with pytest.raises(BalanceError, match="cannot reduce to 500 g: there are only 400 g"):
        reduce_to_mass(SYRUP, 0.5)


def test_reducing_to_less_than_the_dry_matter_is_refused() -> None:
    with pytest.raises(BalanceError, match="without any of its water 40 g would be left"):
        reduce_to_mass(SYRUP, 0.03)


def test_reducing_to_brix_reaches_it() -> None:
    assert brix(reduce_to_brix(SYRUP, 65.0)) == pytest.approx(65.0, abs=1e-9)


def test_reducing_to_brix_counts_the_alcohol_that_stays() -> None:
    assert brix(reduce_to_brix(TIPSY, 50.0)) == pytest.approx(50.0, abs=1e-9)


def test_a_reduction_that_the_alcohol_forbids_is_refused() -> None:
    with pytest.raises(BalanceError, match="40 g of alcohol stay"):
        reduce_to_brix(TIPSY, 70.0)


@pytest.mark.parametrize(
    ("target", "words"),
    [(9.9, "has 10 °Brix already"), (88.1, "above 88 °Brix"), (float("nan"), "already")],
)
def test_an_unreachable_brix_is_refused(target: float, words: str) -> None:
    with pytest.raises(BalanceError, match=words):
        reduce_to_brix(SYRUP, target)


def test_water_alone_has_no_brix_to_reach() -> None:
    with pytest.raises(BalanceError, match="nothing in it dissolves"):
        reduce_to_brix(Mix(constituents=Constituents(water=1.0)), 20.0)


def test_baking_takes_its_share_of_the_mass_as_water() -> None:
    dough = Mix(constituents=Constituents(water=0.2, starch=0.8))
    assert bake(dough, 0.11).constituents == Constituents(water=pytest.approx(0.09), starch=0.8)


def test_baking_out_more_than_the_water_is_refused() -> None:
    dough = Mix(constituents=Constituents(water=0.1, starch=0.9))
    with pytest.raises(BalanceError, match="cannot bake out 150 g of water: there are only 100 g"):
        bake(dough, 0.15)


@pytest.mark.parametrize("loss", [-0.01, 1.0, float("nan")])
def test_a_bake_loss_that_is_no_fraction_is_refused(loss: float) -> None:
    with pytest.raises(BalanceError, match="bake loss"):
        bake(SYRUP, loss)


def test_what_is_left_behind_takes_its_gas_along() -> None:
    foam = Mix(constituents=Constituents(water=0.2), gas=1e-4)
    after = leave_behind(foam, 0.05)
    assert after.mass == pytest.approx(0.15)
    assert after.gas == pytest.approx(0.75e-4)


def test_more_than_there_is_cannot_be_left_behind() -> None:
    with pytest.raises(BalanceError, match="cannot leave 500 g behind"):
        leave_behind(SYRUP, 0.5)


def test_trimming_takes_a_share_of_everything() -> None:
    assert trim(SYRUP, 0.25).constituents.sucrose == pytest.approx(0.03)


def test_a_pod_is_taken_out_whole() -> None:
    pod = Constituents(water=0.001, fibre=0.002)
    milk = Mix(constituents=Constituents(water=0.2) + pod)
    assert take_out(milk, pod).constituents.fibre == 0.0


def test_what_is_not_in_it_cannot_be_taken_out() -> None:
    with pytest.raises(BalanceError, match="fibre"):
        take_out(SYRUP, Constituents(fibre=0.002))
