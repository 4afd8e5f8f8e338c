"""A saved page becomes plain lines; what is hostile in it is text, or is refused."""

from __future__ import annotations

import json
from typing import Any

import pytest

from entremetry.dessert.page_recipe import page_recipe, shown_text
from entremetry.documents.saved_page import DEEPEST, MOST_NODES, is_page
from entremetry.errors import DocumentError

RECIPE: dict[str, Any] = {
    "@context": "https://schema.org",
    "@type": "Recipe",
    "name": "Pebble of pear",
    "recipeYield": ["6", "6 pieces"],
    "totalTime": "PT5H30M",
    "recipeIngredient": ["240 g pear purée", "2 leaves gelatine"],
    "recipeInstructions": [
        {
            "@type": "HowToSection",
            "name": "Mousse",
            "itemListElement": [{"@type": "HowToStep", "text": "Soak the gelatine."}],
        },
        "Freeze overnight.",
    ],
}
TEXT = """Makes: 6 pieces
Total time: 5 h 30 min

240 g pear purée
2 leaves gelatine

Method:
Mousse:
Soak the gelatine.
Freeze overnight.
"""


def page(*documents: Any) -> str:
    """A page with these as JSON-LD."""
    scripts = (
        f'<script type="application/ld+json">{json.dumps(document)}</script>'
        for document in documents
    )
    return f"<!doctype html><html><head>{''.join(scripts)}</head><body><p>Hi</body></html>"


@pytest.mark.parametrize(
    "content",
    [
        json.dumps(RECIPE),
        json.dumps([{"@type": "WebPage"}, RECIPE]),
        page(RECIPE),
        page({"@graph": [{"@type": "WebSite"}, RECIPE]}),
        page({"@type": "WebPage", "mainEntity": RECIPE}),
        page(RECIPE | {"@type": ["Thing", "http://schema.org/Recipe"]}),
        page(RECIPE).replace("application/ld+json", "Application/LD+JSON; charset=utf-8"),
        "<script type='application/ld+json'>{broken</script>" + page(RECIPE),
    ],
)
def test_a_recipe_is_found_wherever_it_stands(content: str) -> None:
    assert is_page(content)
    found = page_recipe(content)
    assert (found.name, found.pieces, found.text) == ("Pebble of pear", 6, TEXT)


def test_microdata_are_read_where_there_is_no_json() -> None:
    found = page_recipe(
        """<html><div itemscope itemtype="https://schema.org/Recipe">
        <h1 itemprop="name">Pebble <b>of</b> pear</h1>
        <meta itemprop="recipeYield" content="6 pieces">
        <time itemprop="totalTime" datetime="PT5H30M">half a day</time>
        <li itemprop="recipeIngredient">240 g pear purée<li itemprop="recipeIngredient ingredients">
        2 leaves gelatine</li>
        <div itemprop="recipeInstructions" itemscope itemtype="https://schema.org/HowToSection">
        <i itemprop="name">Mousse</i><div itemprop="itemListElement" itemscope
        itemtype="https://schema.org/HowToStep"><p itemprop="text">Soak the gelatine.</p></div>
        </div>
        <p itemprop="recipeInstructions">Freeze overnight.</p></div>"""
    )
    assert (found.name, found.text) == ("Pebble of pear", TEXT)


def test_other_recipes_of_a_page_are_named() -> None:
    assert page_recipe(page(RECIPE, RECIPE | {"name": "Another"})).others == ("Another",)


@pytest.mark.parametrize(
    ("found", "shown"),
    [
        ("<script>alert(1)</script> 5 g salt", "alert(1) 5 g salt"),
        ("&lt;img src=x onerror=alert(1)&gt;5 g salt", "5 g salt"),
        ("5 g \u202esalt\u202c\u200b", "5 g salt"),
        ("5 g salt 🧂", "5 g salt 🧂"),
        ("first<br>second<p>third</p>", "first\nsecond third\n"),
        ("1 &frac12; cups, 3 < 4", "1 ½ cups, 3 < 4"),
        ("a\0b\x07c", "abc"),
    ],
)
def test_words_of_a_page_are_plain_text(found: str, shown: str) -> None:
    assert shown_text(found).strip() == shown.strip()


def deep(levels: int) -> Any:
    """A recipe under as many levels."""
    document: Any = RECIPE
    for _ in range(levels):
        document = {"mainEntity": document}
    return document


@pytest.mark.parametrize(
    ("content", "says"),
    [
        ("<html><p>nothing</html>", "no recipe"),
        ("", "no recipe"),
        (page({"@type": "Recipe", "name": "Empty"}), "without ingredients"),
        ("<script type='application/ld+json'>{broken</script>", "no JSON"),
        ('{"@type": "Recipe",', "no JSON"),
        (page(deep(DEEPEST)), "nested too deeply"),
        ("[" * 1_000_000, "nested too deeply"),
        ('{"a":' * 200_000, "nested too deeply"),
        ("[" + "{}," * MOST_NODES + "{}]", "more than 20000 objects"),
        (
            "<div itemscope>" + "<i itemprop=a>1</i>" * (MOST_NODES + 2),
            "more than 20000 properties",
        ),
        ("<p>" + "x" * 5_000_001, "5000004 characters"),
        (json.dumps(RECIPE | {"recipeIngredient": ["1 g salt"] * 700}), "708 lines"),
        ('{"@type": "Recipe", "recipeYield": ' + "9" * 5000 + "}", "no JSON"),
    ],
)
def test_what_is_no_recipe_or_too_much_is_refused(content: str, says: str) -> None:
    with pytest.raises(DocumentError, match=says):
        page_recipe(content)


@pytest.mark.parametrize(
    "noise",
    [
        "<div>" * 400_000,
        "<!--" * 400_000,
        "<![CDATA[" * 200_000,
        "<" * 1_000_000,
        "<a " + "b=c " * 300_000 + ">",
        '<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]>' + "&b;" * 100_000,
    ],
    ids=["deep", "comments", "cdata", "open tags", "attributes", "entities"],
)
def test_noise_around_a_recipe_does_no_harm(noise: str) -> None:
    assert page_recipe(page(RECIPE) + noise).text == TEXT


def test_a_property_with_a_whole_page_inside_is_cut_with_an_ellipsis() -> None:
    inner = "<i>x</i>" * 3000
    found = page_recipe(
        "<html><div itemscope itemtype='https://schema.org/Recipe'>"
        f"<p itemprop='recipeIngredient'>{inner}</p></div>"
    )
    assert found.text.strip().endswith("…")
