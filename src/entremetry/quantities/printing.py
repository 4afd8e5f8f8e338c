"""SI numbers into texts for a kitchen, in the language that is spoken; each can be read back."""

from __future__ import annotations

from entremetry.quantities.number import mixed_text
from entremetry.quantities.rounding import fixed, rounded, scaled, trimmed
from entremetry.quantities.spelling import unit_named
from entremetry.quantities.temperature import to_celsius, to_fahrenheit
from entremetry.quantities.unit import Unit
from entremetry.words import decimal, say

_LARGEST_ON_A_SCALE = 10_000


def format_mass(kilograms: float) -> str:
    """Write a mass as scales show it: 0.35 g, 4.0 g, 240 g, 1240 g, 12.35 kg."""
    return _scaled(kilograms, "mg", "g", "kg")


def format_volume(cubic_metres: float) -> str:
    """Write a volume as a jug or syringe shows it: 2.5 ml, 120 ml, 12.35 l."""
    return _scaled(cubic_metres, "mm³", "ml", "l")


def _scaled(value: float, small: str, usual: str, large: str) -> str:
    """Write a value in its usual unit; tiny and huge ones in the neighbouring unit."""
    number = unit_named(usual).from_si(value)
    if rounded(number) >= _LARGEST_ON_A_SCALE:
        return f"{decimal(trimmed(unit_named(large).from_si(value), 2))} {large}"
    if number and rounded(number, 2) == 0:
        return f"{decimal(f'{unit_named(small).from_si(value):.2g}')} {small}"
    return f"{decimal(scaled(number)) if number else '0'} {usual}"


def format_length(metres: float, *, unit: str = "mm", decimals: int | None = None) -> str:
    """Write a length in mm (or cm); below 10 mm with one decimal where there is one."""
    number = unit_named(unit).from_si(metres)
    usual = 1 if unit == "cm" or rounded(number, 1) < 10 else 0
    return f"{decimal(trimmed(number, usual if decimals is None else decimals))} {unit}"


def format_temperature(kelvin: float, *, decimals: int = 0) -> str:
    """Write a temperature in both degrees, which agree: 60 °C (140 °F)."""
    celsius = rounded(to_celsius(kelvin), decimals)
    fahrenheit = to_fahrenheit(unit_named("°C").to_si(float(celsius)))
    return f"{decimal(trimmed(float(celsius), decimals))} °C ({fixed(fahrenheit)} °F)"


def format_celsius(kelvin: float, *, decimals: int = 0) -> str:
    """Write a temperature in °C only."""
    return f"{decimal(trimmed(to_celsius(kelvin), decimals))} °C"


def format_duration(seconds: float) -> str:
    """Write a duration with at most two units: 45 s, 90 s, 35 min, 1 h 30 min, 2 days 4 h."""
    return " ".join(_short(number, unit) for number, unit in duration_parts(seconds))


def duration_parts(seconds: float) -> tuple[tuple[int, str], ...]:
    """Parts of a duration as it is written, each with its unit: s, min, h or day."""
    whole = int(rounded(seconds))
    if whole < 120:
        return ((whole, "s"),) if whole % 60 else ((whole // 60, "min"),)
    minutes = int(rounded(seconds / 60))
    if minutes < 48 * 60:
        return _parts(*divmod(minutes, 60), units=("h", "min"))
    return _parts(*divmod(int(rounded(seconds / 3600)), 24), units=("day", "h"))


def _parts(large: int, small: int, *, units: tuple[str, str]) -> tuple[tuple[int, str], ...]:
    """Two parts, without the one that is nothing."""
    return tuple(
        (number, unit) for number, unit in zip((large, small), units, strict=True) if number
    )


def _short(number: int, unit: str) -> str:
    """One part of a duration with the sign of its unit."""
    match unit:
        case "day":
            return say("{number} days", number=number)
        case "h":
            return say("{number} h", number=number)
        case "min":
            return say("{number} min", number=number)
    return say("{number} s", number=number)


def format_fraction(fraction: float, *, decimals: int | None = None) -> str:
    """Write a share in percent: 0.25 %, 2.5 %, 11 %."""
    number = unit_named("%").from_si(fraction)
    usual = 2 if abs(number) < 1 else 1 if abs(number) < 10 else 0
    return f"{decimal(trimmed(number, usual if decimals is None else decimals))} %"


def format_density(kilograms_per_cubic_metre: float) -> str:
    """Write a density: 0.62 g/ml."""
    return f"{decimal(fixed(unit_named('g/ml').from_si(kilograms_per_cubic_metre), 2))} g/ml"


def format_mass_per_area(kilograms_per_square_metre: float) -> str:
    """Write a mass per area: 0.11 g/cm²."""
    number = unit_named("g/cm²").from_si(kilograms_per_square_metre)
    return f"{decimal(trimmed(number, 3))} g/cm²"


def format_area(square_metres: float) -> str:
    """Write an area: 77 cm²."""
    return f"{decimal(trimmed(square_metres * 1e4, 1 if square_metres < 1e-3 else 0))} cm²"


def format_ounces(kilograms: float) -> str:
    """Write a mass in ounces, from a pound up in pounds and ounces: 3½ oz, 1 lb 4 oz."""
    pound, ounce = unit_named("lb"), unit_named("oz")
    if kilograms < 16 * ounce.factor - _step(15.0) * ounce.factor / 2:
        return f"{_ounces(kilograms, ounce)} oz"
    pounds, left = divmod(round(ounce.from_si(kilograms) * 2) / 2, 16)
    rest = f"{mixed_text(left)} oz" if left else ""
    said = [f"{pounds:.0f} lb" if pounds else "", rest]
    return " ".join(part for part in said if part) or f"0 {pound.name}"


def _ounces(kilograms: float, ounce: Unit) -> str:
    """Write ounces in steps that a scale in ounces shows."""
    number = ounce.from_si(kilograms)
    step = _step(number)
    if number and number < step / 2:
        return decimal(f"{number:.1g}")
    return decimal(mixed_text(round(number / step) * step))


def _step(ounces: float) -> float:
    """Smallest step worth writing: an eighth below one ounce, a quarter below eight."""
    return 0.125 if ounces < 1 else 0.25 if ounces < 8 else 0.5
