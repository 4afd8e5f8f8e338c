"""What food is made of, by mass."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, fields
from operator import add, attrgetter, sub

from entremetry.words import say_as, say_as_later


@dataclass(frozen=True, slots=True, kw_only=True)
class Constituents:
    """Masses that add up to the whole.

    For an ingredient the numbers are mass fractions [kg/kg] and add up to one; for a mix they
    are masses [kg] and add up to its mass. Carbohydrate is held in parts: the named sugars,
    `unsplit_sugars` where the source gives only their total, polyols, starch, fibre, organic
    acids, and `other_carbohydrate` for the rest.
    """

    water: float = 0.0
    protein: float = 0.0
    cocoa_butter: float = 0.0
    milk_fat: float = 0.0
    other_fat: float = 0.0
    sucrose: float = 0.0
    glucose: float = 0.0
    fructose: float = 0.0
    lactose: float = 0.0
    maltose: float = 0.0
    galactose: float = 0.0
    trehalose: float = 0.0
    unsplit_sugars: float = 0.0
    polyols: float = 0.0
    starch: float = 0.0
    fibre: float = 0.0
    other_carbohydrate: float = 0.0
    organic_acids: float = 0.0
    alcohol: float = 0.0
    ash: float = 0.0

    def __add__(self, other: Constituents) -> Constituents:
        return _named(map(add, _AMOUNTS(self), _AMOUNTS(other)))

    def __sub__(self, other: Constituents) -> Constituents:
        return _named(map(sub, _AMOUNTS(self), _AMOUNTS(other)))

    def __mul__(self, factor: float) -> Constituents:
        return _named(amount * factor for amount in _AMOUNTS(self))

    @property
    def total(self) -> float:
        """Sum of all constituents."""
        return float(sum(_AMOUNTS(self)))

    @property
    def fat(self) -> float:
        """Cocoa butter, milk fat and other fat together."""
        return self.cocoa_butter + self.milk_fat + self.other_fat

    @property
    def sugars(self) -> float:
        """All mono- and disaccharides, named or not."""
        return float(sum(getattr(self, n) for n in SUGARS))

    @property
    def carbohydrate(self) -> float:
        """Carbohydrate by difference as food tables give it: with fibre and organic acids."""
        return (
            self.sugars
            + self.polyols
            + self.starch
            + self.fibre
            + self.other_carbohydrate
            + self.organic_acids
        )

    @property
    def dry_solids(self) -> float:
        """Everything but water and alcohol."""
        return self.total - self.water - self.alcohol


SUGARS = (
    "sucrose",
    "glucose",
    "fructose",
    "lactose",
    "maltose",
    "galactose",
    "trehalose",
    "unsplit_sugars",
)
NAMES = tuple(field.name for field in fields(Constituents))
_AMOUNTS = attrgetter(*NAMES)


def _named(amounts: Iterable[float]) -> Constituents:
    """Constituents of amounts in the order of their names."""
    return Constituents(**dict(zip(NAMES, amounts, strict=True)))


_SPOKEN = (
    say_as_later("constituent", "water"),
    say_as_later("constituent", "protein"),
    say_as_later("constituent", "cocoa butter"),
    say_as_later("constituent", "milk fat"),
    say_as_later("constituent", "other fat"),
    say_as_later("constituent", "sucrose"),
    say_as_later("constituent", "glucose"),
    say_as_later("constituent", "fructose"),
    say_as_later("constituent", "lactose"),
    say_as_later("constituent", "maltose"),
    say_as_later("constituent", "galactose"),
    say_as_later("constituent", "trehalose"),
    say_as_later("constituent", "unsplit sugars"),
    say_as_later("constituent", "polyols"),
    say_as_later("constituent", "starch"),
    say_as_later("constituent", "fibre"),
    say_as_later("constituent", "other carbohydrate"),
    say_as_later("constituent", "organic acids"),
    say_as_later("constituent", "alcohol"),
    say_as_later("constituent", "ash"),
)


def spoken(name: str) -> str:
    """A constituent in the language that is spoken."""
    return say_as("constituent", dict(zip(NAMES, _SPOKEN, strict=True))[name])
