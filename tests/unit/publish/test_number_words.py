from __future__ import annotations

import pytest

from entremetry.publish.number_words import decimal_words, fraction_words, mixed_words, whole_words


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (0, "zero"),
        (13, "thirteen"),
        (40, "forty"),
        (99, "ninety-nine"),
        (100, "one hundred"),
        (101, "one hundred and one"),
        (350, "three hundred and fifty"),
        (1000, "one thousand"),
        (1050, "one thousand and fifty"),
        (1240, "one thousand two hundred and forty"),
        (999_999, "nine hundred and ninety-nine thousand nine hundred and ninety-nine"),
    ],
)
def test_whole_numbers(value: int, words: str) -> None:
    assert whole_words(value) == words


def test_no_two_numbers_sound_the_same() -> None:
    numbers = [*range(2_000), *range(2_000, 1_000_000, 997)]
    assert len({whole_words(number) for number in numbers}) == len(numbers)


@pytest.mark.parametrize(
    ("digits", "words"),
    [("4.9", "four point nine"), ("0.39", "zero point three nine"), ("2.0", "two"), ("7", "seven")],
)
def test_decimals_are_said_digit_by_digit(digits: str, words: str) -> None:
    assert decimal_words(digits) == words


def test_fractions() -> None:
    assert fraction_words(1, 2) == "half"
    assert fraction_words(1, 4) == "a quarter of"
    assert fraction_words(2, 3) == "two thirds of"
    assert mixed_words(2, 1, 2) == "two and a half"
    assert mixed_words(1, 3, 4) == "one and three quarters"
