"""Amounts say where they come from, and what nobody reports is never a nought."""

from __future__ import annotations

from dataclasses import replace

import pytest

from entremetry.labels.content import Content
from entremetry.labels.nutrition import amounts, fuel
from entremetry.labels.panel import eu_rows, us_rows
from entremetry.larder import Constituents, Ingredient, Nutrients

FATTY = Ingredient(
    id="spread",
    name="Nut spread",
    group="test",
    composition=Constituents(other_fat=0.4, sucrose=0.5, protein=0.05, ash=0.05),
    density=1000.0,
    source="from_memory",
    nutrients=Nutrients(trans_fat=0.0, cholesterol=0.0, vitamin_d=0.0, added_sugars=0.5),
    not_reported=frozenset({"sodium"}),
)
KNOWN = replace(
    FATTY,
    id="known",
    name="Known spread",
    nutrients=Nutrients(
        saturates=0.1,
        trans_fat=0.0,
        cholesterol=0.0,
        vitamin_d=0.0,
        added_sugars=0.5,
        calcium=0.001,
        iron=0.00001,
        potassium=0.004,
    ),
    not_reported=frozenset(),
    sodium=0.004,
)


def food(**masses: float) -> Content:
    by_id = {"spread": FATTY, "known": KNOWN}
    whole = Constituents()
    for name, mass in masses.items():
        whole = whole + by_id[name].composition * mass
    return Content(
        id="food",
        name="Food",
        mass=whole.total,
        constituents=whole,
        held=masses,
        ingredients={name: by_id[name] for name in masses},
    )


def test_a_blank_gives_a_span_with_its_reason() -> None:
    saturates = amounts(food(spread=0.05, known=0.05))["saturates"]
    assert saturates.known == pytest.approx(0.005)
    assert saturates.highest == pytest.approx(0.005 + 0.05 * 0.4)
    (missing,) = saturates.missing
    assert (missing.name, missing.share) == ("Nut spread", pytest.approx(0.5))


def test_a_declared_value_with_a_blank_is_a_span() -> None:
    rows = {row.key: row for row in eu_rows(food(spread=0.05, known=0.05), ())}
    assert str(rows["saturates_g"].declared_100g) == "5.0 to 25 g"
    assert str(rows["fat_g"].declared_100g) == "40 g"


def test_a_blank_too_small_to_show_changes_nothing() -> None:
    rows = {row.key: row for row in eu_rows(food(spread=0.0001, known=0.0999), ())}
    assert str(rows["saturates_g"].declared_100g) == "10 g"
    assert rows["saturates_g"].missing


def test_sodium_that_is_not_reported_is_at_most_the_ash() -> None:
    salt = {row.key: row for row in eu_rows(food(spread=0.1), ())}["salt_g"]
    assert salt.per_100g == 0.0
    assert salt.highest_100g == pytest.approx(2.5 * 5.0 * 22.990 / 58.443)
    assert salt.declared_100g.up_to is not None


def test_nothing_is_missing_where_all_is_reported() -> None:
    assert not any(amount.missing for amount in amounts(food(known=0.1)).values())


def test_a_figure_names_the_components_it_comes_from() -> None:
    one, other = replace(food(known=0.03), name="Heart"), replace(food(known=0.01), name="Coat")
    amount = amounts(food(known=0.04), (one, other))["fat"]
    assert amount.figure.because == "Heart 75%, Coat 25%"
    assert amount.figure.sources == ("from_memory",)


def test_daily_values_are_of_the_amount_before_rounding() -> None:
    rows = {row.key: row for row in us_rows(food(known=0.1), ())}
    assert rows["fat_g"].daily_value_percent == 51  # 40 of 78 g
    assert rows["iron_mg"].daily_value_percent == 6  # 1 of 18 mg: 5.6, in twos
    assert rows["trans_fat_g"].daily_value_percent is None


def test_a_daily_value_of_a_blank_is_a_span() -> None:
    rows = {row.key: row for row in us_rows(food(spread=0.1), ())}
    iron = rows["iron_mg"]  # none is known; a hundredth of 5 g of ash is 50 mg, of 18
    assert (iron.daily_value_percent, iron.daily_value_up_to_percent) == (0, 280)


def test_erythritol_gives_no_energy() -> None:
    sweet = replace(FATTY, id="erythritol", composition=Constituents(polyols=1.0))
    found = Content(
        id="x",
        name="X",
        mass=0.1,
        constituents=Constituents(polyols=0.15),
        held={"erythritol": 0.1},
        ingredients={"erythritol": sweet},
    )
    assert (fuel(found).erythritol, fuel(found).polyols) == pytest.approx((0.1, 0.05))


def test_energy_says_what_gives_it() -> None:
    (row, *_) = eu_rows(food(known=0.1), ())
    assert row.figure.because == "fixed factors; fat 61%, carbohydrate 35%, protein 4%"
    assert row.figure.sources == ("eu_1169_2011",)
