"""Amounts in French: a decimal comma, French units of time, French spoons; read back as meant."""

from __future__ import annotations

import pytest

from entremetry.quantities import (
    MeasureWeight,
    Method,
    format_area,
    format_celsius,
    format_density,
    format_duration,
    format_fraction,
    format_length,
    format_mass,
    format_mass_per_area,
    format_temperature,
    format_volume,
    household,
    oven_temperature,
    parse_duration,
    parse_fraction,
    parse_length,
    parse_mass,
    parse_volume,
)
from entremetry.quantities.mentions import mentions, pairs
from entremetry.quantities.spelling import unit_named
from entremetry.quantities.things import things
from entremetry.words import speaking

SHEET = MeasureWeight(measure="sheet", volume=None, mass=0.002)
CUP, SPOON, TEASPOON = (
    MeasureWeight(measure=f"metric {each}", volume=unit_named(f"metric {each}").factor, mass=mass)
    for each, mass in (("cup", 0.2), ("tbsp", 0.012), ("tsp", 0.004))
)
SPOONS = (CUP, SPOON, TEASPOON)


def test_numbers_have_a_comma_and_units_keep_their_signs() -> None:
    with speaking("fr"):
        assert format_mass(0.0049) == "4,9 g"
        assert format_mass(12.345) == "12,35 kg"
        assert format_mass(2.5e-6) == "2,5 mg"
        assert format_volume(2.5e-6) == "2,5 ml"
        assert format_length(0.0025) == "2,5 mm"
        assert format_celsius(311.65, decimals=1) == "38,5 °C"
        assert format_temperature(453.15) == "180 °C (356 °F)"
        assert format_fraction(0.025) == "2,5 %"
        assert format_density(620.0) == "0,62 g/ml"
        assert format_mass_per_area(1.1) == "0,11 g/cm²"
        assert format_area(5e-5) == "0,5 cm²"


@pytest.mark.parametrize(
    ("seconds", "text"),
    [(0, "0 min"), (45, "45 s"), (720, "12 min"), (5400, "1 h 30 min"), (187200, "2 jours 4 h")],
)
def test_durations_in_french_read_back(seconds: float, text: str) -> None:
    with speaking("fr"):
        assert format_duration(seconds) == text
    assert parse_duration(text) == seconds


@pytest.mark.parametrize("value", [0.00035, 0.0049, 0.24, 0.7345])
def test_what_is_written_in_french_reads_back_as_what_is_written_in_english(value: float) -> None:
    formats = (
        (format_mass, parse_mass),
        (format_volume, parse_volume),
        (format_length, parse_length),
        (format_fraction, parse_fraction),
    )
    for write, read in formats:
        english = read(write(value))
        with speaking("fr"):
            assert read(write(value)) == english


def test_oven_settings_name_both_ovens() -> None:
    with speaking("fr"):
        assert oven_temperature(433.15, fan=True) == (
            "160 °C chaleur tournante (180 °C / 350 °F statique)"
        )
        assert oven_temperature(453.15, fan=False) == ("180 °C / 350 °F (160 °C chaleur tournante)")


@pytest.mark.parametrize(
    ("mass", "text"),
    [
        (0.012, "1 c. à s."),
        (0.028, "2 c. à s. + 1 c. à c."),
        (0.05, "¼ tasse"),
        (0.3, "1½ tasse"),
        (0.4, "2 tasses"),
    ],
)
def test_spoons_and_cups_are_french(mass: float, text: str) -> None:
    with speaking("fr"):
        assert household(mass, weights=SPOONS, system="metric").text == text


def test_things_are_counted_by_the_french_rule() -> None:
    with speaking("fr"):
        half = household(0.001, weights=[SHEET], system="metric")
        more = household(0.003, weights=[SHEET], system="metric")
        many = household(0.0058, weights=[SHEET], system="metric", weigh_only=True)
    assert (half.text, more.text) == ("½ feuille", "1½ feuille")
    assert many.text == "3 feuilles (peser : 5,8 g)"
    assert many.method is Method.SCALES
    assert many.mass == pytest.approx(0.0058)


def test_a_drift_is_said_in_french() -> None:
    with speaking("fr"):
        few = household(0.00043, weights=[TEASPOON], system="metric")
        drifting = household(0.0128, weights=[SPOON], system="metric", limit=0.01)
    assert few.text == "environ ⅛ c. à c. (16 % de plus)"
    assert "environ" in drifting.text
    assert "% de" in drifting.text


@pytest.mark.parametrize(
    ("thing", "number", "text"),
    [
        ("large egg (US)", 2.0, "gros œufs (É.-U.)"),
        ("medium egg (EU)", 1.0, "œuf moyen (UE)"),
        ("pinch", 2.0, "pincées"),
        ("lime", 3.0, "citrons verts"),
        ("marble (ours)", 2.0, "marbles (ours)"),
    ],
)
def test_a_thing_of_the_larder_is_french_and_one_of_the_cook_stays(
    thing: str, number: float, text: str
) -> None:
    with speaking("fr"):
        assert things(thing, number) == text


@pytest.mark.parametrize(
    ("thing", "text"),
    [("berry", "berries"), ("raspberry", "raspberries"), ("leaf", "leaves"), ("pinch", "pinches")],
)
def test_english_plurals_are_those_people_write(thing: str, text: str) -> None:
    assert things(thing, 2.0) == text
    assert things(thing, 0.5) == thing


def test_french_amounts_are_found_in_prose_and_spoons_are_not_taken_for_units() -> None:
    found = [(m.numbers, m.units[0].name) for m in mentions("4,9 g à 180 °C (356 °F)")]
    assert found == [((4.9,), "g"), ((180.0,), "°C"), ((356.0,), "°F")]
    assert len(list(pairs("cuire à 180 °C (356 °F)"))) == 1
    assert list(mentions("2 c. à s. + 1 c. à c., 1½ tasse, 3 feuilles")) == []
