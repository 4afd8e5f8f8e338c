"""Household weights: the wording of SR28 brought to our measures."""

from __future__ import annotations

from tables import Row, read

from entremetry.larder import HouseholdWeight

MEASURES = {row["wording"]: row["measure"] for row in read("measures.csv")}
DISCARDED = {(row["ndb"], row["measure"]) for row in read("discarded.csv")}
THINGS = {"egg": "egg (US)", "fruit": "fruit"}


def household(chosen: Row, weights: list[Row], extra: list[Row]) -> tuple[HouseholdWeight, ...]:
    """Measures of one food; the first of two with one name stays."""
    found: dict[str, HouseholdWeight] = {}
    for row in weights:
        measure = MEASURES.get(row["measure"], "")
        thing = THINGS.get(chosen["group"])
        if (row["ndb"], row["measure"]) in DISCARDED:
            continue
        if not measure or ("{thing}" in measure and thing is None):
            continue
        named = measure.format(thing=thing)
        found.setdefault(named, weight(named, row, "usda_sr28", row["measure"]))
    for row in extra:
        found.setdefault(row["measure"], weight(row["measure"], row, row["source"], row["wording"]))
    return tuple(found.values())


def weight(measure: str, row: Row, source: str, wording: str) -> HouseholdWeight:
    """One household weight, in kg."""
    return HouseholdWeight(
        measure=measure,
        amount=float(row["amount"]),
        mass=float(row["grams"]) / 1000.0,
        source=source,
        wording=wording,
    )
