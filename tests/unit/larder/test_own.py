"""Own ingredients: overrides are visible, new ones add up, faults are told together."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from entremetry.errors import DocumentError
from entremetry.larder import Ingredient
from entremetry.larder.own import OwnIngredient, own_ingredients
from entremetry.store.larder_file import open_larder


def made(section: dict[str, dict[str, Any]]) -> tuple[Ingredient, ...]:
    return own_ingredients(
        {name: OwnIngredient.model_validate(own) for name, own in section.items()}, open_larder()
    )


def one(own: dict[str, Any], ingredient_id: str = "mine") -> Ingredient:
    return made({ingredient_id: own})[0]


PASTE: dict[str, Any] = {
    "name": "Black sesame paste",
    "density": "1.05 g/ml",
    "per_100g": {"fat": "58 g", "carbohydrate": 8, "sugars": 1, "protein": 21, "fibre": 9,
                 "salt": 0.1, "water": 2.9, "ash": 1.1},
    "measures": {"us tbsp": "16 g", "jar": "180 g"},
    "allergens": ["sesame"],
    "tags": ["paste", "vegan"],
    "pack": {"name": "jar", "mass": "180 g"},
    "source": "packet",
}  # fmt: skip


def test_an_override_keeps_all_that_is_not_named() -> None:
    cream, own = open_larder().find("cream-35"), one({"like": "cream-35", "fat": "38 %"})
    assert own.composition.milk_fat == pytest.approx(0.38)
    assert own.composition.total == pytest.approx(1.0, abs=1e-12)
    ratio = own.composition.water / own.composition.lactose
    assert ratio == pytest.approx(cream.composition.water / cream.composition.lactose)
    assert own.household == cream.household
    assert own.allergens_eu == cream.allergens_eu


def test_every_override_is_visible() -> None:
    own = one({"like": "cream-35", "name": "Farm cream", "fat": "38 %", "source": "packet"})
    assert own.overridden == {"name", "fat"}
    assert own.source == "own: packet"


def test_an_override_of_a_larder_id_needs_no_like() -> None:
    own = one({"refuse": "8 %"}, "raspberry")
    assert own.refuse == pytest.approx(0.08)
    assert own.name == "Raspberries"
    assert open_larder().with_own([own]).find("raspberry").overridden == {"refuse"}


def test_a_new_one_is_what_its_label_says() -> None:
    own = one(PASTE)
    parts = own.composition
    assert parts.total == pytest.approx(1.0, abs=1e-12)
    assert parts.other_fat == pytest.approx(0.58, rel=0.005)
    assert parts.unsplit_sugars == pytest.approx(0.01, rel=0.005)
    assert parts.other_carbohydrate == pytest.approx(0.07, rel=0.005)
    assert own.sodium == pytest.approx(0.001 / 2.5)
    assert own.mass_of(1, "jar") == pytest.approx(0.180)
    assert own.allergens_eu == {"sesame"}
    assert own.packs[0].mass == pytest.approx(0.180)
    assert own.density == pytest.approx(1050.0)


def test_water_not_stated_is_what_the_rest_leaves() -> None:
    own = one({"name": "Syrup", "density": "1.3 g/ml", "per_100g": {"sugars": 65}})
    assert own.composition.water == pytest.approx(0.35)


def test_one_may_be_like_another_above_it() -> None:
    first, second = made({"mine": PASTE, "saltier": {"like": "mine", "per_100g": {"salt": 2}}})
    assert second.composition.ash == pytest.approx(0.02)
    assert second.composition.other_fat < first.composition.other_fat


def test_sugars_replaced_keep_their_proportions() -> None:
    sweeter = one({"like": "honey", "per_100g": {"sugars": 70}})
    honey = open_larder().find("honey").composition
    assert sweeter.composition.sugars == pytest.approx(0.70)
    assert sweeter.composition.fructose / sweeter.composition.glucose == pytest.approx(
        honey.fructose / honey.glucose
    )


@pytest.mark.parametrize(
    ("own", "message"),
    [
        ({"per_100g": {"fat": 80, "sugars": 30}}, "110.0 g"),
        ({"per_100g": {"fat": 40, "water": 40}}, "80.0 g"),
        ({"per_100g": {"sugars": 50, "carbohydrate": 40}}, "carbohydrate"),
        ({"per_100g": {"sucrose": 50, "sugars": 40}}, "sugars"),
        ({"per_100g": {"sugar": 50}}, "sugars"),
        ({"per_100g": {"fat": -1}}, "0 to 100"),
        ({"per_100g": {"fat": float("nan")}}, "0 to 100"),
        ({"per_100g": {"fat": True}}, "0 to 100"),
        ({"fat": "30 %", "per_100g": {"fat": 30}}, "twice"),
        ({"allergens": ["hazelnuts"]}, "hazelnut"),
        ({"tags": ["sour"]}, "acidic"),
        ({"bloom": 2000}, "350"),
        ({"refuse": "100 %"}, "less than 1"),
        ({"colour": "red"}, "colour"),
    ],
)
def test_what_cannot_be_is_refused_when_it_is_read(own: dict[str, Any], message: str) -> None:
    with pytest.raises(ValidationError, match=message):
        OwnIngredient.model_validate(own)


def test_all_faults_of_a_section_are_told_at_once() -> None:
    with pytest.raises(DocumentError) as caught:
        made({"a": {"like": "creem-35"}, "b": {"name": "Nothing"}, "c": {"like": "cream-35"}})
    first, second = caught.value.faults
    assert first.field == "ingredients.a.like"
    assert "cream-35" in first.nearest
    assert second.field == "ingredients.b"
    assert "density" in second.found


def test_more_fat_than_there_is_room_is_refused() -> None:
    with pytest.raises(DocumentError, match="parts of 110"):
        made({"mine": {"like": "cream-35", "per_100g": {"fat": 60, "water": 50}}})


def test_milk_in_it_is_not_vegan() -> None:
    own = one({"like": "oat-milk", "allergens": ["oats", "milk"]})
    assert "vegan" not in own.tags


def test_what_goes_with_the_fat_follows_another_fat_content() -> None:
    cream, own = open_larder().find("cream-35"), one({"like": "cream-35", "fat": "30 %"})
    assert own.nutrients.saturates == pytest.approx((cream.nutrients.saturates or 0.0) * 30 / 35)
    assert own.nutrients.calcium == cream.nutrients.calcium


def test_a_stated_nutrient_goes_before_what_follows() -> None:
    own = one({"like": "cream-35", "fat": "30 %", "per_100g": {"saturates": 20}})
    assert own.nutrients.saturates == pytest.approx(0.20)


def test_a_new_ingredient_knows_only_what_its_label_states() -> None:
    paste = one({**PASTE, "per_100g": {**PASTE["per_100g"], "saturates": 8.1}})
    assert paste.nutrients.saturates == pytest.approx(0.081)
    assert paste.nutrients.cholesterol is None
    assert "sodium" not in paste.not_reported


def test_a_new_ingredient_without_salt_says_that_its_sodium_is_unknown() -> None:
    figures = {word: value for word, value in PASTE["per_100g"].items() if word != "salt"}
    assert "sodium" in one({**PASTE, "per_100g": figures}).not_reported


def test_other_sugars_than_before_leave_the_added_ones_unknown() -> None:
    own = one({"like": "raspberry-puree", "per_100g": {"sugars": 25}})
    assert own.nutrients.added_sugars is None


def test_the_list_of_a_packet_takes_the_place_of_what_the_larder_knows() -> None:
    own = one({"like": "couverture-dark-70", "contains": "cocoa mass, sugar, cocoa butter"})
    assert (own.parts, own.contains) == ((), "cocoa mass, sugar, cocoa butter")
