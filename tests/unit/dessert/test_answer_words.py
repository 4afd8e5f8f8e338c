"""Answers to a draft's questions, as a person reads them."""

from __future__ import annotations

import pytest

from entremetry.dessert.answer_words import answer_words
from entremetry.store.larder_file import open_larder
from entremetry.words import speaking

LARDER = open_larder()


@pytest.mark.parametrize(
    ("key", "answer", "english", "french"),
    [
        ("plum-kind", "soak", "Soak", "Imbibage"),
        ("step.3.kind", "soak", "Soak in water", "Faire tremper"),
        ("plum-place", "insert", "A frozen insert inside", "Un insert congelé à l’intérieur"),
        ("plum-2-ingredient", "cream-35", "Cream 35 %", "Crème 35 %"),
        ("step.3.bowl", "own", "In a bowl of its own", "Dans un récipient à part"),
        ("step.3.bowl", "cream-35", "cream-35", "cream-35"),
        ("plum-2-amount", "30 g", "30 g", "30 g"),
    ],
)
def test_a_choice_is_said_and_what_was_typed_stays(
    key: str, answer: str, english: str, french: str
) -> None:
    assert answer_words(key, answer, LARDER) == english
    with speaking("fr"):
        assert answer_words(key, answer, LARDER) == french
