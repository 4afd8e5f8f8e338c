"""Allergens are declared for each jurisdiction by its own list."""

from __future__ import annotations

import pytest

from entremetry.errors import UnknownName
from entremetry.larder import EU_CODES, US_CODES, declared


def test_one_ingredient_is_declared_differently_on_both_sides() -> None:
    eu, us = declared(["wheat", "egg", "almond"])
    assert eu == {"gluten:wheat", "eggs", "nuts:almond"}
    assert us == {"wheat", "egg", "tree-nuts:almond"}


@pytest.mark.parametrize("word", ["rye", "barley", "oats", "celery", "mustard", "lupin"])
def test_some_are_declared_in_europe_only(word: str) -> None:
    eu, us = declared([word])
    assert len(eu) == 1
    assert not us


def test_pine_nut_is_a_tree_nut_in_america_only() -> None:
    assert declared(["pine-nut"]) == (frozenset(), {"tree-nuts:pine-nut"})


def test_the_european_list_has_fourteen_heads() -> None:
    assert {code.partition(":")[0] for code in EU_CODES} == {
        "gluten",
        "crustaceans",
        "eggs",
        "fish",
        "peanuts",
        "soybeans",
        "milk",
        "nuts",
        "celery",
        "mustard",
        "sesame",
        "sulphites",
        "lupin",
        "molluscs",
    }


def test_the_european_nuts_are_the_eight_of_the_annex() -> None:
    nuts = {code.partition(":")[2] for code in EU_CODES if code.startswith("nuts:")}
    assert nuts == {
        "almond",
        "hazelnut",
        "walnut",
        "cashew",
        "pecan",
        "brazil",
        "pistachio",
        "macadamia",
    }


def test_the_american_list_has_nine_heads() -> None:
    assert {code.partition(":")[0] for code in US_CODES} == {
        "milk",
        "egg",
        "fish",
        "crustacean-shellfish",
        "tree-nuts",
        "peanuts",
        "wheat",
        "soybeans",
        "sesame",
    }


def test_a_word_that_is_no_allergen_is_refused_with_the_nearest() -> None:
    with pytest.raises(UnknownName, match="hazelnut"):
        declared(["hazelnuts"])
