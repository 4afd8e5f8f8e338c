"""Quantities as pydantic fields: the document says '240 g', the model holds 0.24.

This module alone of the room loads pydantic, so the room does not re-export it.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated

from pydantic import PlainValidator, WithJsonSchema

from entremetry.quantities import parsing
from entremetry.quantities.amount import Amount as _Amount
from entremetry.quantities.unit import Measures

_STARTS_WITH_NUMBER = r"^\s*[-−]?\s*[0-9.¼½¾⅓⅔⅛⅜⅝⅞]"
_WITH_UNIT = _STARTS_WITH_NUMBER + r".*[^\s0-9]\s*$"


def _zero(parse: Callable[..., float]) -> Callable[[str], float]:
    """Let a parser accept zero."""

    def parse_from_zero(text: str) -> float:
        return parse(text, zero=True)

    return parse_from_zero


def _schema(pattern: str, description: str, *examples: str) -> WithJsonSchema:
    """Describe a quantity as the text it is in the document."""
    return WithJsonSchema(
        {
            "type": "string",
            "pattern": pattern,
            "description": description,
            "examples": list(examples),
        }
    )


def _written_amount(text: str) -> str:
    """Keep the text of an amount after a check that it can be read in some country."""
    parsed = _readable(text)
    return " ".join(text.split()) if parsed else text


def _readable(text: str) -> _Amount:
    """Read an amount; whose cups are meant is settled later, by the document."""
    return parsing.parse_amount(text, Measures.US)


_MASS = _schema(_WITH_UNIT, "A mass with its unit.", "240 g", "1.2 kg", "8 oz")
_LENGTH = _schema(_WITH_UNIT, "A length with its unit.", "60 mm", "6 cm", "2 1/2 in")

Mass = Annotated[float, PlainValidator(parsing.parse_mass), _MASS]
MassFromZero = Annotated[float, PlainValidator(_zero(parsing.parse_mass)), _MASS]
Volume = Annotated[
    float,
    PlainValidator(parsing.parse_volume),
    _schema(_WITH_UNIT, "A volume with its unit.", "75 ml", "1.2 l", "1 us cup"),
]
Length = Annotated[float, PlainValidator(parsing.parse_length), _LENGTH]
LengthFromZero = Annotated[float, PlainValidator(_zero(parsing.parse_length)), _LENGTH]
Temperature = Annotated[
    float,
    PlainValidator(parsing.parse_temperature),
    _schema(
        r"^\s*([-−]?\s*[0-9.]+.*[CFKcfk]\w*|[Gg]as.*)\s*$",
        "A temperature with its unit.",
        "82 °C",
        "-18 °C",
        "180 °F",
        "gas mark 4",
    ),
]
TemperatureDifference = Annotated[
    float,
    PlainValidator(parsing.parse_temperature_difference),
    _schema(_WITH_UNIT, "A difference of temperature with its unit.", "5 °C", "9 °F"),
]
Duration = Annotated[
    float,
    PlainValidator(parsing.parse_duration),
    _schema(_WITH_UNIT, "A duration with its unit.", "90 min", "1 h 30 min", "2 days"),
]
Fraction = Annotated[
    float,
    PlainValidator(parsing.parse_fraction),
    _schema(_WITH_UNIT, "A share in percent.", "11 %", "2.5 %"),
]
Density = Annotated[
    float,
    PlainValidator(parsing.parse_density),
    _schema(_WITH_UNIT, "A density with its unit.", "0.6 g/ml", "620 kg/m³"),
]
Area = Annotated[
    float,
    PlainValidator(parsing.parse_area),
    _schema(_WITH_UNIT, "An area with its unit.", "120 cm²", "0.1 m2"),
]
MassPerArea = Annotated[
    float,
    PlainValidator(parsing.parse_mass_per_area),
    _schema(_WITH_UNIT, "A mass per area with its unit.", "0.1 g/cm²"),
]
AmountText = Annotated[
    str,
    PlainValidator(_written_amount),
    _schema(
        _STARTS_WITH_NUMBER,
        "A mass, a volume or a count of things.",
        "240 g",
        "120 ml",
        "1 1/2 tbsp",
        "2 sheets",
        "1 pod",
    ),
]
"""An amount kept as text: `parse_amount` reads it once the document's measures are known."""
