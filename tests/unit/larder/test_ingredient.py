"""Counted things weigh what their measure says; an unknown one is answered with the known."""

from __future__ import annotations

import pytest

from entremetry.errors import UnknownName
from entremetry.larder import Constituents, HouseholdWeight, Ingredient


def weight(measure: str, grams: float, amount: float = 1.0) -> HouseholdWeight:
    return HouseholdWeight(
        measure=measure, amount=amount, mass=grams / 1000.0, source="usda_sr28", wording=measure
    )


EGG = Ingredient(
    id="egg-whole",
    name="Whole egg",
    group="egg",
    composition=Constituents(water=0.76, protein=0.126, other_fat=0.1, ash=0.014),
    density=1027.0,
    source="usda_sr28",
    household=(
        weight("large egg (US)", 50.0),
        weight("large egg (EU)", 61.5),
        weight("leaf", 2.5, amount=5.0),
    ),
)


@pytest.mark.parametrize(
    "unit",
    ["large egg (US)", "large eggs (US)", "Large eggs (us)", "us large eggs", "US large egg"],
)
def test_a_size_is_found_however_it_is_written(unit: str) -> None:
    assert EGG.mass_of(3.0, unit) == pytest.approx(0.150)


def test_a_size_without_a_country_is_not_guessed() -> None:
    with pytest.raises(UnknownName, match=r"large egg \((EU|US)\)"):
        EGG.mass_of(2.0, "large eggs")


@pytest.mark.parametrize(("region", "kilograms"), [("us", 0.1), ("eu", 0.123)])
def test_a_country_chooses_the_size(region: str, kilograms: float) -> None:
    assert EGG.mass_of(2.0, "large eggs", region) == pytest.approx(kilograms)


def test_a_weight_of_several_is_divided() -> None:
    assert EGG.mass_of(2.0, "leaves") == pytest.approx(0.001)


def test_the_kinds_of_a_thing_are_told() -> None:
    assert EGG.measures_of("eggs") == ("large egg (US)", "large egg (EU)")
    assert EGG.measures_of("pod") == ()
