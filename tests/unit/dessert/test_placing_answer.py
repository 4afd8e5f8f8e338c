"""Answers about a place become entries of the placement."""

from __future__ import annotations

from typing import Any

import pytest

from entremetry.dessert.placing_answer import PLACES, SIZES, PlacingAnswer, placing_answer

MOULDS = {"hemisphere-40": {"kind": "hemisphere", "diameter": "40 mm"}}


@pytest.mark.parametrize(
    ("place", "size", "entry"),
    [
        ("filling", None, {}),
        ("layer", "12 mm", {"height": "12 mm"}),
        ("coating", "2 mm", {"film": "2 mm"}),
        ("garnish", "3 g", {"mass": "3 g"}),
        ("soak", "4 g", {"mass": "4 g"}),
        ("insert", "hemisphere-40", {"shape": MOULDS["hemisphere-40"]}),
        (
            "base",
            "60 mm × 5 mm",
            {"cut_out": {"kind": "disc", "diameter": "60 mm"}, "thickness": "5 mm"},
        ),
        (
            "base",
            "9 cm x 3 cm x 5 mm",
            {
                "cut_out": {"kind": "rectangle", "length": "9 cm", "width": "3 cm"},
                "thickness": "5 mm",
            },
        ),
    ],
)
def test_a_size_becomes_an_entry(place: str, size: str | None, entry: dict[str, Any]) -> None:
    found = placing_answer("x", place, size, MOULDS)
    assert isinstance(found, PlacingAnswer)
    assert found.entry == {"component": "x", "as": place, **entry}


@pytest.mark.parametrize(
    ("place", "size", "says"),
    [
        ("layer", None, "how high is the layer?"),
        ("layer", "12 g", "which is a mass"),
        ("insert", "hemisphere-41", "hemisphere-40"),
        ("base", "60 mm", "diameter × thickness"),
        ("base", "60 × 5", "say the unit"),
        ("garnish", "3 mm", "which is a length"),
    ],
)
def test_what_is_no_size_is_asked_again(place: str, size: str | None, says: str) -> None:
    found = placing_answer("x", place, size, MOULDS)
    assert isinstance(found, str) and says in found


@pytest.mark.parametrize("place", sorted(SIZES))
def test_every_example_answers_its_own_question(place: str) -> None:
    assert isinstance(placing_answer("x", place, SIZES[place].example, MOULDS), PlacingAnswer)


def test_every_place_but_the_filling_asks_for_a_size() -> None:
    assert {place for place, _ in PLACES} - set(SIZES) == {"filling"}
