"""Another reader of structured data finds in a page what we find (schema_org_30)."""

from __future__ import annotations

import json
from typing import Any

import extruct
import pytest

from entremetry.documents.saved_page import typed_nodes

JSON_LD = {
    "@context": "https://schema.org",
    "@graph": [
        {"@type": "WebSite", "name": "A kitchen"},
        {
            "@type": "Recipe",
            "name": "Pebble of pear & rye",
            "recipeYield": "6 pieces",
            "prepTime": "PT1H",
            "recipeIngredient": ["240 g pear purée", "2 leaves gelatine", "½ tsp salt"],
            "recipeInstructions": [
                {
                    "@type": "HowToSection",
                    "name": "Mousse",
                    "itemListElement": [{"@type": "HowToStep", "text": "Soak the gelatine."}],
                }
            ],
        },
    ],
}
SCRIPT = f'<script type="application/ld+json">{json.dumps(JSON_LD)}</script>'
MICRODATA = """
<article itemscope itemtype="https://schema.org/Recipe">
  <h1 itemprop="name">Pebble of pear &amp; rye</h1>
  <span itemprop="recipeYield">6 pieces</span>
  <ul><li itemprop="recipeIngredient">240 g pear <b>purée</b></li>
  <li itemprop="recipeIngredient">2 leaves gelatine</li></ul>
  <meta itemprop="prepTime" content="PT1H">
  <div itemprop="recipeInstructions" itemscope itemtype="https://schema.org/HowToStep">
  <p itemprop="text">Soak the gelatine.</p></div>
</article>"""


def page(body: str) -> str:
    """A page around a body."""
    return f"<!doctype html><html><head><title>P</title></head><body>{body}</body></html>"


@pytest.mark.parametrize("body", [SCRIPT, f"<!-- {SCRIPT} -->{SCRIPT}<p>{MICRODATA}</p>"])
def test_json_ld_is_what_the_other_reader_finds(body: str) -> None:
    found = typed_nodes(page(body), wanted="Recipe", file="page")
    other = extruct.extract(page(body), base_url="https://example.org/", syntaxes=["json-ld"])
    graphs = [node for document in other["json-ld"] for node in document["@graph"]]
    assert list(found) == [node for node in graphs if node["@type"] == "Recipe"]


def test_microdata_are_what_the_other_reader_finds() -> None:
    (found,) = typed_nodes(page(MICRODATA), wanted="Recipe", file="page")
    other = extruct.extract(
        page(MICRODATA), base_url="https://example.org/", syntaxes=["microdata"]
    )
    (expected,) = other["microdata"]
    assert flat(found) == {name: flat(value) for name, value in expected["properties"].items()}


def flat(value: Any) -> Any:
    """Properties without types, a list of one as the one."""
    if isinstance(value, dict):
        inner = value.get("properties", value)
        return {name: flat(each) for name, each in inner.items() if not name.startswith("@")}
    if isinstance(value, list):
        return flat(value[0]) if len(value) == 1 else [flat(each) for each in value]
    return value
