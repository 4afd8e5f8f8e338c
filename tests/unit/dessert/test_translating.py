"""An author's texts in another language replace texts only, and what does not fit is told."""

from __future__ import annotations

import pytest

from entremetry.dessert import read_dessert
from entremetry.dessert.document import DessertDocument
from entremetry.dessert.translating import (
    require_translations,
    texts,
    translated,
    untranslated,
    without_strangers,
)
from entremetry.errors import DocumentError
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import batch_of_text
from entremetry.words import speaking

PLUM = """entremetry: 1
id: plum-pot
name: Plum pot
about: >-
  Soft plums under
  cream.
pieces: 4
mould: {id: pot, name: Small pot, shape: {kind: cylinder, diameter: 60 mm, height: 60 mm},
  vessel: true}
ingredients:
  plum-jam: {like: apricot-jam, name: Aunt's plum jam}
components:
  plums:
    name: Plums
    kind: insert
    formula:
      jam: {ingredient: Aunt's plum jam, amount: 100 g, note: sieved}
      milk: {ingredient: whole-milk, amount: 50 g}
    method:
      - {step: cook-to, what: [milk], bowl: warm-milk, temperature: 60 °C, note: Stir.}
      - {step: mix, what: [jam, warm-milk]}
placement:
  - {component: plums, as: filling}
translations:
  fr:
    Plum pot: Pot aux prunes
    Soft plums under cream.: Prunes fondantes sous la crème.
    Plums: Prunes
    Aunt's plum jam: Confiture de prunes maison
    sieved: tamisée
    warm-milk: lait tiède
"""


def document(text: str = PLUM) -> DessertDocument:
    return read_dessert(text, file="plum.yaml")[0]


def test_texts_are_replaced_wherever_they_stand() -> None:
    told = translated(document(), "fr")
    assert (told.name, told.about) == ("Pot aux prunes", "Prunes fondantes sous la crème.")
    assert told.components["plums"].name == "Prunes"
    assert told.components["plums"].formula["jam"].note == "tamisée"
    assert told.ingredients["plum-jam"].name == "Confiture de prunes maison"


def test_ids_amounts_and_what_has_no_translation_stay() -> None:
    before, after = document(), translated(document(), "fr")
    assert (after.id, after.pieces, after.placement) == (before.id, before.pieces, before.placement)
    assert after.components["plums"].method == before.components["plums"].method
    assert after.mould == before.mould
    assert translated(before, "en") is before


def test_a_line_that_names_an_own_ingredient_finds_it_under_its_new_name() -> None:
    with speaking("fr"):
        (plums,) = batch_of_text(PLUM).components
    assert plums.lines[0].name == "Confiture de prunes maison"


def test_a_bowl_is_called_in_the_language_and_stays_a_reference() -> None:
    with speaking("fr"):
        (plums,) = batch_of_text(PLUM).components
    assert "lait tiède" in plums.method[1]
    assert "warm milk" in batch_of_text(PLUM).components[0].method[1]


def test_what_lacks_a_translation_is_told_before_and_after() -> None:
    missing = ("Small pot", "Stir.")
    assert untranslated(document(), "fr") == missing
    assert untranslated(translated(document(), "fr"), "fr") == missing
    assert untranslated(document(), "en") == ()


def test_a_key_that_the_document_does_not_say_is_refused_with_line_and_nearest_text() -> None:
    text = PLUM.replace("    sieved: tamisée", "    sievd: tamisée")
    with pytest.raises(DocumentError) as refused:
        batch_of_text(text, file="plum.yaml")
    line = text[: text.index("    sievd")].count("\n") + 1
    assert str(refused.value) == (
        f"plum.yaml, line {line}, translations.fr: found 'sievd', which the document says nowhere; "
        "accepted: a text of this document, as it is written there; did you mean sieved?"
    )


def test_a_language_there_is_none_of_is_refused_beside_all_else() -> None:
    text = PLUM.replace("  fr:\n", "  xx:\n    Plums: Pluma\n  fr:\n    Nothing: Rien\n")
    with pytest.raises(DocumentError) as refused:
        require_translations(*read_dessert(text, file="plum.yaml"), file="plum.yaml")
    first, second = refused.value.faults
    assert first.found == "the language 'xx'" and "en, fr" in first.accepted
    assert second.found.startswith("'Nothing'")


def test_translations_of_what_a_changed_document_no_longer_says_are_taken_out() -> None:
    text = PLUM.replace("name: Plum pot", "name: Plum glass")
    changed, gone = without_strangers(text, document(text))
    assert gone == ("Plum pot",)
    assert changed == text.replace("    Plum pot: Pot aux prunes\n", "")
    assert without_strangers(PLUM, document()) == (PLUM, ())


@pytest.mark.parametrize("name", sorted(demo_texts()))
def test_every_demo_dessert_is_all_in_french_and_weighs_the_same(name: str) -> None:
    text = demo_texts()[name]
    assert untranslated(document(text), "fr") == ()
    english = batch_of_text(text)
    with speaking("fr"):
        french = batch_of_text(text)
    for one, other in zip(english.components, french.components, strict=True):
        numbers = [
            (each.mass.value, each.density.value, each.volume.value) for each in (one, other)
        ]
        assert one.id == other.id
        assert numbers[0] == numbers[1]
        assert [(e.id, e.mass) for e in one.lines] == [(e.id, e.mass) for e in other.lines]
    bought = [{item.id: item.mass for item in sheet.shopping} for sheet in (english, french)]
    assert bought[0] == bought[1]
    assert not set(texts(document(text))) & {component.name for component in french.components}
