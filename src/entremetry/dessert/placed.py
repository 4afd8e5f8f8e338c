"""What lies in one cavity, and where: inserts and bases, and the soft parts around them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from entremetry.shapes import Solid, volume_within


@dataclass(frozen=True, slots=True, kw_only=True)
class Inclusion:
    """A solid part inside the cavity: an insert or a base. Levels in m above the closed end."""

    component: str
    name: str
    solid: Solid
    low: float
    aside: float = 0.0
    turned: bool = False
    is_base: bool = False

    @property
    def high(self) -> float:
        """Level of its upper face. [m]"""
        return self.low + self.solid.height

    def volume_between(self, low: float, high: float) -> float:
        """Its volume between two levels of the cavity. [m3]"""
        return volume_within(self.solid, self.low, self.turned, low, high)


@dataclass(frozen=True, slots=True, kw_only=True)
class Filled:
    """What a soft component takes up between two levels, around what is put in. SI units."""

    component: str
    name: str
    low: float
    high: float
    volume: float


@dataclass(frozen=True, slots=True, kw_only=True)
class InsertWall:
    """Thinnest place between an insert and the mould. [m]"""

    inclusion: Inclusion
    thinnest: float
    towards: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """One cavity with everything in it. SI units."""

    cavity: Solid
    inclusions: tuple[Inclusion, ...]
    filled: tuple[Filled, ...]
    walls: tuple[InsertWall, ...]
    free_height: float
    centred: tuple[str, ...]

    def fluid_between(
        self, low: float, high: float, around: Sequence[Inclusion] | None = None
    ) -> float:
        """Volume between two levels that none of the inclusions (all, if not said) takes. [m3]"""
        parts = self.inclusions if around is None else around
        return fluid(self.cavity, parts, low, high)


def fluid(cavity: Solid, inclusions: Sequence[Inclusion], low: float, high: float) -> float:
    """Volume of the cavity between two levels that none of the inclusions takes. [m3]"""
    whole = cavity.volume_below(high) - cavity.volume_below(low)
    return whole - sum(part.volume_between(low, high) for part in inclusions)
