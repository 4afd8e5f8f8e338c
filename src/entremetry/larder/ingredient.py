"""One ingredient: what it is made of, how it is measured, whom it may harm."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.errors import UnknownName
from entremetry.larder.constituents import Constituents


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseholdWeight:
    """What `amount` of a household measure weighs, in the words of its source.

    `measure` is a volume name ("us cup", "us tbsp", "us tsp", "us fl oz"), optionally with a
    state after a comma ("us cup, whipped"), or a counted thing ("sheet", "large egg", "pod").
    """

    measure: str
    amount: float
    mass: float
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Pack:
    """A unit in which an ingredient is bought; `whole` if it cannot be divided at use."""

    name: str
    mass: float
    whole: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Ingredient:
    """An ingredient of the larder; masses are of the edible part. Densities in kg/m3."""

    id: str
    name: str
    group: str
    composition: Constituents
    density: float
    source: str
    aliases: tuple[str, ...] = ()
    household: tuple[HouseholdWeight, ...] = ()
    packs: tuple[Pack, ...] = ()
    allergens_eu: frozenset[str] = frozenset()
    allergens_us: frozenset[str] = frozenset()
    tags: frozenset[str] = frozenset()
    not_reported: frozenset[str] = frozenset()
    sodium: float = 0.0
    energy: float | None = None
    refuse: float = 0.0
    bloom: float | None = None
    brix: float | None = None
    cocoa: float | None = None
    acidity: float | None = None
    overridden: frozenset[str] = frozenset()

    def mass_of(self, count: float, unit: str) -> float:
        """Mass of `count` counted things ("sheet", "pod", "large egg"). [kg]

        Raises
        ------
        UnknownName
            If no household weight of this ingredient is for that unit.
        """
        wanted = singular(unit)
        for weight in self.household:
            if singular(weight.measure) == wanted:
                return count * weight.mass / weight.amount
        raise UnknownName(
            f"measure of {self.name}", unit, [weight.measure for weight in self.household]
        )


def singular(word: str) -> str:
    """Counted thing without its plural ending, in lower case."""
    folded = word.strip().casefold()
    if folded in {"leaves"}:
        return "leaf"
    return folded[:-1] if folded.endswith("s") and not folded.endswith("ss") else folded
