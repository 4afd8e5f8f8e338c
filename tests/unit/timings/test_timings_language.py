"""What an answer says, it says in the language that is spoken; the numbers stay."""

from __future__ import annotations

from dataclasses import fields

import pytest

from entremetry.timings.place import place
from entremetry.timings.step_temperatures import StepTemperatures
from entremetry.words import speaking
from timed_desserts import TIMED, told
from unit.web.marked_language import speak_marked, words

STEPS = ("cool-heart", "simmer-milk", "fold-cream", "freeze-heart", "freeze", "glaze-it", "thaw")
KEPT = ("step", "kind", "sources")
"""Texts of an answer that are compared, not read."""


def said(answer: StepTemperatures) -> str:
    """Every text of an answer that is read."""
    texts: list[str] = []
    for field in fields(answer):
        value = getattr(answer, field.name)
        if isinstance(value, str) and field.name not in KEPT:
            texts.append(value)
    texts += answer.assumptions
    texts += [curve.name for curve in answer.curves]
    texts += [mark.text for mark in answer.marks]
    texts += [text for each in answer.facts for text in (each.name, each.because)]
    return "\n".join(texts)


@pytest.mark.parametrize(
    "step",
    ["cool-heart", "simmer-milk", "freeze-heart", "freeze", "glaze-it", "thaw", "fold-cream"],
)
def test_every_word_of_an_answer_is_said(monkeypatch: pytest.MonkeyPatch, step: str) -> None:
    speak_marked(monkeypatch)
    with speaking("fr"):
        found = told(step)
    assert words(said(found)) - words(TIMED) == frozenset()


def test_what_boils_away_is_found_in_another_language() -> None:
    english = told("simmer-milk")
    with speaking("fr"):
        french = told("simmer-milk")
    assert french.time == english.time
    assert (english.mostly, french.mostly) == ("how strong the ring is", "la puissance du feu")


def test_a_place_that_is_assumed_has_its_name_in_the_language() -> None:
    with speaking("fr"):
        found = place("blast freezer", None, None)
    assert (found.kind, found.name) == ("blast freezer", "cellule de surgélation")
    assert found.assumptions[0].startswith("On suppose une cellule de surgélation à -30 °C")
