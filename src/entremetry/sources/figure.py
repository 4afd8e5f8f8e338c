"""A computed number that can say where it came from."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A value in SI units with its interval, its reason and its source keys."""

    value: float
    unit: str
    because: str
    sources: tuple[str, ...] = ()
    relative_error: float = 0.0

    @property
    def low(self) -> float:
        """Lower end of the interval, same unit as the value."""
        return self.value * (1.0 - self.relative_error)

    @property
    def high(self) -> float:
        """Upper end of the interval, same unit as the value."""
        return self.value * (1.0 + self.relative_error)
