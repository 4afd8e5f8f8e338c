"""Names of ingredients of a batch sheet in the language that is spoken."""

from __future__ import annotations

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.usecases.batch import batch_of_text
from entremetry.words import speaking

DOCUMENT = """entremetry: 1
id: pot
name: Pot
pieces: 4
mould: glass-straight
ingredients:
  farm-cream: {like: cream-35, name: Farm cream}
components:
  only:
    name: Only
    kind: mousse
    formula: {farm-cream: 60 g, raspberry-puree: 40 g, gelatine-sheet-gold: 2 g}
    method:
      - {step: mix, left_behind: 0 %}
placement:
  - {component: only, as: layer, height: 30 mm}
"""


def sheet(code: str) -> BatchSheet:
    with speaking(code):
        return batch_of_text(DOCUMENT)


def test_lines_and_shopping_have_the_names_of_the_language() -> None:
    french = sheet("fr")
    assert [line.name for line in french.components[0].lines][:3] == [
        "Farm cream",
        "Purée de framboise 10 % de sucre",
        "Feuille de gélatine or 200 Bloom",
    ]
    assert "Purée de framboise 10 % de sucre" in [bought.name for bought in french.shopping]
    assert "Farm cream" in [bought.name for bought in french.shopping]


def test_a_language_changes_no_number() -> None:
    english, french = sheet("en"), sheet("fr")
    assert [line.mass for line in english.components[0].lines] == [
        line.mass for line in french.components[0].lines
    ]
    assert "Raspberry purée 10 % sugar" in [bought.name for bought in english.shopping]
