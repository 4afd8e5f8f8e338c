"""A language that has a catalogue and no rules of its own for the words of a list."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from entremetry.cli.label_view import as_text, list_text
from entremetry.labels.emphasis import named, spans
from entremetry.usecases.labelling import label_of_text
from entremetry.words import catalogue, language, speaking

CATALOGUE = """msgid ""
msgstr ""
"Content-Type: text/plain; charset=utf-8\\n"
"Language: de\\n"
"Plural-Forms: nplurals=2; plural=(n != 1);\\n"

msgid "Ingredients"
msgstr "Zutaten"

msgid "Fat"
msgstr "Fett"

msgctxt "ingredient"
msgid "Raspberry purée 10 % sugar"
msgstr "Himbeermark 10 %"

msgctxt "ingredient"
msgid "Raspberries"
msgstr "Himbeeren"

msgctxt "ingredient"
msgid "Roasted hazelnuts"
msgstr "Geröstete Haselnüsse"

msgctxt "list"
msgid "cream"
msgstr "Sahne"

msgctxt "list"
msgid "whole milk"
msgstr "Vollmilch"

msgctxt "list"
msgid "wheat flour"
msgstr "Mehl aus Weizen"

msgctxt "allergen"
msgid "milk"
msgstr "Milch"

msgctxt "allergen"
msgid "wheat"
msgstr "Weizen"

msgctxt "allergen"
msgid "hazelnut"
msgstr "Haselnuss"
"""
DOCUMENT = """entremetry: 1
id: pot
name: Raspberry pot
pieces: 4
mould: glass-straight
components:
  only:
    name: Only
    kind: mousse
    formula:
      {cream-35: 50 g, raspberry-puree: 30 g, hazelnut-roasted: 20 g, plain-flour: 15 g,
       whole-milk: 10 g, almond-ground: 5 g}
    method:
      - {step: mix, left_behind: 0 %}
placement:
  - {component: only, as: layer, height: 30 mm}
"""


@pytest.fixture
def german(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    folder = tmp_path / "catalogues"
    folder.mkdir()
    (folder / "de.po").write_text(CATALOGUE, encoding="utf-8")
    monkeypatch.setattr(catalogue, "files", lambda _: tmp_path)
    catalogue.codes.cache_clear()
    with speaking("de"):
        yield
    catalogue.codes.cache_clear()
    language.cache_clear()


@pytest.mark.usefixtures("german")
def test_an_allergen_is_named_in_brackets_by_the_word_of_the_catalogue() -> None:
    label = label_of_text(DOCUMENT)
    printed = list_text(label.ingredients, label.rules, strong=str.upper)
    assert printed == (
        "Zutaten: Sahne (MILCH), Himbeermark 23 % (Himbeeren, sugar), "
        "Geröstete Haselnüsse (HASELNUSS), Mehl aus WEIZEN, Vollmilch (MILCH), "
        "ground almonds (ALMOND)."
    )
    assert "Fett" in as_text(label)


@pytest.mark.usefixtures("german")
def test_what_has_no_word_in_the_catalogue_is_still_emphasised() -> None:
    assert named("Sesam", {"sesame"}) == "Sesam (sesame)"
    assert [span.strong for span in spans("Sesam (sesame)", {"sesame"})] == [False, True, False]
