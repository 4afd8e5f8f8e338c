"""Laws of labels: shares add up, energy is consistent, rounding never turns an order round."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from entremetry.documents.tree import Tree
from entremetry.labels import Rules, batch_cost, eu_rounding, label, us_rounding
from entremetry.labels.content import Content, piece_contents, together
from entremetry.labels.declared import Declared
from entremetry.labels.energy import Fuel, eu_kilocalories, eu_kilojoules
from entremetry.labels.nutrition import amounts, fuel
from entremetry.labels.panel import eu_rows, us_rows
from entremetry.labels.price_document import PriceDocument
from entremetry.labels.pricing import priced
from properties.strategies_dessert import case_of, texts
from properties.strategies_labels import amounts_on_labels, foods, fuels, price_documents
from small_larder import SMALL_LARDER

ROUNDINGS: tuple[Callable[[float], Declared], ...] = (
    eu_rounding.macronutrient,
    eu_rounding.fatty_acids,
    eu_rounding.salt,
    us_rounding.calories,
    us_rounding.fat,
    us_rounding.cholesterol,
    us_rounding.sodium,
    us_rounding.carbohydrate,
    us_rounding.iron,
    us_rounding.calcium_or_potassium,
)


def size(declared: Declared) -> Decimal:
    """A declared value as a number to compare; 'less than' is a hair below."""
    return declared.number - (Decimal("0.001") if declared.less_than else 0)


@given(st.sampled_from(ROUNDINGS), amounts_on_labels, amounts_on_labels)
def test_rounding_keeps_the_order(
    rounding: Callable[[float], Declared], one: float, other: float
) -> None:
    low, high = sorted((one, other))
    assert size(rounding(low)) <= size(rounding(high))


@given(st.sampled_from(ROUNDINGS), amounts_on_labels)
def test_what_is_rounded_twice_is_rounded_once(
    rounding: Callable[[float], Declared], value: float
) -> None:
    once = rounding(value)
    if not once.less_than:
        assert rounding(float(once.number)).number == once.number


@given(foods(), foods())
def test_the_parts_of_a_food_make_up_the_whole(one: Content, other: Content) -> None:
    whole = amounts(together("both", "Both", [one, other]))
    first, second = amounts(one), amounts(other)
    for name, amount in whole.items():
        assert amount.known == pytest.approx(first[name].known + second[name].known, abs=1e-12)
        assert amount.highest == pytest.approx(
            first[name].highest + second[name].highest, abs=1e-12
        )


@given(foods())
def test_a_span_is_never_turned_round_and_an_unknown_is_never_silent(food: Content) -> None:
    for amount in amounts(food).values():
        assert amount.highest >= amount.known - 1e-15
        assert amount.missing or amount.highest == pytest.approx(amount.known, abs=1e-12)


@given(foods(), st.floats(min_value=0.1, max_value=10.0))
def test_a_hundred_grams_do_not_depend_on_the_size_of_the_piece(
    food: Content, factor: float
) -> None:
    for rows in (eu_rows, us_rows):
        for one, other in zip(rows(food, ()), rows(food.times(factor), ()), strict=True):
            assert one.per_100g == pytest.approx(other.per_100g, rel=1e-9, abs=1e-12)
            assert other.per_serving == pytest.approx(one.per_serving * factor, rel=1e-9, abs=1e-12)


@given(foods())
def test_parts_of_a_row_are_no_more_than_the_row(food: Content) -> None:
    rows = {row.key: row.per_100g for row in eu_rows(food, ())}
    assert rows["sugars_g"] <= rows["carbohydrate_g"] + 1e-9
    american = {row.key: row.per_100g for row in us_rows(food, ())}
    assert american["fibre_g"] + american["sugars_g"] <= american["carbohydrate_g"] + 1e-9


@given(fuels)
def test_kilojoules_and_kilocalories_agree_as_their_factors_do(fuel: Fuel) -> None:
    """The factors of one nutrient lie from 4.0 (fibre) to 4.33 kJ/kcal (acids) apart."""
    kilojoules, kilocalories = eu_kilojoules(fuel), eu_kilocalories(fuel)
    assert 4.0 * kilocalories - 1e-6 <= kilojoules <= 4.34 * kilocalories + 1e-6


@given(foods())
def test_energy_is_no_more_than_that_of_fat(food: Content) -> None:
    assert 0.0 <= eu_kilojoules(fuel(food)) <= 37.0 * 1e3 * food.mass * (1.0 + 1e-9)


@settings(max_examples=30)
@given(texts)
def test_the_components_make_up_the_piece(text: str) -> None:
    reckoning = case_of(text).reckoning
    parts = piece_contents(reckoning)
    piece = together("piece", "Piece", parts)
    for name, amount in amounts(piece).items():
        shares = [amounts(part)[name].known for part in parts]
        assert amount.known == pytest.approx(sum(shares), rel=1e-9, abs=1e-15)
    assert piece.added_water <= piece.water + 1e-15


@settings(max_examples=30)
@given(texts, st.sampled_from(list(Rules)))
def test_every_ingredient_of_a_piece_is_listed_once(text: str, rules: Rules) -> None:
    reckoning = case_of(text).reckoning
    found = label(reckoning, pieces=1, rules=rules)
    listed = [i for entry in found.ingredients.entries for i in entry.ids if i != "water"]
    piece = together("piece", "Piece", piece_contents(reckoning))
    assert sorted(listed) == sorted({*piece.held, *piece.taken_out})
    masses = [e.mass for e in found.ingredients.entries if not e.taken_out]
    assert masses == sorted(masses, reverse=True)
    assert sum(part.share for part in found.parts) == pytest.approx(1.0)


@settings(max_examples=30)
@given(texts, price_documents(), st.integers(1, 40))
def test_all_that_is_paid_is_somewhere(text: str, written: dict[str, Any], pieces: int) -> None:
    reckoning = case_of(text).reckoning
    document = PriceDocument.model_validate(written)
    tree = Tree(data=written, lines={})
    prices = priced(document, SMALL_LARDER, measures="us", tree=tree, file="prices.yaml")
    cost = batch_cost(reckoning, pieces, prices, document)
    waste = cost.waste
    parts = (waste.in_pieces, waste.left_behind, waste.spare, waste.taken_out)
    assert sum(parts) == pytest.approx(cost.ingredients_total, rel=1e-9, abs=1e-9)
    assert all(part >= 0.0 for part in parts)
    of_components = sum(each.cost for each in cost.components)
    assert of_components == pytest.approx(cost.ingredients_total, rel=1e-9, abs=1e-9)
    assert cost.whole_packs_total >= cost.ingredients_total - 1e-9
    assert sum(driver.cost for driver in cost.drivers) == pytest.approx(cost.total, abs=1e-9)
    priced_ids = {each.id for each in cost.ingredients if each.cost is not None}
    assert priced_ids <= set(prices)
