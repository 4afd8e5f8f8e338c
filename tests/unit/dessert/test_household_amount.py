"""Masses in the reader's household measures."""

from __future__ import annotations

from dataclasses import replace

import pytest

from entremetry.dessert.household_amount import STATES, household_amount
from entremetry.larder.ingredient import HouseholdWeight
from entremetry.quantities import UNITS, Method
from entremetry.quantities.things import things
from entremetry.store.larder_file import open_larder
from entremetry.words import say, speaking
from small_larder import SMALL_LARDER

FLOUR = SMALL_LARDER.find("plain-flour")


def test_a_cup_takes_the_weight_of_the_ingredient() -> None:
    amount = household_amount(0.250, FLOUR, "us")
    assert amount.text == "2 cups"
    assert amount.relative_error == pytest.approx(0.0, abs=1e-9)


def test_sheets_are_counted() -> None:
    gelatine = SMALL_LARDER.find("gelatine-sheet-gold")
    assert household_amount(0.008, gelatine, "us").text.startswith("4 sheets")


def test_what_must_be_weighed_is_weighed() -> None:
    pectin = replace(FLOUR, household=(), tags=frozenset({"weigh-only"}))
    assert household_amount(0.0031, pectin, "us").text.startswith("weigh")


def test_the_state_that_a_cup_is_known_for_is_said() -> None:
    sliced = HouseholdWeight(measure="us cup, sliced", amount=1.0, mass=0.1, source="from_memory")
    fruit = replace(FLOUR, household=(sliced,))
    assert household_amount(0.2, fruit, "us").text == "2 cups, sliced"


@pytest.mark.parametrize("grams", [0.5, 3.0, 17.0, 61.0, 240.0, 1234.0])
def test_the_error_is_the_distance_of_what_the_hand_measures(grams: float) -> None:
    amount = household_amount(grams / 1000.0, FLOUR, "us")
    assert amount.text
    assert amount.relative_error is None or abs(amount.relative_error) < 0.5


def test_yolks_and_whites_are_counted_as_parts_of_eggs() -> None:
    white, yolk = open_larder().find("egg-white"), open_larder().find("egg-yolk")
    assert household_amount(0.099, white, "us").text == "whites of 3 large eggs (US)"
    assert household_amount(0.017, yolk, "us").text == "yolk of 1 large egg (US)"


def test_gelatine_sheets_are_counted_or_weighed_and_never_poured() -> None:
    sheet = open_larder().find("gelatine-sheet-gold")
    assert household_amount(0.0046, sheet, "us").text.startswith("weigh")
    assert household_amount(0.004, sheet, "us").text.startswith("2 sheets")


def test_every_measure_state_and_pack_of_the_larder_has_a_french_name() -> None:
    alike = {"biscuit", "croissant", "fruit", "orange", "sachet"}
    units = {unit.name for unit in UNITS}
    measures = {w.measure for each in open_larder().ingredients for w in each.household}
    counted = {each.partition(",")[0] for each in measures} - units
    counted |= {pack.name for each in open_larder().ingredients for pack in each.packs}
    states = {each.partition(",")[2].strip() for each in measures} - {""}
    with speaking("fr"):
        assert {thing for thing in counted if things(thing) == thing} <= alike
        assert {state for state in states if say(state) == state} == set()
    assert states <= set(STATES)


def test_without_cups_there_are_spoons_a_jug_or_the_scales() -> None:
    spooned = 0
    for ingredient in open_larder():
        for number in range(60):
            mass = 0.0005 * 1.12**number
            amount = household_amount(mass, ingredient, "spoons")
            assert "cup" not in amount.text
            spooned += amount.method is Method.SPOONS
    assert spooned > 1000
    sugar = open_larder().find("caster-sugar")
    assert household_amount(0.020, sugar, "spoons") == household_amount(0.020, sugar, "metric")
    assert "cup" in household_amount(0.120, sugar, "metric").text
