from __future__ import annotations

import re

import pytest

from entremetry.errors import QuantityError
from entremetry.publish.description_text import (
    LEFT_OUT,
    LIMIT,
    SAFETY,
    by_hand,
    cut,
    description_text,
)
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import batch_of_text
from unit.publish.foreign import TEXTS, foreign
from unit.publish.sheets import SHEET

ALLERGENS = ("milk", "eggs")
NUMBERS = re.compile(r"\d[\d.,]*")


@pytest.mark.parametrize("limit", range(220, 2600, 7))
def test_a_text_keeps_its_limit_its_name_and_its_safety_line(limit: int) -> None:
    text = description_text(SHEET, allergens=ALLERGENS, limit=limit)
    assert len(text) <= limit
    assert text.startswith("Blackcurrant and vanilla dome: 6 pieces\n")
    assert text.endswith(f"Contains milk, eggs. {SAFETY}\n")


@pytest.mark.parametrize("limit", range(220, 2600, 61))
def test_every_line_of_a_shorter_text_is_a_whole_line_of_the_long_one(limit: int) -> None:
    whole = description_text(SHEET, allergens=ALLERGENS, limit=100_000)
    short = description_text(SHEET, allergens=ALLERGENS, limit=limit)
    lines = set(whole.splitlines()) | {LEFT_OUT}
    assert set(short.splitlines()) <= lines
    assert (LEFT_OUT in short) is (short != whole)


def test_what_is_more_important_goes_last() -> None:
    marks = ["Mould: ", "custard holds egg yolk", "190 g (3/4 cup)", "Rub the butter", "dark fruit"]
    seen: set[str] = set()
    for limit in range(220, 5000, 13):
        text = description_text(SHEET, allergens=ALLERGENS, limit=limit)
        now = {mark for mark in marks if mark in text}
        assert seen <= now
        assert now == set(marks[: len(now)])
        seen = now
    assert seen == set(marks)


def test_a_limit_too_small_for_safety_is_refused_with_the_smallest_that_does() -> None:
    with pytest.raises(QuantityError, match=r"a limit of 50 letters; accepted: \d+ or more") as e:
        description_text(SHEET, allergens=ALLERGENS, limit=50)
    least = int(re.findall(r"\d+", e.value.accepted)[0])
    assert len(description_text(SHEET, allergens=ALLERGENS, limit=least)) <= least


@pytest.mark.parametrize("name", demo_texts())
def test_a_demo_says_both_measures_of_every_line(name: str) -> None:
    sheet = batch_of_text(demo_texts()[name])
    text = description_text(sheet, limit=20_000)
    for component in sheet.components:
        for each in component.lines:
            assert each.name.replace("\u00a0", " ") in text
            assert by_hand(each.household) in text
    assert len(description_text(sheet)) <= LIMIT


@pytest.mark.parametrize("name", TEXTS)
def test_hostile_text_keeps_the_limit_and_the_safety_line(name: str) -> None:
    for limit in (400, 900, 5000):
        text = description_text(foreign(TEXTS[name]), allergens=ALLERGENS, limit=limit)
        assert len(text) <= limit
        assert text.endswith(f"{SAFETY}\n")
        assert "\u202e" not in text and "\x07" not in text


def test_a_long_name_is_cut_between_words_and_never_in_a_number() -> None:
    assert cut("one two three", 20) == "one two three"
    assert cut("one two three", 9) == "one two…"
    assert cut("about 240 000 g of it", 11) == "about…"
    assert cut("9" * 100, 20) == "…"
    for most in range(1, 40):
        assert set(NUMBERS.findall(cut("add 12 eggs, 3.5 l and 240 g", most))) <= {
            "12",
            "3.5",
            "240",
        }


def test_a_measure_by_hand_does_not_repeat_the_scales() -> None:
    assert by_hand("2 sheets (weigh: 4.0 g)") == "2 sheets"
    assert by_hand("weigh: 0.39 g") == ""
    assert by_hand("yolk of 1 large egg (US)") == "yolk of 1 large egg (US)"
