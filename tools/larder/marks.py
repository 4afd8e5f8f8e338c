"""Density, packs and tags of an ingredient."""

from __future__ import annotations

from collections.abc import Iterable

from tables import listed

from entremetry.formula.density import CHOCOLATE_FAT, chocolate_density, liquid_density
from entremetry.formula.mix import Mix
from entremetry.larder import Constituents, HouseholdWeight, Ingredient, Pack, declared
from entremetry.larder.allergens import ANIMAL

US_CUP = 236.5882365e-6  # m3, exact
VOLUMES = {
    "us cup": US_CUP,
    "us quart": 4 * US_CUP,
    "us fl oz": US_CUP / 8,
    "us tbsp": US_CUP / 16,
    "us tsp": US_CUP / 48,
}
ANIMAL_CODES = declared(ANIMAL)[0]
STATES = (
    "us cup, unsifted",
    "us cup, dipped",
    "us cup, packed",
    "us cup, whole",
    "us cup, chips",
    "us cup, chopped",
    "us cup, pieces",
    "us cup, sliced",
    "us cup, halves",
    "us cup, pitted",
    "us cup, cubes",
    "us cup, diced",
    "us cup, sections",
    "us cup, frozen",
    "us cup, crushed",
    "us cup, crumbs",
    "us cup, shredded",
    "us cup, puréed",
)


def densities(
    measures: Iterable[HouseholdWeight], composition: Constituents, marks: Iterable[str]
) -> tuple[float, str]:
    """Density and its source: of chocolate by its fat, from a cup or spoon, or from the parts."""
    marked = set(marks)
    solid = "chocolate" in marked and "powder" not in marked
    if solid and CHOCOLATE_FAT.covers(composition.fat):
        return round(chocolate_density(composition.fat), 1), "banks_2012"
    known = {} if "puree" in marked else {weight.measure: weight for weight in measures}
    for name in (*VOLUMES, *STATES):
        if name in known:
            volume = VOLUMES.get(name, US_CUP)
            return round(known[name].one / volume, 1), known[name].source
    return round(liquid_density(Mix(constituents=composition)), 1), "choi_okos_1986"


def packs(cell: str) -> tuple[Pack, ...]:
    """Packs as written: 'block 250 g; sheet 2 g whole'."""
    return tuple(pack(part) for part in listed(cell))


def pack(text: str) -> Pack:
    """One pack: name, mass, and 'whole' if it is not divided."""
    words = text.split()
    whole = words[-1] == "whole"
    *name, grams, unit = words[:-1] if whole else words
    if unit != "g":
        raise SystemExit(f"no mass in grams: {text}")
    return Pack(name=" ".join(name), mass=float(grams) / 1000.0, whole=whole)


def tags(
    written: Iterable[str],
    allergens: frozenset[str],
    made: Constituents,
    parts: Iterable[Ingredient] = (),
) -> frozenset[str]:
    """Tags as written, with those that follow from European allergens, composition and parts."""
    found = set(written)
    if "milk" in allergens:
        found.add("dairy")
    if made.alcohol >= 0.005:
        found.add("alcoholic")
    from_animals = allergens & ANIMAL_CODES or "animal" in found
    if not from_animals and all("vegan" in part.tags for part in parts):
        found.add("vegan")
    return frozenset(found)
