"""Temperatures and their differences, gas marks included."""

from __future__ import annotations

import re

from entremetry.errors import QuantityError
from entremetry.quantities.limits import require
from entremetry.quantities.number import number
from entremetry.quantities.spelling import nearest_units, unit_called, unit_named
from entremetry.quantities.terms import a_range, tidy, without_unit
from entremetry.quantities.unit import Kind, Unit
from entremetry.words import decimal, quoted, say, say_later

ZERO_CELSIUS = 273.15
_ACCEPTED = say_later("a temperature with its unit, such as 60 °C, 140 °F or gas mark 4")
_DIFFERENCE = say_later("a difference of temperature with its unit, such as 5 °C or 9 °F")
_GAS_MARK = re.compile(r"gas(?: mark)? ?(.+)", re.IGNORECASE)
_SIGNED = re.compile(r"([-−–+]?) ?([0-9][0-9., /⁄]*|[.][0-9]+|[0-9 ]*[¼½¾]) ?(\D.*)?")
_LETTERS = {"C": "°C", "F": "°F", "° C": "°C", "° F": "°F", "℃": "°C", "℉": "°F"}
_LOW_GAS_MARKS = {0.25: 225.0, 0.5: 250.0}


def parse_temperature(text: str) -> float:
    """Read a temperature; a letter alone is a degree here: '60 C'. [K]"""
    tidied = tidy(text, say(_ACCEPTED))
    gas = _GAS_MARK.fullmatch(tidied)
    if gas:
        return gas_mark(number(gas[1]))
    value, unit = _signed(tidied, say(_ACCEPTED))
    return require(Kind.TEMPERATURE, unit.to_si(value), tidied)


def parse_temperature_difference(text: str) -> float:
    """Read a difference of temperature: 25 °F is 13.9 K, not -3.9 °C. [K]"""
    tidied = tidy(text, say(_DIFFERENCE))
    value, unit = _signed(tidied, say(_DIFFERENCE))
    return require(Kind.TEMPERATURE_DIFFERENCE, value * unit.factor, tidied)


def gas_mark(mark: float) -> float:
    """Return the temperature that a gas mark stands for, about. [K]

    250 °F and 25 °F more for each mark from 1 to 9; below one the rule does not hold.
    The table is that of sizes_gas_mark; no standard defines the marks.
    """
    if mark in _LOW_GAS_MARKS:
        return unit_named("°F").to_si(_LOW_GAS_MARKS[mark])
    if mark not in range(1, 10):
        found = say("gas mark {number}", number=decimal(f"{mark:g}"))
        raise QuantityError(found, say("gas mark ¼, ½ or 1 to 9"))
    return unit_named("°F").to_si(250 + 25 * mark)


def to_celsius(kelvin: float) -> float:
    """Convert a temperature. [°C]"""
    return unit_named("°C").from_si(kelvin)


def to_fahrenheit(kelvin: float) -> float:
    """Convert a temperature. [°F]"""
    return unit_named("°F").from_si(kelvin)


def _signed(text: str, accepted: str) -> tuple[float, Unit]:
    """Read a number with its sign and its degree."""
    match = _SIGNED.fullmatch(text)
    if match is None:
        raise QuantityError(quoted(text) if text else say("an empty text"), accepted)
    sign, digits, words = match.groups()
    if not words:
        raise without_unit(text, accepted)
    if re.match(r"[-–—]|to\b", words):
        raise a_range(text, accepted)
    return number(digits) * (-1 if sign in {"-", "−", "–"} else 1), _degree(text, words, accepted)


def _degree(text: str, words: str, accepted: str) -> Unit:
    """Return the unit of a temperature."""
    unit = unit_called(_LETTERS.get(words.strip(), words))
    if unit is None or unit.kind is not Kind.TEMPERATURE:
        raise QuantityError(quoted(text), accepted, nearest_units(words, Kind.TEMPERATURE))
    return unit
