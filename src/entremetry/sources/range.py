"""The range in which a formula holds, as data."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.errors import OutsideRange


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
                f"{self.quantity} {value} {self.unit} is outside "
                f"{self.low:g} to {self.high:g} {self.unit} ({self.source})"
            )
