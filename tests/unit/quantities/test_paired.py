"""Pairs in prose that must agree."""

from __future__ import annotations

import pytest

from entremetry.quantities import find_slips


def flour_and_sugar(words: str) -> float | None:
    if "flour" in words:
        return 528.3
    return 845.0 if "sugar" in words else None


@pytest.mark.parametrize(
    ("text", "found", "right"),
    [
        ("Heat to 60 °C (150 °F).", "150 °F", "140 °F"),
        ("Heat to 150 °F (60 °C).", "60 °C", "66 °C"),
        ("60°C/150°F", "150°F", "140 °F"),
        ("60C (150F)", "150F", "140 °F"),
        ("60–65 °C (140–159 °F)", "140–159 °F", "140–149 °F"),
        ("-18 °C (10 °F)", "10 °F", "0 °F"),
        ("8 oz / 200 g", "200 g", "227 g"),
        ("1 lb (500 g)", "500 g", "454 g"),
        ("100 g (4 oz)", "4 oz", "3½ oz"),
        ("2 cm (1 in)", "1 in", "¾ in"),
        ("a 20-cm (10-inch) ring", "10-inch", "8 inch"),
        ("1 US cup (200 ml)", "200 ml", "237 ml"),
        ("1 tbsp (30 ml)", "30 ml", "15 ml"),
        ("180 °C (450 °F)", "450 °F", "356 °F"),
        ("154 °C (300 °F)", "300 °F", "309 °F"),
        ("350 °F, that is 200 °C", "200 °C", "177 °C"),
    ],
)
def test_a_slip_is_reported_with_the_right_value(text: str, found: str, right: str) -> None:
    (slip,) = find_slips(text)
    assert (slip.found, slip.right) == (found, right)
    assert text[slip.start : slip.end] == found
    assert find_slips(text[: slip.start] + right + text[slip.end :]) == ()


@pytest.mark.parametrize(
    "text",
    [
        "60 °C (140 °F)",
        "82 °C (180 °F)",
        "180 °C / 350 °F",
        "160 °C (325 °F)",
        "170 °C (325 °F)",
        "350 °F (177 °C)",
        "60–65 °C (140–149 °F)",
        "60 °C–65 °C (140 °F–149 °F)",
        "-18 °C (0 °F)",
        "1 lb (450 g)",
        "1 lb (454 g)",
        "8 oz (225 g)",
        "1 oz (30 g)",
        "1 cup (237 ml)",
        "1 cup (240 ml)",
        "1 cup (250 ml)",
        "½ cup (120 ml)",
        "1 tbsp (15 ml)",
        "1 tbsp (20 ml)",
        "1 pint (568 ml)",
        "5 mm (¼ in)",
        "1 cm (½ in)",
        "20 cm (8 in)",
        "180 °C (160 °C fan)",
        "60 °C and then 150 °F",
        "120 g (1 cup)",
        "1,000 g (5 lb)",
        "Whip 60 g, then 2 in the bowl.",
        "",
    ],
)
def test_what_agrees_or_is_no_pair_is_left_alone(text: str) -> None:
    assert find_slips(text) == ()


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("flour: 200 g (1 cup)", "1⅝ cups"),
        ("1 cup (200 g) flour", "125 g"),
        ("sugar, 1 cup (125 g)", "200 g"),
    ],
)
def test_a_mass_and_a_volume_are_judged_by_the_density(text: str, right: str) -> None:
    (slip,) = find_slips(text, mass_per_volume=flour_and_sugar)
    assert slip.right == right
    assert "us cup" in slip.because


def test_a_mass_and_a_volume_that_agree_are_left_alone() -> None:
    assert find_slips("120 g (1 cup) flour", mass_per_volume=flour_and_sugar) == ()
    assert find_slips("200 g (1 cup) rice", mass_per_volume=flour_and_sugar) == ()


def test_every_slip_of_a_text_is_reported_and_explained() -> None:
    text = "60°C (150°F), then 120 g (4 oz), then 8 oz (200 g)"
    first, second = find_slips(text)
    assert (first.right, second.right) == ("140 °F", "227 g")
    assert first.because == "60°C is 140 °F; 150°F is 66 °C"


def test_measures_settle_whose_cup_is_meant() -> None:
    assert find_slips("1 tbsp (20 ml)", measures="au") == ()
    (slip,) = find_slips("1 tbsp (20 ml)", measures="us")
    assert slip.right == "15 ml"
