"""Order, brackets, emphasis, quantities and water of the list of ingredients."""

from __future__ import annotations

import pytest

from entremetry.cli.label_view import list_text
from entremetry.labels import Rules
from entremetry.labels.content import piece_contents, together
from entremetry.labels.emphasis import named, spans
from entremetry.labels.ingredient_list import IngredientList, ingredient_list, quantity_text
from entremetry.labels.naming import listed_name, made_of
from entremetry.labels.quantity_due import due_words, has_word
from entremetry.larder import Ingredient
from entremetry.store.larder_file import open_larder
from entremetry.usecases.batch import reckoned, surroundings

LARDER = open_larder()
DOCUMENT = """entremetry: 1
id: pot
name: {name}
keywords: [{keywords}]
pieces: 4
mould: glass-straight
ingredients: {own}
components:
  only:
    name: Only
    kind: mousse
    formula: {formula}
    method:
      - {{step: mix, left_behind: 0 %}}
placement:
  - {{component: only, as: layer, height: 30 mm}}
"""


def listed(
    formula: str, *, name: str = "Pot", keywords: str = "", own: str = "{}", rules: Rules = Rules.EU
) -> IngredientList:
    text = DOCUMENT.format(formula=formula, name=name, keywords=keywords, own=own)
    reckoning = reckoned(text, "pot.yaml", surroundings(None, "kitchen"))
    parts = piece_contents(reckoning)
    document = reckoning.dessert.document
    return ingredient_list(
        together("pot", "pot", parts),
        parts,
        name=document.name,
        keywords=document.keywords,
        rules=rules,
        larder=reckoning.dessert.larder,
    )


def printed(found: IngredientList, rules: Rules = Rules.EU) -> str:
    return list_text(found, rules, strong=str.upper)


def test_the_order_is_by_mass_and_sugar_is_sugar() -> None:
    found = listed("{granulated-sugar: 30 g, whole-milk: 100 g, caster-sugar: 80 g}")
    assert printed(found) == "Ingredients: sugar, whole MILK."
    assert found.entries[0].share == pytest.approx(110 / 210)


def test_a_compound_is_opened_and_its_allergens_are_named_in_it() -> None:
    found = listed("{couverture-milk-40: 100 g}")
    assert printed(found) == (
        "Ingredients: MILK chocolate (sugar, cocoa butter, cocoa mass, skimmed MILK powder, "
        "butter oil (MILK), emulsifier: lecithins (SOYA))."
    )


def test_a_compound_the_larder_cannot_open_asks_for_its_packet() -> None:
    found = listed("{speculoos: 100 g}")
    assert found.entries[0].unknown_parts
    assert found.notes == ("spiced caramel biscuits: add its own list of ingredients from the "
                           "packet.",)  # fmt: skip
    assert "WHEAT" in printed(found)


def test_the_words_of_a_packet_go_before_the_larder() -> None:
    own = (
        "{mine: {like: speculoos, label_name: caramel biscuits, "
        "contains: 'wheat flour, sugar, palm oil, soya flour'}}"
    )
    found = listed("{mine: 100 g}", own=own)
    assert printed(found) == (
        "Ingredients: caramel biscuits (WHEAT flour, sugar, palm oil, SOYA flour)."
    )
    assert not found.notes


def test_an_own_ingredient_without_a_name_is_called_as_what_it_is_like() -> None:
    own = "{rich: {like: cream-35, fat: 40 %}, flat: {like: water, density: 1 g/ml}}"
    found = listed("{rich: 60 g, raspberry: 30 g, flat: 10 g}", own=own)
    assert printed(found) == "Ingredients: cream (MILK), raspberries, water."
    named_own = own.replace("fat: 40 %", "fat: 40 %, name: Farm cream")
    assert printed(listed("{rich: 60 g}", own=named_own)) == "Ingredients: farm cream (MILK)."


