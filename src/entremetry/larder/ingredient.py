"""One ingredient: what it is made of, how it is measured, whom it may harm."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.errors import UnknownName
from entremetry.larder.constituents import Constituents
from entremetry.larder.nutrients import Nutrients, Part
from entremetry.larder.spelling import singular


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseholdWeight:
    """What `amount` of a household measure weighs, in kg.

    `measure` is a volume name ("us cup", "us tbsp", "us tsp", "us fl oz"), optionally with a
    state after a comma ("us cup, whipped"), or a counted thing ("sheet", "pod",
    "large egg (US)"). `wording` is what the source itself prints.
    """

    measure: str
    amount: float
    mass: float
    source: str
    wording: str = ""

    @property
    def one(self) -> float:
        """Mass of one of the measure. [kg]"""
        return self.mass / self.amount


@dataclass(frozen=True, slots=True, kw_only=True)
class Pack:
    """A unit in which an ingredient is bought; `whole` if it cannot be divided at use."""

    name: str
    mass: float
    whole: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Ingredient:
    """An ingredient of the larder; masses are of the edible part.

    Composition, sodium, refuse, cocoa and acidity are mass fractions; acidity is the acid found
    by titration, counted as citric acid. Density is that of the ingredient as it stands in a
    measure, so of the heap for powders and pieces. [kg/m3] Energy is as its table reports it,
    in J/kg. Bloom is in grams, brix in degrees, the dextrose equivalent in g per 100 g of solids.
    `not_reported` names what the source leaves blank: there a zero means unknown. `parts` are what
    a bought compound is made of, as far as the larder knows. Where the cook states them,
    `contains` is that list in the words of a packet, and `label_name` what a list of ingredients
    calls it; `like` is the larder's ingredient that an own one started from.
    """

    id: str
    name: str
    group: str
    composition: Constituents
    density: float
    source: str
    density_source: str = ""
    aliases: tuple[str, ...] = ()
    household: tuple[HouseholdWeight, ...] = ()
    packs: tuple[Pack, ...] = ()
    allergens_eu: frozenset[str] = frozenset()
    allergens_us: frozenset[str] = frozenset()
    tags: frozenset[str] = frozenset()
    not_reported: frozenset[str] = frozenset()
    sodium: float = 0.0
    nutrients: Nutrients = Nutrients()
    parts: tuple[Part, ...] = ()
    like: str = ""
    label_name: str = ""
    contains: str = ""
    energy: float | None = None
    refuse: float = 0.0
    bloom: float | None = None
    brix: float | None = None
    cocoa: float | None = None
    acidity: float | None = None
    ph: float | None = None
    dextrose_equivalent: float | None = None
    notes: tuple[str, ...] = ()
    overridden: frozenset[str] = frozenset()

    @property
    def kind(self) -> str:
        """Id of the larder's ingredient that it is, or that it started from."""
        return self.like or self.id

    def mass_of(self, count: float, unit: str, region: str | None = None) -> float:
        """Mass of `count` counted things ("sheet", "pod", "large egg"). [kg]

        With a `region` ("us" or "eu") a thing that has a size class there is taken from it.

        Raises
        ------
        UnknownName
            If no household weight of this ingredient is for that unit.
        """
        wanted = singular(unit)
        known = {singular(weight.measure): weight for weight in self.household}
        found = known.get(f"{wanted} ({region})") or known.get(wanted)
        if found is None:
            measures = [weight.measure for weight in self.household]
            raise UnknownName("measure of {ingredient}", unit, measures, ingredient=self.name)
        return count * found.one

    def measures_of(self, thing: str) -> tuple[str, ...]:
        """Return the measures that are kinds of a counted thing: of 'egg', all egg sizes."""
        wanted = set(singular(thing).split())
        return tuple(
            weight.measure
            for weight in self.household
            if wanted <= set(singular(weight.measure).split())
        )
