"""Ingredients looked up by their names in the language that is spoken."""

from __future__ import annotations

import pytest

from entremetry.larder.spoken_look_up import spoken_alike, spoken_ingredient
from entremetry.store.larder_file import open_larder
from entremetry.words import speaking

LARDER = open_larder()


@pytest.mark.parametrize(
    ("name", "found"),
    [
        ("purée de cassis non sucrée", "blackcurrant-puree-unsweetened"),
        ("PUREE DE CASSIS NON SUCREE", "blackcurrant-puree-unsweetened"),
        ("Purée d'abricot non sucrée", "apricot-puree-unsweetened"),
        ("purée de cassis", None),
        ("", None),
    ],
)
def test_only_a_whole_name_is_taken(name: str, found: str | None) -> None:
    with speaking("fr"):
        ingredient = spoken_ingredient(name, LARDER)
    assert (ingredient.id if ingredient else None) == found


def test_what_has_all_the_words_is_offered_the_shortest_first() -> None:
    with speaking("fr"):
        found = [each.id for each in spoken_alike("purée de cassis", LARDER)]
    assert sorted(found) == ["blackcurrant-puree", "blackcurrant-puree-unsweetened"]


def test_no_more_is_offered_than_can_be_looked_over() -> None:
    with speaking("fr"):
        assert len(spoken_alike("de", LARDER, most=4)) == 4


def test_english_names_are_the_larders_own() -> None:
    assert spoken_ingredient("purée de cassis non sucrée", LARDER) is None
    assert spoken_alike("purée", LARDER) == ()
