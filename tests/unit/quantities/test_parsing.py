"""Texts into SI numbers."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from entremetry.errors import QuantityError
from entremetry.quantities import (
    Amount,
    Kind,
    parse_amount,
    parse_area,
    parse_density,
    parse_duration,
    parse_fraction,
    parse_length,
    parse_mass,
    parse_mass_per_area,
    parse_temperature,
    parse_volume,
)

READ: list[tuple[Callable[[str], float], str, float]] = [
    (parse_mass, "240 g", 0.24),
    (parse_mass, "1.2kg", 1.2),
    (parse_mass, "1 kg 200 g", 1.2),
    (parse_mass, "1 lb 4 oz", 0.5669904625),
    (parse_volume, "75 ml", 75e-6),
    (parse_volume, "3 cm3", 3e-6),
    (parse_volume, "1 metric cup", 250e-6),
    (parse_volume, "1 us cup + 2 us tbsp", 266.1617660625e-6),
    (parse_length, "62.5 mm", 0.0625),
    (parse_length, "6 cm", 0.06),
    (parse_length, '1½"', 0.0381),
    (parse_area, "12 cm2", 12e-4),
    (parse_duration, "1 h 30 min", 5400),
    (parse_duration, "1h30min", 5400),
    (parse_duration, "90 min", 5400),
    (parse_duration, "1 day 4 h", 100800),
    (parse_duration, "0 min", 0),
    (parse_fraction, "11 %", 0.11),
    (parse_fraction, "150 percent", 1.5),
    (parse_fraction, "0 %", 0),
    (parse_density, "0.6 g/ml", 600),
    (parse_density, "620 kg/m3", 620),
    (parse_density, "1,05 g/cm³", 1050),
    (parse_mass_per_area, "0.1 g/cm2", 1),
    (parse_temperature, "60 °C", 333.15),
    (parse_temperature, "60°C", 333.15),
    (parse_temperature, "60 deg C", 333.15),
    (parse_temperature, "60 C", 333.15),
    (parse_temperature, "140 °F", 333.15),
    (parse_temperature, "-18 °C", 255.15),
    (parse_temperature, "−18 °C", 255.15),
    (parse_temperature, "300 K", 300),
]


@pytest.mark.parametrize(("parse", "text", "value"), READ)
def test_a_quantity_is_read(parse: Callable[[str], float], text: str, value: float) -> None:
    assert parse(text) == pytest.approx(value, rel=1e-12)


REFUSED: list[tuple[Callable[[str], float], str, str]] = [
    (parse_mass, "240", "say the unit"),
    (parse_mass, "", "empty"),
    (parse_mass, "-5 g", "negative"),
    (parse_mass, "0 g", "out of bounds"),
    (parse_mass, "nan g", "finite"),
    (parse_mass, "inf", "finite"),
    (parse_mass, "1-2 g", "range"),
    (parse_mass, "1 to 2 g", "range"),
    (parse_mass, "2000 kg", "1000 kg"),
    (parse_mass, "12 ml", "is a volume"),
    (parse_mass, "2 grms", "did you mean gram"),
    (parse_mass, "5 gr", "grain"),
    (parse_mass, "2 T", "tbsp"),
    (parse_mass, "2 t", "tonne"),
    (parse_mass, "1,000 g", "1000 or"),
    (parse_mass, "200 g 1 kg", "out of order"),
    (parse_volume, "1 cup", "us cup, metric cup, au cup, uk cup"),
    (parse_length, "12 m", "10 m"),
    (parse_duration, "1 h 30", "say the unit"),
    (parse_duration, "400 days", "366 days"),
    (parse_duration, "5 m", "is a length"),
    (parse_fraction, "11", "percent"),
    (parse_density, "0.6 kg/m3", "0.01 g/ml"),
    (parse_temperature, "60", "say the unit"),
    (parse_temperature, "60–65 °C", "range"),
    (parse_temperature, "-300 °C", "out of bounds"),
    (parse_temperature, "60 g", "temperature"),
    (parse_temperature, "gas mark 10", "1 to 9"),
    (parse_mass, "9" * 300 + " g", "302 characters"),
]


@pytest.mark.parametrize(("parse", "text", "words"), REFUSED)
def test_what_is_no_such_quantity_is_refused_with_advice(
    parse: Callable[[str], float], text: str, words: str
) -> None:
    with pytest.raises(QuantityError) as caught:
        parse(text)
    assert words in str(caught.value)


@pytest.mark.parametrize("value", [240, 2.5, True, None, [1], {"a": 1}])
def test_what_is_no_text_is_refused(value: object) -> None:
    with pytest.raises(QuantityError):
        parse_mass(value)  # type: ignore[arg-type]


def test_zero_is_accepted_where_it_makes_sense() -> None:
    assert parse_mass("0 g", zero=True) == 0.0
    assert parse_length("0 mm", zero=True) == 0.0


@pytest.mark.parametrize(
    ("text", "number", "unit"),
    [
        ("2 sheets", 2, "sheet"),
        ("2 leaves", 2, "leaf"),
        ("1 pod", 1, "pod"),
        ("3", 3, ""),
        ("1 large egg", 1, "large egg"),
        ("3 large eggs", 3, "large egg"),
        ("½ stick", 0.5, "stick"),
        ("1 pinch", 1, "pinch"),
        ("2 boxes", 2, "box"),
    ],
)
def test_things_are_counted(text: str, number: float, unit: str) -> None:
    assert parse_amount(text) == Amount(number=number, unit=unit, kind=Kind.COUNT, si=None)


def test_an_amount_may_be_a_mass_or_a_volume() -> None:
    mass = parse_amount("240 g")
    assert (mass.kind, mass.unit, mass.number) == (Kind.MASS, "g", pytest.approx(240))
    spoon = parse_amount("1 1/2 tbsp", "au")
    assert (spoon.kind, spoon.unit) == (Kind.VOLUME, "au tbsp")
    assert spoon.si == pytest.approx(30e-6)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("2 tbps", "tbsp"),
        ("200 grm", "gram"),
        ("2 cm", "a length"),
        ("5 %", "a fraction"),
        ("2 x", "sheets"),
        ("0 eggs", "out of bounds"),
        ("1-2 eggs", "range"),
        ("2 eggs 3", "more than one number"),
        ("1 tonne", "kg"),
        ("2 tbsp", "us tbsp, metric tbsp, au tbsp, uk tbsp"),
        ("1 c", "cup, or °C"),
        ("some", "an amount"),
        ("240 g blackcurrant purée", "did you mean g"),
    ],
)
def test_an_amount_that_is_no_clear_amount_is_refused(text: str, words: str) -> None:
    with pytest.raises(QuantityError) as caught:
        parse_amount(text)
    assert words in str(caught.value)
