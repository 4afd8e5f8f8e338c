from __future__ import annotations

import json
from dataclasses import replace
from datetime import date

import pytest

from entremetry.publish import recipe_json_ld
from entremetry.publish.json_ld import duration, recipe_yield, script_text
from entremetry.words import speaking
from unit.publish.sheets import SHEET, hostile


@pytest.mark.parametrize(
    ("seconds", "text"),
    [(0, "PT0S"), (59.6, "PT1M"), (5400, "PT1H30M"), (129_600, "PT36H"), (3661, "PT1H1M1S")],
)
def test_durations_are_exact_hours_minutes_and_seconds(seconds: float, text: str) -> None:
    assert duration(seconds) == text


def test_what_is_not_known_is_left_out() -> None:
    recipe = recipe_json_ld(replace(SHEET, author="", about="", time=0.0, hands_on=0.0), image="")
    gone = {"author", "description", "image", "totalTime", "prepTime", "cookTime", "nutrition"}
    assert gone.isdisjoint(recipe)
    assert gone.isdisjoint({"keywords", "datePublished"} & set(recipe))


def test_every_line_is_an_ingredient_with_grams_first() -> None:
    texts = recipe_json_ld(SHEET)["recipeIngredient"]
    assert len(texts) == sum(len(c.lines) for c in SHEET.components)
    assert "190 g Blackcurrant purée (3/4 cup), for Blackcurrant mousse" in texts


def test_work_stands_in_sections_in_its_order() -> None:
    sections = recipe_json_ld(SHEET)["recipeInstructions"]
    assert [s["name"] for s in sections] == [
        "Vanilla cream insert",
        "Hazelnut shortcrust",
        "Blackcurrant mousse",
        "Mirror glaze",
        "Fill the mould",
        "Put together",
    ]
    assert [s["position"] for s in sections] == [1, 2, 3, 4, 5, 6]
    assert all(s["itemListElement"] for s in sections)


def test_fill_steps_told_in_the_assembly_are_not_told_twice() -> None:
    filling = tuple(step.text for step in SHEET.fill_steps)
    sheet = replace(SHEET, assembly=(*filling, *SHEET.assembly))
    names = [s["name"] for s in recipe_json_ld(sheet)["recipeInstructions"]]
    assert "Fill the mould" not in names


def test_yield_names_people_where_a_piece_serves_several() -> None:
    assert recipe_yield(SHEET) == "6 pieces"
    assert recipe_yield(replace(SHEET, pieces=1, serves=8)) == "1 piece, 8 servings"


def test_script_text_cannot_close_its_element_and_says_the_same() -> None:
    recipe = recipe_json_ld(hostile(), date_published=date(2026, 1, 2), keywords=["<b>"])
    text = script_text(recipe)
    assert "<" not in text and "\u2028" not in text
    assert "\\u003c/script" in text
    assert json.loads(text) == recipe


def test_the_language_is_told_and_followed() -> None:
    assert recipe_json_ld(SHEET)["inLanguage"] == "en-GB"
    with speaking("fr"):
        recipe = recipe_json_ld(SHEET)
    assert recipe["inLanguage"] == "fr"
    assert recipe["recipeYield"] == "6 pièces"
    assert (
        "190 g Blackcurrant purée (3/4 cup), pour Blackcurrant mousse"
        in (recipe["recipeIngredient"])
    )
