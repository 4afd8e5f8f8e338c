"""A part of what is in a bowl: a mass, or a percentage of it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from pydantic import PlainValidator, WithJsonSchema

from entremetry.errors import QuantityError
from entremetry.quantities.parsing import parse_fraction, parse_mass
from entremetry.words import say


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """Either a `mass` [kg] or a `fraction` of the whole."""

    mass: float | None = None
    fraction: float | None = None

    def of(self, whole: float) -> float:
        """Mass of this part of `whole` kg. [kg]"""
        if self.mass is not None:
            return self.mass
        return (self.fraction or 0.0) * whole

    def scaled(self, factor: float) -> Part:
        """Part of a batch `factor` times as large."""
        return self if self.mass is None else Part(mass=self.mass * factor)


def part(found: object) -> Part:
    """Read '4 %' or '12 g'.

    Raises
    ------
    QuantityError
        If it is neither.
    """
    if isinstance(found, Part):
        return found
    if not isinstance(found, str):
        accepted = say("a mass such as '12 g' or a percentage such as '4 %'")
        raise QuantityError(repr(found), accepted)
    if found.rstrip().endswith(("%", "percent", "per cent")):
        return Part(fraction=parse_fraction(found))
    return Part(mass=parse_mass(found, zero=True))


Share = Annotated[
    Part,
    PlainValidator(part),
    WithJsonSchema({"type": "string", "examples": ["4 %", "12 g"]}),
]
