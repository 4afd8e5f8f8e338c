"""Step 2 of the build, second half: what the trade uses and SR28 does not hold.

A row is either grams in 100 g, or made of others by one of four rules::

    raspberry 0.9 + caster-sugar 0.1             parts by mass, adding up to one
    skimmed-milk + butter-oil until milk_fat 35  two, mixed to that many grams in 100 g
    raspberry dried to 3                         water taken out until so much is left
    skimmed-milk-powder without fat              fat taken out
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from household import weight
from marks import densities, packs, tags
from nutrients import of_parts, ruled
from tables import Row, figures, listed

from entremetry.formula.brix import brix
from entremetry.formula.density import CHOCOLATE_FAT
from entremetry.formula.mix import Mix
from entremetry.larder import (
    NAMES,
    Constituents,
    HouseholdWeight,
    Ingredient,
    Nutrients,
    Part,
    declared,
)

Made = dict[str, float]
READ_BRIX = ("fruit purée", "fruit juice")
FAT_OF_COCOA_MASS = 0.5405  # migoya_2008: cocoa mass is this much cocoa butter, the rest dry cocoa
STANDS_FOR = {"_milk-solids": "skimmed-milk-powder", "_chestnut-dried": "chestnut-cooked"}


def shares(rule: str, larder: Mapping[str, Ingredient]) -> Made:
    """Mass of each part in one of the whole; drying and skimming take more than one of a part."""
    if " until " in rule:
        return until(rule, larder)
    parts = [part.rsplit(" ", 1) for part in rule.split(" + ")]
    found = {name: float(number) for name, number in parts}
    if abs(sum(found.values()) - 1.0) > 1e-9:
        raise SystemExit(f"parts do not add up to one: {rule}")
    return found


def until(rule: str, larder: Mapping[str, Ingredient]) -> Made:
    """Two parts mixed until a constituent is so many grams in 100 g."""
    pair, target = rule.split(" until ")
    lean, rich = pair.split(" + ")
    word, grams = target.split()
    low = float(getattr(larder[lean].composition, word))
    high = float(getattr(larder[rich].composition, word))
    share = (float(grams) / 100.0 - low) / (high - low)
    if not 0.0 <= share <= 1.0:
        raise SystemExit(f"cannot be reached: {rule}")
    return {lean: 1.0 - share, rich: share}


def taken_out(rule: str, larder: Mapping[str, Ingredient]) -> tuple[Constituents, float]:
    """Composition after drying or skimming, and how much of the start makes one of it."""
    if " dried to " in rule:
        name, grams = rule.split(" dried to ")
        start, left = larder[name].composition, float(grams) / 100.0
        factor = (1.0 - left) / (1.0 - start.water)
        return replace(start * factor, water=left), factor
    name = rule.removesuffix(" without fat")
    start = larder[name].composition
    factor = 1.0 / (1.0 - start.fat)
    return replace(start * factor, cocoa_butter=0.0, milk_fat=0.0, other_fat=0.0), factor


def source_of(rule: str) -> str:
    """The one ingredient that something is taken out of."""
    return rule.split(" dried to ")[0].removesuffix(" without fat")


def mixture(rule: str, larder: Mapping[str, Ingredient]) -> tuple[Constituents, Made]:
    """Composition and the masses of the parts it is made of."""
    if " dried to " in rule or rule.endswith(" without fat"):
        composition, factor = taken_out(rule, larder)
        return composition, {source_of(rule): factor}
    made = shares(rule, larder)
    total = Constituents()
    for name, share in made.items():
        total = total + larder[name].composition * share
    return total * (1.0 / total.total), made


def stated(cell: str) -> tuple[Constituents, float, float | None]:
    """Composition, sodium and saturates of a row that states grams in 100 g (sodium in mg)."""
    words = figures(cell)
    saturates = words.pop("saturates", None)
    sodium = words.pop("sodium", 0.0) / 1e5
    parts = {name: words.pop(name, 0.0) / 100.0 for name in NAMES}
    if words or abs(sum(parts.values()) - 1.0) > 1e-9:
        raise SystemExit(f"no composition: {cell}")
    return Constituents(**parts), sodium, None if saturates is None else saturates / 100.0


def contains(rule: str) -> tuple[Part, ...]:
    """What a compound is made of, for its list of ingredients; nothing if it is one thing.

    Dry cocoa and cocoa butter are written as cocoa mass and the cocoa butter that it lacks.
    """
    if " + " not in rule or " until " in rule:
        return ()
    found = {name: float(share) for name, share in (p.rsplit(" ", 1) for p in rule.split(" + "))}
    dry = found.pop("_dry-cocoa", 0.0)
    if dry:
        found["cocoa-mass"] = dry / (1.0 - FAT_OF_COCOA_MASS)
        found["cocoa-butter"] -= found["cocoa-mass"] * FAT_OF_COCOA_MASS
    return tuple(
        Part(id=STANDS_FOR.get(name, name), share=share)
        for name, share in found.items()
        if share > 1e-3
    )


def unknown(row: Row, parts: list[Ingredient], composition: Constituents) -> frozenset[str]:
    """What is not reported: what a part lacks; sodium of a row that names none but has ash."""
    silent = not row["made_of"] and "sodium" not in figures(row["per_100g"])
    own = {"sodium"} if silent and composition.ash > 0.0 else set()
    return frozenset(own).union(*(part.not_reported for part in parts))


def trade_ingredient(row: Row, extra: list[Row], larder: Mapping[str, Ingredient]) -> Ingredient:
    """Make the ingredient of one row."""
    made: Made = {}
    if row["made_of"]:
        composition, made = mixture(row["made_of"], larder)
        sodium = sum(larder[name].sodium * share for name, share in made.items())
        nutrients = of_parts(made, larder, row["made_of"])
    else:
        composition, sodium, saturates = stated(row["per_100g"])
        nutrients = Nutrients(saturates=saturates)
    parts = [larder[name] for name in made]
    measures = measured(row, extra, larder)
    known = figures(row["figures"])
    eu, us = declared(listed(row["allergens"]))
    eu = eu.union(*(part.allergens_eu for part in parts))
    us = us.union(*(part.allergens_us for part in parts))
    density, density_source = weighed(row, composition, measures, parts)
    acidity = sum((larder[n].acidity or 0.0) * share for n, share in made.items())
    made_up = Ingredient(
        id=row["id"],
        name=row["name"],
        group=row["group"],
        composition=composition,
        density=density,
        density_source=density_source,
        source=row["source"],
        aliases=listed(row["aliases"]),
        household=measures,
        packs=packs(row["packs"]),
        allergens_eu=eu,
        allergens_us=us,
        tags=tags(listed(row["tags"]), eu, composition, parts),
        not_reported=unknown(row, parts, composition),
        sodium=sodium,
        nutrients=nutrients,
        parts=() if row["id"] == "cocoa-mass" else contains(row["made_of"]),
        energy=energy(row["made_of"], made, larder),
        bloom=known.get("bloom"),
        brix=known.get("brix", brix_of(row, composition)),
        cocoa=known["cocoa"] / 100.0 if "cocoa" in known else None,
        acidity=acidity or composition.organic_acids or None,
        ph=known.get("ph"),
        dextrose_equivalent=known.get("dextrose_equivalent"),
        notes=tuple(
            note for note in (row["note"], said(row["made_of"]), said_of_brix(row)) if note
        ),
    )
    return replace(made_up, nutrients=ruled(made_up))


def said(rule: str) -> str:
    """The rule as a note."""
    return f"made of: {rule.replace('_', '')}" if rule else ""


def said_of_brix(row: Row) -> str:
    """Where the Brix of a purée or juice comes from."""
    read = row["group"] in READ_BRIX and "brix" not in figures(row["figures"])
    return "Brix computed from the composition, not read on a refractometer" if read else ""


def energy(rule: str, made: Made, larder: Mapping[str, Ingredient]) -> float | None:
    """Energy of the parts; None where something is taken out or a part does not tell."""
    known = {name: larder[name].energy for name in made}
    if not made or " dried to " in rule or rule.endswith(" without fat"):
        return None
    if any(value is None for value in known.values()):
        return None
    return sum((known[name] or 0.0) * share for name, share in made.items())


def measured(
    row: Row, extra: list[Row], larder: Mapping[str, Ingredient]
) -> tuple[HouseholdWeight, ...]:
    """Household weights of its own, then the cups and spoons of what it is measured like."""
    own = tuple(weight(e["measure"], e, e["source"], e["wording"]) for e in extra)
    names = {each.measure for each in own}
    lent = larder[row["measures_from"]].household if row["measures_from"] else ()
    return own + tuple(
        each for each in lent if each.measure.startswith("us ") and each.measure not in names
    )


def weighed(
    row: Row,
    composition: Constituents,
    measures: tuple[HouseholdWeight, ...],
    parts: list[Ingredient],
) -> tuple[float, str]:
    """Density and its source: written, of its fat, of a cup, of its one part, of its parts."""
    marks = listed(row["tags"])
    if row["density"] and not (
        row["id"].startswith("couverture") and CHOCOLATE_FAT.covers(composition.fat)
    ):
        published = row["source"] == "crc_handbook_102"
        return float(row["density"]), row["source"] if published else "from_memory"
    only = parts[0] if len(parts) == 1 and not measures else None
    if only is not None and "puree" not in marks and row["made_of"].endswith(" 1"):
        return only.density, only.density_source
    return densities(measures, composition, marks)


def brix_of(row: Row, composition: Constituents) -> float | None:
    """Brix of what is sold by it."""
    if row["group"] not in READ_BRIX:
        return None
    return round(brix(Mix(constituents=composition)), 1)
