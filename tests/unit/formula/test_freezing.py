"""Freezing point and ice of a mix."""

from __future__ import annotations

import pytest

from entremetry.errors import OutsideRange
from entremetry.formula.freezing import dissolved, free_water, ice_fraction, mix_freezing_point
from entremetry.larder.constituents import Constituents
from entremetry.physics.solution import SUCROSE, ice_activity, water_activity

SYRUP = Constituents(water=0.7, sucrose=0.3)


def test_unsplit_sugars_dissolve_as_sucrose() -> None:
    parts = Constituents(water=1.0, sucrose=0.1, unsplit_sugars=0.2)
    assert dissolved(parts)[SUCROSE] == pytest.approx(0.3)


def test_protein_holds_some_water() -> None:
    assert free_water(Constituents(water=1.0, protein=0.5)) == pytest.approx(0.8)
    assert free_water(Constituents(water=0.1, protein=0.5)) == 0.0


def test_no_ice_above_the_freezing_point_and_more_in_more_cold() -> None:
    begins = mix_freezing_point(SYRUP)
    shares = [ice_fraction(SYRUP, begins - below) for below in (-0.1, 0.1, 1.0, 5.0, 15.0)]
    assert shares[0] == 0.0
    assert shares == sorted(shares) and shares[-1] > 0.7


def test_what_stays_liquid_is_in_balance_with_the_ice() -> None:
    left = 0.7 * (1.0 - ice_fraction(SYRUP, 263.15))
    assert water_activity({SUCROSE: 0.3}, left) == pytest.approx(ice_activity(263.15), rel=1e-9)


def test_fat_does_not_freeze_and_does_not_matter() -> None:
    fat = Constituents(water=0.7, sucrose=0.3, milk_fat=2.0)
    assert ice_fraction(fat, 255.15) == pytest.approx(ice_fraction(SYRUP, 255.15), rel=1e-12)


def test_a_dry_mix_has_no_freezing_point() -> None:
    with pytest.raises(OutsideRange):
        mix_freezing_point(Constituents(sucrose=1.0))
