"""A value as a label prints it."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from entremetry.quantities.rounding import rounded
from entremetry.sources.range import Range
from entremetry.words import decimal, say

RANGE = Range("amount on a label", 0.0, 1e7, "g, mg, µg, kJ or kcal", "our_own")
"""Nothing on a label is negative or endless."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Declared:
    """A rounded value with its unit; `less_than` if the label says no more than that.

    With `up_to` the value is not known: it lies between the two, for a source leaves it blank.
    """

    number: Decimal
    unit: str
    less_than: bool = False
    up_to: Decimal | None = None

    def __str__(self) -> str:
        number = decimal(f"{self.number:f}")
        if self.less_than:
            return say("<{number} {unit}", number=number, unit=self.unit)
        if self.up_to is None:
            return f"{number} {self.unit}"
        highest = decimal(f"{self.up_to:f}")
        return say("{low} to {high} {unit}", low=number, high=highest, unit=self.unit)


def nearest(value: float, step: str) -> Decimal:
    """Round to the nearest multiple of a step, halves upwards.

    The regulations say 'nearest' and give no rule for a tie; halves go upwards here.
    """
    RANGE.require(value)
    unit = Decimal(step)
    return (rounded(float(Decimal(repr(float(value))) / unit)) * unit).normalize() + 0
