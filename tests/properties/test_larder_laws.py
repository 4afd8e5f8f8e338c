"""Laws of the larder: parts add up to one, nothing is negative, names and sources are sound."""

from __future__ import annotations

import re
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from entremetry.errors import DocumentError
from entremetry.larder import EU_CODES, NAMES, US_CODES, Constituents, HouseholdWeight, Ingredient
from entremetry.larder.label import replaced
from entremetry.larder.own import OwnIngredient, own_ingredients
from entremetry.larder.spelling import plain
from entremetry.sources import BIBLIOGRAPHY
from entremetry.store.larder_file import open_larder
from properties.strategies_larder import (
    compositions,
    fractions,
    household_weights,
    ingredients,
    labels,
    own_sections,
)

ALL = open_larder().ingredients
KEBAB = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
COCONUT = [i for i in ALL if i.id.startswith("coconut") and i.group != "spirit and wine"]


def by_id(ingredient: Ingredient) -> str:
    return ingredient.id


@pytest.mark.parametrize("ingredient", ALL, ids=by_id)
def test_an_ingredient_is_sound(ingredient: Ingredient) -> None:
    parts = [getattr(ingredient.composition, name) for name in NAMES]
    assert ingredient.composition.total == pytest.approx(1.0, abs=1e-9)
    assert min(parts) >= 0.0
    assert 80.0 < ingredient.density < 1700.0
    assert KEBAB.fullmatch(ingredient.id)
    assert 0.0 <= ingredient.refuse < 1.0
    assert 0.0 <= ingredient.sodium < 0.4
    assert ingredient.allergens_eu <= EU_CODES
    assert ingredient.allergens_us <= US_CODES


@pytest.mark.parametrize("ingredient", ALL, ids=by_id)
def test_every_figure_has_a_source(ingredient: Ingredient) -> None:
    cited = {ingredient.source, ingredient.density_source}
    cited |= {weight.source for weight in ingredient.household}
    assert cited <= set(BIBLIOGRAPHY)


@pytest.mark.parametrize("ingredient", ALL, ids=by_id)
def test_measures_and_packs_are_sound(ingredient: Ingredient) -> None:
    measures = [weight.measure for weight in ingredient.household]
    assert len(measures) == len(set(measures))
    assert all(weight.mass > 0.0 and weight.amount > 0.0 for weight in ingredient.household)
    assert all(weight.wording for weight in ingredient.household)
    assert all(0.0 < pack.mass <= 2.0 for pack in ingredient.packs)


def test_no_two_ingredients_share_an_id_or_a_name() -> None:
    owners: dict[str, str] = {}
    for ingredient in ALL:
        for name in {plain(n) for n in (ingredient.id, ingredient.name, *ingredient.aliases)}:
            assert owners.setdefault(name, ingredient.id) == ingredient.id


@pytest.mark.parametrize("ingredient", COCONUT, ids=by_id)
def test_coconut_is_a_tree_nut_nowhere(ingredient: Ingredient) -> None:
    codes = ingredient.allergens_eu | ingredient.allergens_us
    assert not any("nut" in code for code in codes)


def test_there_is_coconut_to_look_at() -> None:
    assert len(COCONUT) > 5


@given(ingredients)
def test_an_ingredient_is_found_by_each_of_its_names(ingredient: Ingredient) -> None:
    larder = open_larder()
    for name in (ingredient.id, ingredient.name, *ingredient.aliases):
        assert larder.find(name.upper()) is ingredient


@given(ingredients, st.floats(min_value=0.01, max_value=1000.0))
def test_weighing_counted_things_is_linear(ingredient: Ingredient, count: float) -> None:
    for weight in ingredient.household:
        one = ingredient.mass_of(1.0, weight.measure)
        assert ingredient.mass_of(count, weight.measure) == pytest.approx(count * one)


@given(compositions(), compositions(), fractions)
def test_blending_two_that_add_up_adds_up(
    first: Constituents, second: Constituents, share: float
) -> None:
    blend = first * share + second * (1.0 - share)
    assert blend.total == pytest.approx(1.0, abs=1e-9)


@given(compositions(), fractions)
def test_replacing_one_part_keeps_the_whole(start: Constituents, fat: float) -> None:
    others = 1.0 - start.fat
    if others > 1e-6:
        changed = replaced(start, {"fat": fat})
        assert changed.total == pytest.approx(1.0, abs=1e-9)
        assert changed.fat == pytest.approx(fat, abs=1e-9)


@given(ingredients, labels())
def test_an_override_says_what_it_was_told(ingredient: Ingredient, label: dict[str, float]) -> None:
    own = OwnIngredient.model_validate({"like": ingredient.id, "per_100g": label, "ph": 5.0})
    try:
        (made,) = own_ingredients({"mine": own}, open_larder())
    except DocumentError as error:
        assert "100 g" in str(error)
        return
    stated = sum(label[word] for word in ("fat", "carbohydrate", "protein")) / 100.0
    parts = made.composition
    assert parts.total == pytest.approx(1.0, abs=1e-9)
    assert parts.fat + parts.protein + parts.carbohydrate - parts.fibre == pytest.approx(stated)
    assert made.overridden == {"per_100g", "ph"}


@given(own_sections())
def test_a_new_own_ingredient_adds_up(section: dict[str, Any]) -> None:
    (made,) = own_ingredients({"mine": OwnIngredient.model_validate(section)}, open_larder())
    assert made.composition.total == pytest.approx(1.0, abs=1e-9)
    assert open_larder().with_own([made]).resolve("mine") is made


@given(household_weights())
def test_one_of_a_measure_times_its_amount_is_its_mass(weight: HouseholdWeight) -> None:
    assert weight.one * weight.amount == pytest.approx(weight.mass)
