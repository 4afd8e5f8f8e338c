"""What is asked of a formula: its lines, what may change in them, and what shall hold."""

from __future__ import annotations

import math
from dataclasses import dataclass

from entremetry.errors import BalanceError
from entremetry.formula.measure import Measure
from entremetry.formula.state import PARTS
from entremetry.words import say


@dataclass(frozen=True, slots=True, kw_only=True)
class FormulaLine:
    """One line: its name, its mass before [kg], and what a kg of it adds to the finished mix.

    `low` and `high` [kg] are the bounds its author set; equal to each other they pin it.
    """

    name: str
    mass: float
    adds: tuple[float, ...]
    low: float = 0.0
    high: float = math.inf

    def __post_init__(self) -> None:
        if len(self.adds) != len(PARTS):
            raise BalanceError(
                say(
                    "{name}: a line adds {wanted} parts, not {found}",
                    name=self.name,
                    wanted=len(PARTS),
                    found=len(self.adds),
                )
            )
        if not (self.mass > 0.0 and math.isfinite(self.mass)):
            told = say("{name}: a line starts from a mass above zero", name=self.name)
            raise BalanceError(told)
        if not 0.0 <= self.low <= self.high:
            told = say("{name}: bounds are two masses, the lower one first", name=self.name)
            raise BalanceError(told)

    @property
    def is_pinned(self) -> bool:
        """Tell whether the author left no room."""
        return self.low == self.high


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """A measure, the value to aim at, and the ends within which it shall lie.

    A `firm` wish must be met; one that is not firm gives way if it has to.
    """

    measure: Measure
    aim: float
    low: float
    high: float
    firm: bool = True

    def __post_init__(self) -> None:
        if not self.low <= self.aim <= self.high:
            named = say(self.measure.words)
            raise BalanceError(say("{name}: the aim lies between its ends", name=named))

    def holds(self, value: float | None) -> bool:
        """Tell whether a value lies within the ends; a breath of rounding is allowed."""
        ends = [abs(end) for end in (self.low, self.high) if math.isfinite(end)]
        slack = 1e-6 * max([*ends, 1e-3])
        return value is not None and self.low - slack <= value <= self.high + slack


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """Lines, what is in the finished mix whatever their masses are [kg], and the wishes."""

    lines: tuple[FormulaLine, ...]
    fixed: tuple[float, ...]
    wishes: tuple[Wish, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Conflict:
    """The fewest demands that cannot be met together.

    `proved` tells that no formula can meet them; otherwise none was found.
    """

    demands: tuple[str, ...]
    proved: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Solution:
    """Masses of the lines in their order [kg], or the conflict that leaves none."""

    masses: tuple[float, ...]
    gave_way: tuple[str, ...] = ()
    conflict: Conflict | None = None


def kept(measure: Measure, value: float, *, firm: bool) -> Wish:
    """Wish that a measure stays where it is, within its tolerance."""
    half = measure.tolerance(value)
    return Wish(measure=measure, aim=value, low=value - half, high=value + half, firm=firm)
