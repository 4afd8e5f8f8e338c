"""Names of ingredients in the language that is spoken."""

from __future__ import annotations

from dataclasses import replace

import pytest

from entremetry.larder import Ingredient
from entremetry.larder.own import OwnIngredient, own_ingredients
from entremetry.larder.spoken_name import ingredient_name, untranslated_names
from entremetry.store.larder_file import open_larder
from entremetry.words import languages, speaking

LARDER = open_larder()


def own(**fields: object) -> Ingredient:
    section = {"mine": OwnIngredient.model_validate(fields)}
    return own_ingredients(section, LARDER)[0]


def test_the_larder_has_french_names() -> None:
    with speaking("fr"):
        assert ingredient_name(LARDER.find("almond-ground")) == "Poudre d’amande"
        assert ingredient_name(LARDER.find("raspberry-puree")) == "Purée de framboise 10 % de sucre"
    assert ingredient_name(LARDER.find("almond-ground")) == "Ground almonds"


@pytest.mark.parametrize("code", languages())
def test_every_name_of_the_larder_is_in_every_language(code: str) -> None:
    with speaking(code):
        assert untranslated_names(LARDER) == ()


def test_numbers_of_a_name_stay_in_its_translation() -> None:
    for ingredient in LARDER:
        with speaking("fr"):
            french = ingredient_name(ingredient)
        numbers = [c for c in ingredient.name if c.isdigit()]
        assert [c for c in french if c.isdigit()] == numbers, french


def test_a_name_that_a_cook_gave_stays_as_it_is() -> None:
    with speaking("fr"):
        assert ingredient_name(own(like="cream-35", name="Whole milk")) == "Whole milk"


def test_an_own_ingredient_without_a_name_is_called_as_what_it_is_like() -> None:
    changed = own(like="cream-35", fat="40 %")
    assert ingredient_name(changed) == "Cream 35 % (own)"
    with speaking("fr"):
        assert ingredient_name(changed) == "Crème 35 % (maison)"


def test_what_has_no_translation_is_told_once_and_only_if_it_is_the_larders() -> None:
    new = replace(LARDER.find("honey"), name="Heather honey")
    mine = own(like="honey", name="Honey of my bees")
    with speaking("fr"):
        assert ingredient_name(new) == "Heather honey"
        assert untranslated_names([new, new, mine, LARDER.find("honey")]) == ("Heather honey",)
