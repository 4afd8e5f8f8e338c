"""Constituents add, scale and keep their totals."""

from __future__ import annotations

import pytest

from entremetry.larder import Constituents

CREAM = Constituents(water=0.59, milk_fat=0.35, protein=0.023, lactose=0.032, ash=0.005)
SYRUP = Constituents(water=0.5, sucrose=0.3, glucose=0.2)


def test_sums_are_by_part() -> None:
    both = CREAM + SYRUP
    assert both.water == pytest.approx(1.09)
    assert both.total == pytest.approx(2.0)
    assert (both - SYRUP).milk_fat == pytest.approx(CREAM.milk_fat)


def test_a_factor_scales_every_part() -> None:
    assert (CREAM * 2.0).total == pytest.approx(2.0)
    assert (CREAM * 2.0).lactose == pytest.approx(0.064)


def test_totals_hold_their_parts() -> None:
    assert SYRUP.sugars == pytest.approx(0.5)
    assert CREAM.fat == pytest.approx(0.35)
    assert SYRUP.dry_solids == pytest.approx(0.5)


def test_carbohydrate_is_with_fibre_and_acids() -> None:
    fruit = Constituents(water=0.8, fructose=0.1, fibre=0.06, organic_acids=0.02, starch=0.02)
    assert fruit.carbohydrate == pytest.approx(0.2)
