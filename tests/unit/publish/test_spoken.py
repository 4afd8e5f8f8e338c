from __future__ import annotations

import re
from fractions import Fraction

import pytest

from entremetry.publish.recipe_page import recipe_page
from entremetry.publish.spoken import in_both_scales, shown, spoken
from entremetry.publish.spoken_sheet import filled, spoken_sheet
from entremetry.publish.typesetting import line
from entremetry.quantities.number import FRACTIONS
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import batch_of_text
from unit.publish.foreign import TEXTS, foreign
from unit.publish.heard import numbers_heard
from unit.publish.sheets import SHEET
from unit.publish.test_recipe_page import Reading

GLYPHS = "".join(FRACTIONS)
NUMBER = re.compile(rf"(\d+)?([{GLYPHS}])|(\d+(?:\.\d+)?)")
SAID = re.compile(r" +said +(.*)")
SEEN = re.compile(r"(?:\d+\. written|  shown) +(.*)")


def numbers_written(text: str) -> list[Fraction]:
    """Every number of a text that stands in digits, in order."""
    found = []
    for whole, glyph, decimal in NUMBER.findall(text):
        found.append(int(whole or 0) + Fraction(*FRACTIONS[glyph]) if glyph else Fraction(decimal))
    return found


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (
            "Cool to 30 °C (86 °F) in ice.",
            "Cool to thirty degrees Celsius, or eighty-six degrees Fahrenheit, in ice.",
        ),
        (
            "at −15 °C (5 °F), about 3 hours",
            "at minus fifteen degrees Celsius, or five degrees Fahrenheit, about three hours",
        ),
        (
            "180 °C / 350 °F",
            "one hundred and eighty degrees Celsius or three hundred and fifty degrees Fahrenheit",
        ),
        ("⅓ cup + 1 tbsp", "a third of a cup plus one tablespoon"),
        ("2½ tbsp", "two and a half tablespoons"),
        ("½ sheet", "half a sheet"),
        ("½ egg", "half an egg"),
        ("1 1/2 cups", "one and a half cups"),
        ("3/4 cup", "three quarters of a cup"),
        ("1 g", "one gram"),
        ("15-18 min", "fifteen to eighteen minutes"),
        ("300 mm × 200 mm", "three hundred millimetres by two hundred millimetres"),
        ("100 ml weighs 20 g.", "one hundred millilitres weighs twenty grams."),
        ("0.62 g/ml", "zero point six two grams per millilitre"),
        ("Cream 35 %", "Cream thirty-five per cent"),
    ],
)
def test_numbers_and_units_are_said_in_words(text: str, words: str) -> None:
    assert spoken(text) == words


@pytest.mark.parametrize("text", ["10,000 g", "1.2.3", "9999999 g", "7/0 cup", "x2", "1/7 cup"])
def test_what_no_kitchen_says_stays_as_it_is_written(text: str) -> None:
    assert numbers_heard(spoken(text)) == [] and spoken(text).split()[0] == text.split()[0]


def test_every_temperature_is_given_in_both_scales() -> None:
    assert in_both_scales("to 82 °C and on") == "to 82 °C (180 °F) and on"
    assert in_both_scales("at 350 °F") == "at 350 °F (177 °C)"
    assert in_both_scales("82 °C (180 °F)") == "82 °C (180 °F)"


def test_what_is_shown_is_what_is_written_with_its_unit() -> None:
    assert shown("Heat 20 g to 80 °C (176 °F), about 5 minutes, in 3 goes.") == (
        "20 g",
        "80 °C",
        "176 °F",
        "5 minutes",
    )


@pytest.mark.parametrize("name", demo_texts())
def test_what_is_said_is_what_is_written_number_by_number(name: str) -> None:
    lines = spoken_sheet(batch_of_text(demo_texts()[name])).splitlines()
    pairs = 0
    written = ""
    for each in lines:
        if seen := SEEN.match(each):
            written = seen[1] if "written" in each or not written else written
        if said := SAID.match(each):
            assert not numbers_written(said[1]), each
            assert sorted(numbers_heard(said[1])) == sorted(
                [*numbers_written(written), *numbers_heard(written)]
            ), (written, said[1])
            written, pairs = "", pairs + 1
    assert pairs > 30


@pytest.mark.parametrize("name", demo_texts())
def test_every_number_to_say_stands_on_the_page_or_is_its_other_scale(name: str) -> None:
    sheet = batch_of_text(demo_texts()[name])
    page = Reading(recipe_page(sheet)).text.replace("\u00a0", " ").replace("\u202f", "")
    text = spoken_sheet(sheet)
    for component in sheet.components:
        for sentence in component.method:
            for found in shown(line(sentence)):
                quantity = found.replace("-", "\u2212")
                assert quantity in text
                assert quantity in page


def test_a_fill_step_has_its_volume_beside_its_mass() -> None:
    assert filled(SHEET.fill_steps[0], SHEET.components[2]) == (
        "Pipe 38 g (about 54 ml) of mousse, to 14 mm below the rim."
    )
    assert filled(SHEET.fill_steps[1], SHEET.components[0]) == SHEET.fill_steps[1].text


@pytest.mark.parametrize("name", TEXTS)
def test_hostile_text_is_told_in_lines_of_its_own(name: str) -> None:
    text = spoken_sheet(foreign(TEXTS[name]))
    assert "\u202e" not in text and "\x07" not in text and "\r" not in text
    assert "shown    190 g" in text
