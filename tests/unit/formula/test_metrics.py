"""The shares of a mix."""

from __future__ import annotations

import pytest

from entremetry.errors import BalanceError
from entremetry.formula import EMPTY, Mix, metrics
from entremetry.larder.constituents import SUGARS, Constituents

GANACHE = Mix(
    constituents=Constituents(
        water=0.25,
        cocoa_butter=0.25,
        milk_fat=0.2,
        sucrose=0.3,
        lactose=0.1,
        protein=0.5,
        alcohol=0.1,
        organic_acids=0.05,
        other_fat=0.25,
    )
)


def test_shares_are_of_the_whole_mass() -> None:
    told = metrics(GANACHE)
    assert told.water == pytest.approx(0.125)
    assert told.fat == pytest.approx(0.35)
    assert told.fat == pytest.approx(told.cocoa_butter + told.milk_fat + told.other_fat)
    assert told.protein == pytest.approx(0.25)
    assert told.alcohol == pytest.approx(0.05)
    assert told.dry_solids == pytest.approx(1.0 - 0.125 - 0.05)
    assert told.organic_acids == pytest.approx(0.025)


def test_every_sugar_is_told_and_they_add_up() -> None:
    told = metrics(GANACHE)
    assert set(told.each_sugar) == set(SUGARS)
    assert sum(told.each_sugar.values()) == pytest.approx(told.sugars)
    assert told.each_sugar["sucrose"] == pytest.approx(0.15)


def test_brix_is_that_of_the_liquid() -> None:
    assert metrics(GANACHE).brix == pytest.approx(100.0 * 0.45 / 0.8)


def test_nothing_has_no_shares() -> None:
    with pytest.raises(BalanceError, match="empty"):
        metrics(EMPTY)
