"""A unit, and the kinds of quantity that units measure."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Kind(StrEnum):
    """What a unit measures; the value is the word people read in a message."""

    MASS = "mass"
    VOLUME = "volume"
    LENGTH = "length"
    AREA = "area"
    TEMPERATURE = "temperature"
    TEMPERATURE_DIFFERENCE = "temperature difference"
    DURATION = "duration"
    FRACTION = "fraction"
    DENSITY = "density"
    MASS_PER_AREA = "mass per area"
    COUNT = "count"


class Measures(StrEnum):
    """Whose cups, spoons and fluid ounces are meant."""

    US = "us"
    METRIC = "metric"
    AU = "au"
    UK = "uk"


@dataclass(frozen=True, slots=True, kw_only=True)
class Unit:
    """One unit: SI value = number * factor + offset."""

    name: str
    kind: Kind
    factor: float
    source: str
    offset: float = 0.0
    spellings: tuple[str, ...] = ()

    def to_si(self, number: float) -> float:
        """Convert a number of this unit into SI."""
        return number * self.factor + self.offset

    def from_si(self, value: float) -> float:
        """Convert an SI value into a number of this unit."""
        return (value - self.offset) / self.factor
