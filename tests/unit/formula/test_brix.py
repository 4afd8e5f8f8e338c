"""Degrees Brix are those of the liquid, by mass."""

from __future__ import annotations

import pytest

from entremetry.formula import Mix, brix, soluble_solids
from entremetry.larder.constituents import Constituents


def test_a_pure_syrup_has_its_sugar_per_cent() -> None:
    assert brix(Mix(constituents=Constituents(water=0.35, sucrose=0.65))) == pytest.approx(65.0)


def test_fat_protein_starch_fibre_and_ash_are_not_in_the_liquid() -> None:
    plain = Constituents(water=0.4, glucose=0.1)
    rich = plain + Constituents(milk_fat=0.3, protein=0.1, starch=0.1, fibre=0.05, ash=0.01)
    assert brix(Mix(constituents=rich)) == pytest.approx(brix(Mix(constituents=plain)))


def test_polyols_acids_and_dextrins_are_dissolved() -> None:
    mix = Mix(
        constituents=Constituents(
            water=0.5, polyols=0.1, organic_acids=0.02, other_carbohydrate=0.08
        )
    )
    assert soluble_solids(mix) == pytest.approx(0.2)


def test_alcohol_is_part_of_the_liquid() -> None:
    mix = Mix(constituents=Constituents(water=0.5, alcohol=0.3, sucrose=0.2))
    assert brix(mix) == pytest.approx(20.0)


def test_a_mix_without_a_liquid_has_none() -> None:
    assert brix(Mix(constituents=Constituents(cocoa_butter=1.0))) == 0.0