def test_a_nut_and_a_cereal_are_emphasised_by_their_own_names() -> None:
    found = listed("{hazelnut-ground: 50 g, plain-flour: 40 g, oats: 30 g}")
    assert printed(found) == "Ingredients: ground HAZELNUTS, WHEAT flour, OATS."


def test_an_allergen_that_no_word_names_is_added_in_brackets() -> None:
    assert named("cream", {"milk"}) == "cream (milk)"
    assert named("buttermilk", {"milk"}) == "buttermilk (milk)"
    assert [(s.text, s.strong) for s in spans("cream (milk)", {"milk"})] == [
        ("cream (", False),
        ("milk", True),
        (")", False),
    ]


def test_what_is_no_allergen_is_never_emphasised() -> None:
    assert not any(span.strong for span in spans("coconut milk", set()))
    assert printed(listed("{coconut-milk: 100 g}")) == "Ingredients: coconut milk."


def test_the_quantity_of_what_the_name_names_is_given() -> None:
    found = listed("{raspberry-puree: 60 g, cream-35: 40 g}", name="Raspberry pot")
    assert printed(found) == (
        "Ingredients: raspberry purée 60 % (raspberries, sugar), cream (MILK)."
    )
    assert found.entries[0].quantity_because == "'raspberry' stands in the name"


def test_a_keyword_makes_a_quantity_due_as_well() -> None:
    (first, *_) = listed("{mango: 60 g, cream-35: 40 g}", keywords="mangoes").entries
    assert first.quantity == pytest.approx(0.6)


def test_a_little_flavouring_needs_no_quantity() -> None:
    found = listed("{whole-milk: 99 g, cinnamon: 1 g}", name="Cinnamon pot")
    assert [entry.quantity for entry in found.entries] == [None, None]


def test_america_asks_for_no_quantity_and_groups_what_is_little() -> None:
    found = listed("{raspberry-puree: 99 g, salt: 1 g}", name="Raspberry pot", rules=Rules.US)
    assert printed(found, Rules.US) == (
        "Ingredients: raspberry purée (raspberries, sugar). Contains 2% or less of: salt."
    )


def test_more_than_the_whole_is_given_in_grams() -> None:
    assert quantity_text(1.4) == "(140 g in 100 g)"
    assert quantity_text(0.123) == "12 %"
    assert quantity_text(0.0123) == "1.2 %"


def test_a_little_added_water_may_be_left_out_in_europe() -> None:
    assert printed(listed("{caster-sugar: 96 g, water: 4 g}")) == "Ingredients: sugar."
    assert printed(listed("{caster-sugar: 90 g, water: 10 g}")) == "Ingredients: sugar, water."
    american = listed("{caster-sugar: 96 g, water: 4 g}", rules=Rules.US)
    assert printed(american, Rules.US) == "Ingredients: sugar, water."


def test_words_are_compared_in_the_singular_and_without_accents() -> None:
    assert has_word("Raspberries, frozen", "raspberry")
    assert has_word("Crème fraîche", "creme")
    assert set(due_words("Pear and caramel log", ["almonds"])) == {"pear", "caramel", "almond"}


@pytest.mark.parametrize("ingredient", LARDER, ids=lambda ingredient: ingredient.id)
@pytest.mark.parametrize("rules", Rules)
def test_every_ingredient_has_a_name_without_a_percentage(
    ingredient: Ingredient, rules: Rules
) -> None:
    name, inner = listed_name(ingredient, rules), made_of(ingredient, rules, LARDER)
    assert name and name == name.strip()
    assert "%" not in name + inner
    assert name.count("(") == name.count(")")


@pytest.mark.parametrize("ingredient", LARDER, ids=lambda ingredient: ingredient.id)
def test_every_allergen_of_an_ingredient_is_emphasised(ingredient: Ingredient) -> None:
    codes = ingredient.allergens_eu
    inner = made_of(ingredient, Rules.EU, LARDER)
    name = listed_name(ingredient, Rules.EU)
    text = named(f"{name} ({inner})" if inner else name, codes)
    assert all(any(s.strong for s in spans(text, {code})) for code in codes)
