"""Ingredients are found by id, by name, by alias and by words."""

from __future__ import annotations

import pytest

from entremetry.errors import QuantityError, UnknownName
from entremetry.store.larder_file import open_larder
from entremetry.usecases.larder import look_up, search
from entremetry.words import speaking
from small_larder import SMALL_LARDER


@pytest.mark.parametrize("words", ["cream-35", "cream 35", "CREAM-35"])
def test_one_is_found_by_id_and_name(words: str) -> None:
    assert [found.id for found in look_up(words, SMALL_LARDER)] == ["cream-35"]


def test_all_that_hold_the_words_are_found() -> None:
    assert {found.id for found in search("sugar", SMALL_LARDER)} == {"caster-sugar"}
    assert {found.id for found in look_up("test", SMALL_LARDER)} == {i.id for i in SMALL_LARDER}


def test_words_of_the_spoken_language_find_too_and_accents_are_not_looked_at() -> None:
    with speaking("fr"):
        found = {each.id for each in search("creme 35", open_larder())}
    assert "cream-35" in found
    assert "cream-35" not in {each.id for each in search("creme 12345", open_larder())}


def test_nothing_found_is_answered_with_the_nearest() -> None:
    with pytest.raises(UnknownName, match="plain-flour"):
        look_up("plain-flower", SMALL_LARDER)


@pytest.mark.parametrize("words", ["", "  "])
def test_no_words_are_refused(words: str) -> None:
    with pytest.raises(QuantityError):
        look_up(words, SMALL_LARDER)
