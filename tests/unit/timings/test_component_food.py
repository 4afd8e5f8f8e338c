"""A finished component as a material."""

from __future__ import annotations

import pytest

from entremetry.formula.mix import Mix
from entremetry.larder.constituents import Constituents
from entremetry.timings.component_food import (
    activity_of_water,
    component_food,
    freezing_curve,
    material_of,
)
from timed_desserts import reckoning_of

JUICE = Constituents(water=0.85, sucrose=0.15)
CREAM = Constituents(water=0.6, milk_fat=0.35, protein=0.02, lactose=0.02, ash=0.01)


def test_what_the_density_leaves_is_air() -> None:
    mix = Mix(constituents=JUICE)
    dense = component_food(mix, "mousse", 2000.0)
    airy = component_food(mix, "mousse", 500.0)
    assert dense.air == 0.0
    assert airy.air == pytest.approx(0.53, abs=0.01)


def test_bases_are_crumb_and_all_else_is_foam() -> None:
    kinds = {
        kind: component_food(Mix(constituents=CREAM), kind, 600.0).structure
        for kind in ("base", "crumble", "mousse", "insert")
    }
    assert kinds == {"base": "crumb", "crumble": "crumb", "mousse": "foam", "insert": "foam"}


def test_milk_fat_melts_and_unnamed_fat_does_not() -> None:
    fats = component_food(Mix(constituents=CREAM), "mousse", 900.0).melting_fats
    assert list(fats.values()) == [0.35]


def test_fifteen_per_cent_of_sugar_freezes_a_degree_below_water() -> None:
    curve = freezing_curve(JUICE)
    assert curve is not None
    assert curve.freezing_point == pytest.approx(273.15 - 1.01, abs=0.03)


@pytest.mark.parametrize(
    "parts",
    [
        Constituents(cocoa_butter=0.4, sucrose=0.5, protein=0.1),
        Constituents(water=0.05, protein=0.3, starch=0.65),
        Constituents(water=0.1, fructose=0.9),
        Constituents(water=0.16, fructose=0.84),
    ],
    ids=["chocolate", "biscuit", "too sweet", "colder than any freezer"],
)
def test_what_is_dry_or_too_sweet_has_no_freezing_curve(parts: Constituents) -> None:
    assert freezing_curve(parts) is None


@pytest.mark.parametrize(
    "parts", [Constituents(water=1.0), Constituents(water=0.98, protein=0.0199, ash=0.0001)]
)
def test_water_with_next_to_nothing_in_it_freezes_at_nought(parts: Constituents) -> None:
    curve = freezing_curve(parts)
    assert curve is not None
    assert 273.0 < curve.freezing_point < 273.15
    assert curve.liquid_fraction(270.15) < 0.05


def test_water_binds_to_protein_but_counts_for_the_activity() -> None:
    assert activity_of_water(JUICE) == pytest.approx(0.99, abs=0.002)


def test_every_component_of_a_dessert_becomes_a_material() -> None:
    reckoning = reckoning_of()
    for component in reckoning.dessert.components:
        made = material_of(reckoning, component.id)
        assert made.name == component.name
        assert made.lowest <= 233.16 and made.highest >= 373.0
