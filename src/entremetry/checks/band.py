"""Where a quantity should lie, and where it fails."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from math import inf, isfinite


class Outcome(StrEnum):
    """What a bench check finds."""

    PASS = "pass"
    CAUTION = "caution"
    FAIL = "fail"


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """Good from `low` to `high`, ends included; fails below `fails_below` or above `fails_above`.

    All in `unit`; what has no end is infinite. Between good and failing lies caution.
    """

    unit: str
    low: float = -inf
    high: float = inf
    fails_below: float = -inf
    fails_above: float = inf

    def __post_init__(self) -> None:
        """Refuse ends that are out of order."""
        if not self.fails_below <= self.low <= self.high <= self.fails_above:
            raise ValueError(f"the ends of a band stand in the wrong order: {self}")

    def outcome(self, value: float) -> Outcome:
        """Which of the three a value gives."""
        if self.low <= value <= self.high:
            return Outcome.PASS
        if self.fails_below <= value <= self.fails_above:
            return Outcome.CAUTION
        return Outcome.FAIL

    def is_low(self, value: float) -> bool:
        """Whether a value errs on the low side, or is nearer to it."""
        return self.margin_low(value) < self.margin_high(value)

    def limit(self, value: float) -> float:
        """The end of the good part that a value is nearest to, or has crossed."""
        return self.low if self.is_low(value) else self.high

    def margin(self, value: float) -> float:
        """How far inside, in widths of the caution beside it: below 0 caution, below -1 failing."""
        return min(self.margin_low(value), self.margin_high(value))

    def margin_low(self, value: float) -> float:
        """The margin on the low side alone; infinite if that side is open."""
        return inf if not isfinite(self.low) else (value - self.low) / self._width(low=True)

    def margin_high(self, value: float) -> float:
        """The margin on the high side alone; infinite if that side is open."""
        return inf if not isfinite(self.high) else (self.high - value) / self._width(low=False)

    def _width(self, *, low: bool) -> float:
        width = self.low - self.fails_below if low else self.fails_above - self.high
        if isfinite(width) and width > 0.0:
            return width
        return max(abs(self.low if low else self.high), 1.0)
