"""The range in which a formula holds, as data."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.errors import OutsideRange
from entremetry.words import decimal, say, say_as

QUANTITY = "quantity"
"""What the words of a quantity are told apart by, in the catalogues."""


@dataclass(frozen=True, slots=True)
class Range:
    """Closed interval of one quantity in SI units, and the source that states it."""

    quantity: str
    low: float
    high: float
    unit: str
    source: str

    def covers(self, value: object) -> bool:
        """Tell whether a number, or every number of an array, lies inside."""
        if isinstance(value, float):
            return bool(self.low <= value <= self.high)
        import numpy as np

        values = np.asarray(value, dtype=float)
        return bool(np.all((values >= self.low) & (values <= self.high)))

    def require(self, value: object) -> None:
        """Raise OutsideRange unless the range covers `value`."""
        if not self.covers(value):
            raise OutsideRange(
                say(
                    "{quantity} {value} {unit} is outside {low} to {high} {unit} ({source})",
                    quantity=say_as(QUANTITY, self.quantity),
                    value=value,
                    unit=self.unit,
                    low=decimal(f"{self.low:g}"),
                    high=decimal(f"{self.high:g}"),
                    source=self.source,
                )
            )
