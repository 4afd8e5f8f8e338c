"""Ingredients are found by id, by name, by alias and by words."""

from __future__ import annotations

import pytest

from entremetry.errors import QuantityError, UnknownName
from entremetry.usecases.larder import look_up, search
from small_larder import SMALL_LARDER


@pytest.mark.parametrize("words", ["cream-35", "cream 35", "CREAM-35"])
def test_one_is_found_by_id_and_name(words: str) -> None:
    assert [found.id for found in look_up(words, SMALL_LARDER)] == ["cream-35"]


def test_all_that_hold_the_words_are_found() -> None:
    assert {found.id for found in search("sugar", SMALL_LARDER)} == {"caster-sugar"}
    assert {found.id for found in look_up("test", SMALL_LARDER)} == {i.id for i in SMALL_LARDER}


def test_nothing_found_is_answered_with_the_nearest() -> None:
    with pytest.raises(UnknownName, match="plain-flour"):
        look_up("plain-flower", SMALL_LARDER)


@pytest.mark.parametrize("words", ["", "  "])
def test_no_words_are_refused(words: str) -> None:
    with pytest.raises(QuantityError):
        look_up(words, SMALL_LARDER)
