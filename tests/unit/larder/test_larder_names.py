"""Ingredients are found by id, name and alias, and asked about where a name is not enough."""

from __future__ import annotations

import pytest

from entremetry.errors import UnknownName
from entremetry.larder import Constituents, Generic, Ingredient, Larder
from entremetry.store.larder_file import open_larder


def ingredient(ingredient_id: str, name: str, *aliases: str, water: float = 1.0) -> Ingredient:
    return Ingredient(
        id=ingredient_id,
        name=name,
        group="own",
        composition=Constituents(water=water, sucrose=1.0 - water),
        density=1000.0,
        source="our_own",
        aliases=aliases,
    )


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("cream-35", "cream-35"),
        ("Cream 35 %", "cream-35"),
        ("crème 35 %", "cream-35"),
        ("creme 35 %", "cream-35"),
        ("heavy cream", "cream-36"),
        ("Superfine Sugar", "caster-sugar"),
        ("all-purpose flour", "plain-flour"),
        ("cornflour", "corn-starch"),
        ("œuf entier", "egg-whole"),
        ("oeuf entier", "egg-whole"),
        ("confectioners’ sugar", "icing-sugar"),
        ("eggs", "egg-whole"),
    ],
)
def test_a_name_is_found_however_it_is_written(name: str, expected: str) -> None:
    found = open_larder().resolve(name)
    assert isinstance(found, Ingredient)
    assert found.id == expected


def test_a_word_for_several_gives_a_question() -> None:
    assert isinstance(open_larder().resolve("gelatine"), Generic)
    assert isinstance(open_larder().resolve("blackcurrant purée"), Generic)


def test_an_id_is_always_itself() -> None:
    found = open_larder().resolve("blackcurrant-puree")
    assert isinstance(found, Ingredient)


def test_an_unknown_name_is_answered_with_three_near_ones() -> None:
    with pytest.raises(UnknownName) as caught:
        open_larder().resolve("gelatine-sheet-golden")
    assert len(caught.value.nearest) == 3
    assert "gelatine-sheet-gold" in caught.value.nearest


def test_the_later_of_two_with_one_id_stays() -> None:
    larder = Larder((ingredient("a", "First"), ingredient("a", "Second", water=0.5)))
    assert len(larder) == 1
    assert larder.find("a").name == "Second"
    assert "a" in larder
    assert [each.id for each in larder] == ["a"]


def test_an_own_ingredient_takes_the_name_over() -> None:
    larder = Larder((ingredient("milk-1", "Milk"),))
    own = larder.with_own([ingredient("milk-2", "My milk", "milk")])
    assert own.find("milk").id == "milk-2"
    assert own.find("milk-1").id == "milk-1"
    assert larder.find("milk").id == "milk-1"


def test_nothing_of_ones_own_leaves_the_larder_as_it_is() -> None:
    assert open_larder().with_own([]) is open_larder()


def test_an_override_takes_the_names_of_what_it_overrides() -> None:
    larder = Larder((ingredient("milk-1", "Milk", "lait"), ingredient("water-1", "Water")))
    own = larder.with_own([ingredient("milk-1", "Farm milk", water=0.9)])
    assert own.find("farm milk").composition.water == pytest.approx(0.9)
    assert [each.id for each in own] == ["milk-1", "water-1"]
    with pytest.raises(UnknownName):
        own.find("lait")
