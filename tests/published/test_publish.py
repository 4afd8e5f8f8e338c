"""The page's structured data, read back by parsers we did not write."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

import extruct
import html5lib
import isodate
import pytest
from pyld import jsonld

from entremetry.publish import recipe_page
from entremetry.store.demo import demo_texts
from entremetry.usecases.publishing import page_of_text
from unit.publish.sheets import HOSTILE, SHEET, hostile

# schema.org release 30.0: properties of each type used here and what each may hold.
TYPES: dict[str, dict[str, type | tuple[type, ...]]] = {
    "Recipe": {
        "name": str,
        "inLanguage": str,
        "description": str,
        "image": list,
        "author": dict,
        "datePublished": str,
        "keywords": str,
        "recipeCategory": str,
        "recipeYield": str,
        "prepTime": str,
        "totalTime": str,
        "recipeIngredient": list,
        "recipeInstructions": list,
    },
    "Person": {"name": str},
    "HowToSection": {"name": str, "position": int, "itemListElement": list},
    "HowToStep": {"text": str, "position": int},
}
SCHEMA = "https://schema.org/"


def loader(url: str, options: dict[str, Any]) -> dict[str, Any]:
    """The one context we name, from here: no network in tests."""
    assert url.rstrip("/") == SCHEMA.rstrip("/")
    context = {"@vocab": SCHEMA, "image": {"@id": f"{SCHEMA}image", "@type": "@id"}}
    return {
        "contentType": "application/ld+json",
        "contextUrl": None,
        "documentUrl": url,
        "document": {"@context": context},
    }


def recipes(page: str) -> list[dict[str, Any]]:
    found = extruct.extract(page, base_url="https://example.org/dome/", syntaxes=["json-ld"])
    return [item for item in found["json-ld"] if item.get("@type") == "Recipe"]


@pytest.fixture
def recipe() -> dict[str, Any]:
    page = recipe_page(SHEET, date_published=date(2026, 11, 25), keywords=("dome", "blackcurrant"))
    (only,) = recipes(page)
    return only


def nodes(value: Any) -> list[dict[str, Any]]:
    if isinstance(value, dict):
        return [value, *(node for child in value.values() for node in nodes(child))]
    return [node for child in value for node in nodes(child)] if isinstance(value, list) else []


def test_every_property_belongs_to_its_type_and_holds_what_it_may(recipe: dict[str, Any]) -> None:
    found = nodes(recipe)
    assert {node["@type"] for node in found} == set(TYPES)
    for node in found:
        for key, value in node.items():
            if not key.startswith("@"):
                assert isinstance(value, TYPES[node["@type"]][key]), key


def test_what_search_engines_require_is_there(recipe: dict[str, Any]) -> None:
    assert recipe["name"] == SHEET.name
    assert recipe["image"] == ["section.svg"]
    assert all(isinstance(line, str) and line for line in recipe["recipeIngredient"])
    steps = [s for part in recipe["recipeInstructions"] for s in part["itemListElement"]]
    assert all(step["@type"] == "HowToStep" and step["text"] for step in steps)


def test_a_duration_reader_finds_the_times_of_the_sheet(recipe: dict[str, Any]) -> None:
    assert isodate.parse_duration(recipe["totalTime"]) == timedelta(seconds=SHEET.time)
    assert isodate.parse_duration(recipe["prepTime"]) == timedelta(seconds=SHEET.hands_on)
    assert isodate.parse_date(recipe["datePublished"]) == date(2026, 11, 25)


def test_a_linked_data_processor_loses_nothing(recipe: dict[str, Any]) -> None:
    (expanded,) = jsonld.expand(
        recipe, {"documentLoader": loader, "base": "https://example.org/dome/"}
    )
    assert expanded["@type"] == [f"{SCHEMA}Recipe"]
    assert {key for key in expanded if key.startswith(SCHEMA)} == {
        SCHEMA + key for key in recipe if not key.startswith("@")
    }
    assert expanded[f"{SCHEMA}image"] == [{"@id": "https://example.org/dome/section.svg"}]
    ingredients = [value["@value"] for value in expanded[f"{SCHEMA}recipeIngredient"]]
    assert ingredients == recipe["recipeIngredient"]


def test_hostile_text_comes_back_as_it_was_written() -> None:
    sheet = hostile()
    (recipe,) = recipes(recipe_page(sheet))
    assert recipe["name"] == sheet.name.replace("\x07", "")


def test_a_page_with_its_reader_is_valid_html_and_holds_one_recipe() -> None:
    text = demo_texts()["mango-coconut-lime-glass"].partition("\ntranslations:")[0]
    name = HOSTILE.replace("\x07", "").replace("\\", "").replace('"', "'").replace("'", "''")
    page = page_of_text(text.replace("name: Mango, coconut and lime in a glass", f"name: '{name}'"))
    tree = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
    assert [s.get("type") for s in tree.iter("script")] == [
        "application/ld+json",
        "application/json",
        None,
    ]
    assert not list(tree.iter("img"))
    (recipe,) = recipes(page)
    assert recipe["name"].startswith("</script><script>alert(1)")
