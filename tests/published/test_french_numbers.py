"""French number words beside those of a library that we did not write: num2words."""

from __future__ import annotations

import pytest
from num2words import num2words

from entremetry.publish.number_words_french import LARGEST, decimal_words, whole_words

THOUSANDS = (10_000, 21_080, 71_071, 80_000, 80_080, 91_191, 99_999, 100_000, 101_001)
BEYOND = (*THOUSANDS, 180_000, 200_000, 200_200, 280_000, 580_381, 701_091, LARGEST)


def test_all_whole_numbers_to_9999_are_said_as_the_library_says_them() -> None:
    differing = {n: whole_words(n) for n in range(10_000) if whole_words(n) != said(n)}
    assert differing == {}


@pytest.mark.parametrize("number", [*BEYOND, *range(10_000, LARGEST, 7_919)])
def test_so_are_larger_ones(number: int) -> None:
    assert whole_words(number) == said(number)


@pytest.mark.parametrize("tenths", range(1, 1000, 7))
def test_so_are_tenths(tenths: int) -> None:
    written = f"{tenths / 10:.1f}"
    assert decimal_words(written.replace(".", ",")) == said(float(written))


def said(number: float) -> str:
    words: str = num2words(number, lang="fr")
    return words.removesuffix(" virgule zéro")
