"""A unit, and the kinds of quantity that units measure."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from entremetry.words import say_later


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


A_KIND: dict[Kind, str] = {
    Kind.MASS: say_later("a mass"),
    Kind.VOLUME: say_later("a volume"),
    Kind.LENGTH: say_later("a length"),
    Kind.AREA: say_later("an area"),
    Kind.TEMPERATURE: say_later("a temperature"),
    Kind.TEMPERATURE_DIFFERENCE: say_later("a temperature difference"),
    Kind.DURATION: say_later("a duration"),
    Kind.FRACTION: say_later("a fraction"),
    Kind.DENSITY: say_later("a density"),
    Kind.MASS_PER_AREA: say_later("a mass per area"),
    Kind.COUNT: say_later("a count"),
}
"""Each kind with its article, to be said."""


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
