"""Quantities said in French: gender, halves, ranges, signs, and nothing lost on the way."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from entremetry.publish.number_words_french import decimal_words, part_words, whole_words
from entremetry.publish.spoken import in_both_scales, shown, spoken
from entremetry.publish.spoken_sheet import spoken_sheet
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import batch_of_text
from entremetry.words import speaking

LEFT = re.compile(r"(?<![0-9.])[0-9½¼¾⅓⅔⅛]+(?![0-9.])")
"""A number in digits; what stands with a point is no number of a French text."""
SAID = re.compile(r" +dit +(.*)")


@pytest.fixture(autouse=True)
def french() -> Iterator[None]:
    with speaking("fr"):
        yield


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (21, "vingt et un"),
        (70, "soixante-dix"),
        (71, "soixante et onze"),
        (80, "quatre-vingts"),
        (81, "quatre-vingt-un"),
        (91, "quatre-vingt-onze"),
        (102, "cent deux"),
        (200, "deux cents"),
        (280, "deux cent quatre-vingts"),
        (1000, "mille"),
        (80_000, "quatre-vingt mille"),
    ],
)
def test_whole_numbers(value: int, words: str) -> None:
    assert whole_words(value) == words


def test_one_agrees_with_what_is_counted() -> None:
    assert whole_words(1, feminine=True) == "une"
    assert whole_words(21, feminine=True) == "vingt et une"
    assert whole_words(81, feminine=True) == "quatre-vingt-une"
    assert whole_words(11, feminine=True) == "onze"


def test_no_two_numbers_sound_the_same() -> None:
    numbers = [*range(2_000), *range(2_000, 1_000_000, 997)]
    assert len({whole_words(number) for number in numbers}) == len(numbers)


def test_what_stands_behind_the_comma() -> None:
    assert decimal_words("4,9") == "quatre virgule neuf"
    assert decimal_words("0,05") == "zéro virgule zéro cinq"
    assert decimal_words("0,62") == "zéro virgule soixante-deux"
    assert decimal_words("2,0") == "deux"
    assert part_words(2, 3) == "deux tiers"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (
            "Refroidir à 30 °C (86 °F) dans la glace.",
            "Refroidir à trente degrés Celsius, ou quatre-vingt-six degrés Fahrenheit, "
            "dans la glace.",
        ),
        (
            "à −15 °C (5 °F), environ 3 heures",
            "à moins quinze degrés Celsius, ou cinq degrés Fahrenheit, environ trois heures",
        ),
        ("4,9 g de sel", "quatre virgule neuf grammes de sel"),
        ("1,5 g d’eau", "un virgule cinq gramme d’eau"),
        ("1 g", "un gramme"),
        ("1 h 30 min", "une heure trente minutes"),
        ("21 minutes", "vingt et une minutes"),
        ("15 à 18 min", "quinze à dix-huit minutes"),
        ("15-18 min", "quinze à dix-huit minutes"),
        ("½ tasse", "une demi-tasse"),
        ("½ œuf", "un demi-œuf"),
        ("½ feuille", "une demi-feuille"),
        ("¼ c. à c.", "un quart de cuillère à café"),
        ("⅔ tasse + 1 c. à s.", "deux tiers de tasse plus une cuillère à soupe"),
        ("⅓ d’œuf", "un tiers d’œuf"),
        ("¾ orange", "trois quarts d’orange"),
        ("2½ c. à s.", "deux cuillères à soupe et demie"),
        ("1 1/2 tasse", "une tasse et demie"),
        ("1⅓ tasse", "une tasse et un tiers"),
        ("2½ feuilles", "deux feuilles et demie"),
        ("1½ citron", "un citron et demi"),
        ("2½", "deux et demi"),
        ("1 feuille", "une feuille"),
        ("1 de 40 mm", "un de quarante millimètres"),
        ("300 mm × 200 mm", "trois cents millimètres sur deux cents millimètres"),
        ("0,62 g/ml", "zéro virgule soixante-deux gramme par millilitre"),
        ("Crème 35 %", "Crème trente-cinq pour cent"),
        ("jaune de 1 œuf", "jaune d’un œuf"),
        ("le jus de 1 tasse pleine", "le jus d’une tasse pleine"),
        ("±5 %", "plus ou moins cinq pour cent"),
    ],
)
def test_numbers_and_units_are_said_in_words(text: str, words: str) -> None:
    assert spoken(text) == words


@pytest.mark.parametrize("text", ["10.000 g", "1,2,3", "9999999 g", "7/0 tasse", "x2", "1/7 tasse"])
def test_what_no_kitchen_says_stays_as_it_is_written(text: str) -> None:
    assert spoken(text).split()[0] == text.split()[0]


def test_every_temperature_is_given_in_both_scales() -> None:
    assert in_both_scales("à 82 °C et plus") == "à 82 °C (180 °F) et plus"
    assert in_both_scales("15 à 18 °C") == "15 à 18 °C (59–64 °F)"
    assert in_both_scales("82 °C (180 °F)") == "82 °C (180 °F)"


def test_what_is_shown_is_what_is_written_with_its_unit() -> None:
    text = "Chauffer 4,9 g à 80 °C (176 °F), environ 5 minutes, en 3 fois."
    assert shown(text) == ("4,9 g", "80 °C", "176 °F", "5 minutes")


@pytest.mark.parametrize("name", sorted(demo_texts()))
def test_nothing_said_of_a_demo_dessert_is_left_in_digits(name: str) -> None:
    lines = spoken_sheet(batch_of_text(demo_texts()[name])).splitlines()
    told = [found[1] for each in lines if (found := SAID.match(each))]
    assert len(told) > 30
    assert [each for each in told if LEFT.search(each)] == []
