"""SI numbers into texts for a kitchen."""

from __future__ import annotations

import pytest

from entremetry.quantities import (
    format_celsius,
    format_density,
    format_duration,
    format_fraction,
    format_length,
    format_mass,
    format_mass_per_area,
    format_ounces,
    format_temperature,
    format_volume,
    oven_temperature,
)
from entremetry.quantities.oven import conventional_fahrenheit, is_conventional
from entremetry.quantities.rounding import fixed, rounded


@pytest.mark.parametrize(
    ("grams", "text"),
    [
        (0, "0 g"),
        (0.003, "3 mg"),
        (0.35, "0.35 g"),
        (0.996, "1.0 g"),
        (4, "4.0 g"),
        (9.96, "10 g"),
        (240.4, "240 g"),
        (1240, "1240 g"),
        (9999.4, "9999 g"),
        (12345, "12.35 kg"),
    ],
)
def test_a_mass_is_written_as_scales_show_it(grams: float, text: str) -> None:
    assert format_mass(grams / 1000) == text


def test_a_half_goes_up_as_in_school() -> None:
    assert [fixed(0.5), fixed(2.5), fixed(0.125, 2), fixed(2.675, 2)] == ["1", "3", "0.13", "2.68"]
    assert str(rounded(-0.2)) == "0"


@pytest.mark.parametrize(
    ("kelvin", "text"),
    [
        (333.15, "60 °C (140 °F)"),
        (355.15, "82 °C (180 °F)"),
        (255.15, "-18 °C (0 °F)"),
        (273.15, "0 °C (32 °F)"),
    ],
)
def test_a_temperature_is_written_in_both_degrees(kelvin: float, text: str) -> None:
    assert format_temperature(kelvin) == text


def test_other_quantities() -> None:
    assert format_volume(2.5e-6) == "2.5 ml"
    assert format_volume(12.345e-3) == "12.35 l"
    assert format_length(0.0025) == "2.5 mm"
    assert format_length(0.0143) == "14 mm"
    assert format_length(0.0625, decimals=1) == "62.5 mm"
    assert format_length(0.16, unit="cm") == "16 cm"
    assert format_celsius(305.65, decimals=1) == "32.5 °C"
    assert format_density(1047.0) == "1.05 g/ml"
    assert format_mass_per_area(1.0) == "0.1 g/cm²"
    assert [format_fraction(x) for x in (0.0025, 0.025, 0.11, 1.5)] == [
        "0.25 %",
        "2.5 %",
        "11 %",
        "150 %",
    ]


@pytest.mark.parametrize(
    ("seconds", "text"),
    [
        (0, "0 min"),
        (45, "45 s"),
        (90, "90 s"),
        (3599, "1 h"),
        (5400, "1 h 30 min"),
        (86400, "24 h"),
        (187200, "2 days 4 h"),
    ],
)
def test_a_duration_has_at_most_two_parts(seconds: float, text: str) -> None:
    assert format_duration(seconds) == text


@pytest.mark.parametrize(
    ("grams", "text"),
    [
        (0, "0 oz"),
        (28.35, "1 oz"),
        (100, "3½ oz"),
        (227, "8 oz"),
        (453.59, "1 lb"),
        (567, "1 lb 4 oz"),
    ],
)
def test_ounces(grams: float, text: str) -> None:
    assert format_ounces(grams / 1000) == text


def test_an_oven_setting_is_written_for_both_sorts_of_oven() -> None:
    assert oven_temperature(433.15, fan=True) == "160 °C fan (180 °C / 350 °F conventional)"
    assert oven_temperature(453.15, fan=False) == "180 °C / 350 °F (160 °C fan)"
    assert oven_temperature(448.15, fan=True, fan_correction=15).startswith(
        "175 °C fan (190 °C / 375"
    )


def test_conventional_pairs() -> None:
    assert is_conventional(180, 350) and is_conventional(170, 325) and is_conventional(110, 225)
    assert not is_conventional(60, 150) and not is_conventional(180, 400)
    assert not is_conventional(121, 250)
    assert conventional_fahrenheit(185) == 365
