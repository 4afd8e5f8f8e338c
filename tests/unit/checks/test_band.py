"""A band tells outcome, limit, side and margin."""

from __future__ import annotations

import math

import pytest

from entremetry.checks.band import Band, Outcome
from entremetry.checks.saying import amount, number, said

FOLD = Band(unit="°C", low=22.0, high=30.0, fails_below=18.0, fails_above=34.0)
WALL = Band(unit="mm", low=8.0, fails_below=3.0)


@pytest.mark.parametrize(
    ("value", "outcome"),
    [
        (17.9, Outcome.FAIL),
        (18.0, Outcome.CAUTION),
        (21.9, Outcome.CAUTION),
        (22.0, Outcome.PASS),
        (30.0, Outcome.PASS),
        (30.1, Outcome.CAUTION),
        (34.1, Outcome.FAIL),
    ],
)
def test_the_ends_belong_to_the_better_side(value: float, outcome: Outcome) -> None:
    assert FOLD.outcome(value) is outcome


def test_a_value_that_is_no_number_fails() -> None:
    assert FOLD.outcome(math.nan) is Outcome.FAIL


@pytest.mark.parametrize(
    ("value", "margin"), [(18.0, -1.0), (22.0, 0.0), (26.0, 1.0), (34.0, -1.0)]
)
def test_the_margin_counts_in_widths_of_the_caution(value: float, margin: float) -> None:
    assert FOLD.margin(value) == pytest.approx(margin)


def test_the_limit_is_the_nearer_end() -> None:
    assert FOLD.limit(23.0) == 22.0 and FOLD.limit(29.0) == 30.0
    assert WALL.limit(100.0) == 8.0 and WALL.is_low(100.0)


def test_an_open_side_has_endless_margin() -> None:
    assert WALL.margin_high(5.0) == math.inf and WALL.margin_low(5.5) == pytest.approx(-0.5)


def test_ends_in_the_wrong_order_are_refused() -> None:
    with pytest.raises(ValueError, match="order"):
        Band(unit="", low=2.0, fails_below=3.0)


def test_limits_in_words() -> None:
    assert said(FOLD) == "22 to 30 °C"
    assert said(WALL) == "at least 8 mm"
    assert said(Band(unit="%", high=2.5)) == "at most 2.5 %"


@pytest.mark.parametrize(
    ("value", "words"),
    [(123.4, "123"), (23.84, "23.8"), (0.884, "0.88"), (-0.001, "0"), (5.0, "5")],
)
def test_numbers_have_the_digits_that_matter(value: float, words: str) -> None:
    assert number(value) == words and amount(value, "g") == f"{words} g"
