"""Fields of a step that have bounds of their own, refused in words."""

from __future__ import annotations

from typing import Annotated

from pydantic import AfterValidator, PlainValidator, WithJsonSchema

from entremetry.errors import QuantityError
from entremetry.formula.loss import HIGHEST_BRIX
from entremetry.quantities.fields import Fraction

_BRIX = f"degrees Brix above 0, up to {HIGHEST_BRIX:g}, such as 65"


def _some(names: tuple[str, ...]) -> tuple[str, ...]:
    if not names:
        raise QuantityError("an empty list", "the names of lines or bowls")
    return names


def _below_whole(fraction: float) -> float:
    if fraction >= 1.0:
        raise QuantityError(f"{fraction * 100:g} %", "a share below 100 %")
    return fraction


def _up_to_whole(fraction: float) -> float:
    if fraction > 1.0:
        raise QuantityError(f"{fraction * 100:g} %", "a share of 0 % to 100 %")
    return fraction


def parse_brix(found: object) -> float:
    """Read 65, '65' or '65 °Brix'.

    Raises
    ------
    QuantityError
        If it is no number, or not above 0 and up to 88.
    """
    text = str(found).replace("°", " ").casefold().replace("brix", " ").strip()
    try:
        value = float(text)
    except ValueError:
        raise QuantityError(repr(found), _BRIX) from None
    if isinstance(found, bool) or not 0.0 < value <= HIGHEST_BRIX:
        raise QuantityError(repr(found), _BRIX)
    return value


Names = Annotated[tuple[str, ...], AfterValidator(_some)]
BelowWhole = Annotated[Fraction, AfterValidator(_below_whole)]
UpToWhole = Annotated[Fraction, AfterValidator(_up_to_whole)]
Brix = Annotated[
    float,
    PlainValidator(parse_brix),
    WithJsonSchema(
        {
            "anyOf": [
                {"type": "number", "exclusiveMinimum": 0, "maximum": HIGHEST_BRIX},
                {"type": "string", "examples": ["65 °Brix"]},
            ]
        }
    ),
]
