"""Texts into SI numbers: '240 g', '60 °C', '1 h 30 min', '11 %'."""

from __future__ import annotations

from entremetry.errors import QuantityError
from entremetry.quantities.amount import Amount, counted
from entremetry.quantities.limits import require
from entremetry.quantities.spelling import nearest_units, unit_called
from entremetry.quantities.temperature import parse_temperature, parse_temperature_difference
from entremetry.quantities.terms import Term, terms, without_unit
from entremetry.quantities.unit import A_KIND, Kind, Measures, Unit
from entremetry.words import quoted, say, say_later

__all__ = [
    "parse_amount",
    "parse_area",
    "parse_density",
    "parse_duration",
    "parse_fraction",
    "parse_length",
    "parse_mass",
    "parse_mass_per_area",
    "parse_temperature",
    "parse_temperature_difference",
    "parse_volume",
]

_EXAMPLES: dict[Kind, str] = {
    Kind.MASS: say_later("a mass with its unit, such as 240 g"),
    Kind.VOLUME: say_later("a volume with its unit, such as 120 ml"),
    Kind.LENGTH: say_later("a length with its unit, such as 60 mm"),
    Kind.AREA: say_later("an area with its unit, such as 12 cm²"),
    Kind.DURATION: say_later("a duration with its unit, such as 90 min or 1 h 30 min"),
    Kind.FRACTION: say_later("a share in percent, such as 11 %"),
    Kind.DENSITY: say_later("a density with its unit, such as 0.6 g/ml"),
    Kind.MASS_PER_AREA: say_later("a mass per area with its unit, such as 0.1 g/cm²"),
}


def parse_mass(text: str, *, zero: bool = False) -> float:
    """Read a mass. [kg]"""
    return _parse(text, Kind.MASS, zero=zero)


def parse_volume(text: str, measures: Measures | str | None = None, *, zero: bool = False) -> float:
    """Read a volume; cups and spoons need to say whose they are. [m³]"""
    return _parse(text, Kind.VOLUME, measures=measures, zero=zero)


def parse_length(text: str, *, zero: bool = False) -> float:
    """Read a length. [m]"""
    return _parse(text, Kind.LENGTH, zero=zero)


def parse_area(text: str) -> float:
    """Read an area. [m²]"""
    return _parse(text, Kind.AREA)


def parse_duration(text: str) -> float:
    """Read a duration, which may be zero. [s]"""
    return _parse(text, Kind.DURATION)


def parse_fraction(text: str) -> float:
    """Read a share in percent, which may be zero or above one. [1]"""
    return _parse(text, Kind.FRACTION)


def parse_density(text: str) -> float:
    """Read a density. [kg/m³]"""
    return _parse(text, Kind.DENSITY)


def parse_mass_per_area(text: str) -> float:
    """Read a mass per area. [kg/m²]"""
    return _parse(text, Kind.MASS_PER_AREA)


def parse_amount(text: str, measures: Measures | str | None = None) -> Amount:
    """Read a mass, a volume or a count of things, as a line of a formula says it."""
    accepted = say("an amount, such as 240 g, 120 ml, 2 sheets or 3")
    parts = terms(text, accepted)
    units = [unit_called(part.words, measures) if part.words else None for part in parts]
    if units[0] is None:
        if len(parts) > 1:
            raise QuantityError(say("'{text}', more than one number", text=text), accepted)
        require(Kind.COUNT, parts[0].number, text)
        return counted(parts[0].number, parts[0].words)
    first = units[0]
    if first.kind not in {Kind.MASS, Kind.VOLUME}:
        raise QuantityError(_of_kind(text, first.kind), accepted)
    value = require(first.kind, _sum(text, parts, units, first.kind, accepted), text)
    return Amount(number=first.from_si(value), unit=first.name, kind=first.kind, si=value)


def _parse(
    text: str, kind: Kind, *, measures: Measures | str | None = None, zero: bool = False
) -> float:
    """Read a text of one kind and refuse what is absurd."""
    accepted = say(_EXAMPLES[kind])
    parts = terms(text, accepted)
    units = [_unit(text, part, kind, measures) for part in parts]
    return require(kind, _sum(text, parts, units, kind, accepted), text, zero=zero)


def _unit(text: str, part: Term, kind: Kind, measures: Measures | str | None) -> Unit | None:
    """Return the unit of a term; raise QuantityError if it has none."""
    if not part.words:
        raise without_unit(text, say(_EXAMPLES[kind]))
    unit = unit_called(part.words, measures)
    if unit is None:
        nearest = nearest_units(part.words, kind)
        raise QuantityError(quoted(text), say(_EXAMPLES[kind]), nearest)
    return unit


def _sum(
    text: str, parts: tuple[Term, ...], units: list[Unit | None], kind: Kind, accepted: str
) -> float:
    """Add up the terms of '1 h 30 min', which get smaller and are of one kind."""
    total, last = 0.0, float("inf")
    for part, unit in zip(parts, units, strict=True):
        if unit is None:
            found = say("'{text}', which is partly without a unit", text=text)
            raise QuantityError(found, accepted)
        if unit.kind is not kind:
            raise QuantityError(_of_kind(text, unit.kind), accepted)
        if unit.factor >= last:
            found = say("'{text}', whose parts are out of order", text=text)
            raise QuantityError(found, accepted)
        total, last = total + unit.to_si(part.number), unit.factor
    return total


def _of_kind(text: str, kind: Kind) -> str:
    """Say that a text is a quantity of another kind."""
    return say("'{text}', which is {kind}", text=text, kind=say(A_KIND[kind]))
