"""The page's own words: all of them said, none left in a template or in the script."""

from __future__ import annotations

import re

import pytest

from entremetry.publish.page_words import filled, page_words, spoken, spoken_count
from entremetry.publish.recipe_page import stylesheet
from entremetry.words import languages, speaking

TEMPLATES = ("recipe_page.html", "reader_form.html")


@pytest.mark.parametrize("name", TEMPLATES)
def test_a_template_has_no_words_of_its_own(name: str) -> None:
    text = re.sub(r"\{#.*?#\}|\{%.*?%\}|\{\{.*?\}\}", " ", stylesheet(name), flags=re.DOTALL)
    text = re.sub(r"<(style|script)\b.*?</\1>|<[^>]*>", " ", text, flags=re.DOTALL)
    text = re.sub(r'\b(type|inputmode|min|max|step)="[^"]*"', " ", text)
    assert re.findall(r"[A-Za-z]+", text) == []


@pytest.mark.parametrize("code", languages())
def test_the_script_says_what_the_table_has_and_nothing_else(code: str) -> None:
    script = stylesheet("reader.js")
    with speaking(code):
        table = page_words()["say"]
    said = set(re.findall(r'say\("(\w+)"', script))
    said |= set(re.findall(r'\["(?:freeze|thaw)", "(\w+)"\]', script))
    said |= set(re.findall(r'\? "(piece)" : "(pieces)"', script)[0])
    said |= {f"bad_{size}" for size in ("diameter", "base", "length", "width", "height")}
    assert said == set(table)


def test_the_script_has_no_sentence_of_its_own() -> None:
    script = re.sub(r"/\*.*?\*/", "", stylesheet("reader.js"), flags=re.DOTALL)
    texts = re.findall(r'"([^"\n]*)"|`([^`]*)`', script)
    sentences = [a or b for a, b in texts if re.search(r"[a-z]{2,} [a-z]{2,}", a or b)]
    assert sentences == ["use strict", "compact box", "slender box"]


@pytest.mark.parametrize("code", languages())
def test_fields_of_the_script_are_those_it_fills_in(code: str) -> None:
    with speaking(code):
        table = page_words()["say"]
    fields = {key: set(re.findall(r"\{(\w+)\}", text)) for key, text in table.items()}
    assert fields["pieces"] == fields["piece"] == {"number"}
    assert fields["sized"] == {"shape", "sizes"}
    assert fields["cavities"] == {"number", "mould"}
    assert not any(found for key, found in fields.items() if key.startswith("bad_"))


def test_a_message_is_set_with_the_signs_of_its_language() -> None:
    with speaking("fr"):
        assert spoken("Half-sphere") == "Demi-sphère"
        assert spoken_count("{number} piece", "{number} pieces", 12) == "12\u00a0pièces"
        assert "\u202f;" in spoken("{cavities}; the masses are for one.", cavities="6 empreintes")
        signs = page_words()["signs"]
    assert signs == {"decimal": ",", "group": "\u202f"}
    assert spoken("{cavities}; the masses are for one.", cavities=6) == (
        "6; the masses are for one."
    )


def test_a_field_of_markup_stays_markup_and_the_message_is_escaped() -> None:
    from markupsafe import Markup

    assert filled("a < {mass}", mass=Markup("<b>1 g</b>")) == "a &lt; <b>1 g</b>"
