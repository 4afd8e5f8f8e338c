"""What a formula is balanced by: a measure of a mix that a cook wants to keep or to change."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from entremetry.errors import OutsideRange
from entremetry.formula.freezing import free_water, ice_fraction, mix_freezing_point
from entremetry.formula.state import constituents_of, weights
from entremetry.words import say_as

if TYPE_CHECKING:
    from entremetry.physics.arrays import Floats

DRY = 0.03  # kg of free water per kg below which nothing is taken to freeze


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure(ABC):
    """One thing that can be kept: its name, how it is said, how far it may drift unnoticed.

    `relative` and `absolute` are half widths, of which the larger holds; `factor` and `offset`
    turn a value into `unit`, the one a cook reads; `key` is its name for scripts.
    """

    name: str
    words: str
    unit: str
    key: str
    relative: float = 0.0
    absolute: float = 0.0
    factor: float = 1.0
    offset: float = 0.0

    @property
    def said(self) -> str:
        """What it is called in the language that is spoken."""
        return say_as("constituent", self.words)

    @abstractmethod
    def value(self, state: Floats) -> float | None:
        """Value for a state, or None where there is none, as of ice without water."""

    def tolerance(self, value: float) -> float:
        """Half width within which a value counts as kept."""
        return max(self.relative * abs(value), self.absolute)

    def printed(self, value: float) -> float:
        """Value in the unit that a cook reads."""
        return value * self.factor + self.offset

    def read(self, printed: float) -> float:
        """Value of a number in the unit that a cook reads."""
        return (printed - self.offset) / self.factor


@dataclass(frozen=True, slots=True, kw_only=True)
class Share(Measure):
    """A sum of some parts per sum of others, or the sum itself if `per` is empty."""

    of: Mapping[str, float]
    per: Mapping[str, float]

    def value(self, state: Floats) -> float | None:
        """Value for a state; None if there is nothing of what it is counted on."""
        over = float(weights(self.of) @ state)
        under = float(weights(self.per) @ state) if self.per else 1.0
        return over / under if under > 0.0 else None


@dataclass(frozen=True, slots=True, kw_only=True)
class FreezingPoint(Measure):
    """Temperature at which the first ice appears. [K]"""

    def value(self, state: Floats) -> float | None:
        """Value for a state; None if it is too dry or too strong to say."""
        parts = constituents_of(state)
        try:
            return mix_freezing_point(parts) if _is_wet(state) else None
        except OutsideRange:
            return None


@dataclass(frozen=True, slots=True, kw_only=True)
class IceShare(Measure):
    """Part of the free water that is ice at one temperature. [kg/kg]"""

    temperature: float

    def value(self, state: Floats) -> float | None:
        """Value for a state; None if it is too dry or too strong to say."""
        parts = constituents_of(state)
        try:
            return ice_fraction(parts, self.temperature) if _is_wet(state) else None
        except OutsideRange:
            return None


def _is_wet(state: Floats) -> bool:
    parts = constituents_of(state)
    return free_water(parts) >= DRY * parts.total > 0.0
