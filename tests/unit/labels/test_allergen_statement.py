"""Allergens of what is in a piece, and of what has only been in it."""

from __future__ import annotations

import pytest

from entremetry.labels import Rules
from entremetry.labels.allergen_statement import allergens, allergens_of, contains_statement
from entremetry.labels.content import Content
from entremetry.larder.constituents import Constituents
from entremetry.store.larder_file import open_larder

LARDER = open_larder()


def test_what_was_strained_out_keeps_its_allergen() -> None:
    cream, hazelnut = LARDER.find("cream-35"), LARDER.find("hazelnut-roasted")
    piece = Content(
        id="piece",
        name="Piece",
        mass=0.1,
        constituents=Constituents(),
        held={cream.id: 0.1},
        taken_out={hazelnut.id: 0.02},
        ingredients={cream.id: cream, hazelnut.id: hazelnut},
    )
    found = {entry.word: entry.because for entry in allergens(piece, Rules.EU)}
    assert found == {"milk": ("Cream 35 %",), "hazelnut": ("Roasted hazelnuts",)}


def test_nothing_is_said_to_be_contained_where_there_is_nothing() -> None:
    assert contains_statement(allergens_of([LARDER.find("raspberry")], Rules.US)) == ""


@pytest.mark.parametrize(("rules", "word"), [(Rules.EU, "soya"), (Rules.US, "soy")])
def test_soya_is_spelled_as_the_reader_does(rules: Rules, word: str) -> None:
    (entry,) = allergens_of([LARDER.find("soya-lecithin")], rules)
    assert entry.word == word


def test_what_only_one_list_knows_is_on_that_one() -> None:
    celery, pine = LARDER.find("celery"), LARDER.find("pine-nut")
    assert [e.word for e in allergens_of([celery, pine], Rules.EU)] == ["celery"]
    assert [e.word for e in allergens_of([celery, pine], Rules.US)] == ["pine nut"]
