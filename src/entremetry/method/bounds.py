"""Fields of a step that have bounds of their own, refused in words."""

from __future__ import annotations

from typing import Annotated

from pydantic import AfterValidator, PlainValidator, WithJsonSchema

from entremetry.documents.tree import shown
from entremetry.errors import QuantityError
from entremetry.formula.loss import HIGHEST_BRIX
from entremetry.quantities.fields import Fraction
from entremetry.words import decimal, say


def _some(names: tuple[str, ...]) -> tuple[str, ...]:
    if not names:
        raise QuantityError(say("an empty list"), say("the names of lines or bowls"))
    return names


def _below_whole(fraction: float) -> float:
    if fraction >= 1.0:
        raise QuantityError(decimal(f"{fraction * 100:g} %"), say("a share below 100 %"))
    return fraction


def _up_to_whole(fraction: float) -> float:
    if fraction > 1.0:
        raise QuantityError(decimal(f"{fraction * 100:g} %"), say("a share of 0 % to 100 %"))
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
        raise _no_brix(found) from None
    if isinstance(found, bool) or not 0.0 < value <= HIGHEST_BRIX:
        raise _no_brix(found)
    return value


def _no_brix(found: object) -> QuantityError:
    accepted = say("degrees Brix above 0, up to {most}, such as 65", most=f"{HIGHEST_BRIX:g}")
    return QuantityError(shown(found), accepted)


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
