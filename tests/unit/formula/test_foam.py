"""Air in, air kept, never less than none."""

from __future__ import annotations

import pytest

from entremetry.errors import BalanceError
from entremetry.formula import (
    Mix,
    aerate_to,
    density,
    fold,
    liquid_density,
    liquid_volume,
    overrun,
    overrun_of,
    volume,
    whip,
)
from entremetry.larder.constituents import Constituents

CREAM = Mix(constituents=Constituents(water=0.6, milk_fat=0.36, protein=0.04))
FRUIT = Mix(constituents=Constituents(water=0.85, fructose=0.15))


def test_an_overrun_of_one_doubles_the_volume() -> None:
    assert volume(whip(CREAM, 1.0)) == pytest.approx(2.0 * volume(CREAM))


def test_whipping_again_replaces_the_air() -> None:
    assert whip(whip(CREAM, 1.5), 0.9) == whip(CREAM, 0.9)


def test_overrun_is_read_back() -> None:
    assert overrun_of(whip(CREAM, 0.9)) == pytest.approx(0.9)


def test_a_foam_of_a_density_has_it() -> None:
    assert density(aerate_to(CREAM, 500.0)) == pytest.approx(500.0)


def test_a_foam_cannot_be_denser_than_its_liquid() -> None:
    with pytest.raises(BalanceError, match="cannot whip to 1.200 g/ml: without air it has"):
        aerate_to(CREAM, 1200.0)


def test_the_density_of_the_liquid_itself_is_no_overrun() -> None:
    assert overrun(1006.0, 1006.0) == 0.0
    assert aerate_to(CREAM, liquid_density(CREAM)).gas == pytest.approx(0.0)


@pytest.mark.parametrize("value", [-0.1, float("nan")])
def test_a_negative_overrun_is_refused(value: float) -> None:
    with pytest.raises(BalanceError, match="overrun"):
        whip(CREAM, value)


def test_folding_adds_volumes_and_loses_a_tenth_of_the_air() -> None:
    foam = whip(CREAM, 1.0)
    folded = fold(FRUIT, foam)
    assert folded.mass == pytest.approx(2.0)
    assert folded.gas == pytest.approx(0.9 * foam.gas)
    assert volume(folded) == pytest.approx(
        liquid_volume(FRUIT) + liquid_volume(CREAM) + 0.9 * foam.gas
    )


@pytest.mark.parametrize("kept", [-0.1, 1.01, float("nan")])
def test_folding_cannot_make_air(kept: float) -> None:
    with pytest.raises(BalanceError, match="0 to 100 %"):
        fold(FRUIT, whip(CREAM, 1.0), kept=kept)
