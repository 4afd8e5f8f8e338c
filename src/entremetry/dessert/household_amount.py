"""A mass of an ingredient in the reader's household measures."""

from __future__ import annotations

from dataclasses import replace

from entremetry.dessert.region import is_elsewhere
from entremetry.larder.ingredient import HouseholdWeight, Ingredient
from entremetry.quantities import UNITS, Household, Kind, MeasureWeight, Method, household

PARTS_OF_EGGS = {"egg-white": ("white", "whites"), "egg-yolk": ("yolk", "yolks")}
NO_SPOONS = frozenset({"weigh-only", "gelling"})
SPOONS = "spoons"
"""Measures of a kitchen without cups: spoons of 15 and 5 ml, a jug, else the scales."""
MOST_SPOONED = 48e-6  # m3, three tablespoons and a little


def household_amount(mass: float, ingredient: Ingredient, measures: str) -> Household:
    """Household words for so much [kg] of an ingredient, with how far they drift.

    Plain cups and spoons come first; if the ingredient is only known in some state (sliced,
    whipped), that state is said.
    """
    if measures == SPOONS:
        return _without_cups(mass, ingredient)
    here = tuple(w for w in ingredient.household if not is_elsewhere(w.measure, measures))
    plain, state = _one_state(here)
    amount = household(
        mass,
        weights=[_weight(weight) for weight in plain],
        system=measures,
        weigh_only=bool(NO_SPOONS & ingredient.tags),
        density=ingredient.density,
    )
    if amount.method is Method.COUNTED and ingredient.id in PARTS_OF_EGGS:
        one, many = PARTS_OF_EGGS[ingredient.id]
        part = one if amount.text.startswith("1 ") else many
        return replace(amount, text=f"{part} of {amount.text}")
    if not state or amount.text.startswith("weigh"):
        return amount
    return replace(amount, text=f"{amount.text}, {state}")


def _without_cups(mass: float, ingredient: Ingredient) -> Household:
    """Spoons as far as they go; beyond, what a jug or the scales say."""
    amount = household_amount(mass, ingredient, "metric")
    if amount.method is not Method.SPOONS or max(_volumes(mass, ingredient)) <= MOST_SPOONED:
        return amount
    no_cups = tuple(w for w in ingredient.household if _volume(_plain(w)) is None)
    return household_amount(mass, replace(ingredient, household=no_cups), "metric")


def _volumes(mass: float, ingredient: Ingredient) -> list[float]:
    """Volumes of a mass, by each of the cups and spoons it is known in. [m3]"""
    known = ((weight, _volume(_plain(weight))) for weight in ingredient.household)
    return [mass * weight.amount / weight.mass * volume for weight, volume in known if volume]


def _plain(weight: HouseholdWeight) -> str:
    """A measure without the state it is for."""
    return weight.measure.partition(",")[0]


def _one_state(weights: tuple[HouseholdWeight, ...]) -> tuple[tuple[HouseholdWeight, ...], str]:
    """Weights that go together, and the state they are for, if it is not the plain one."""
    plain = tuple(weight for weight in weights if "," not in weight.measure)
    if any(_volume(weight.measure) for weight in plain):
        return plain, ""
    states = [weight.measure.partition(",")[2].strip() for weight in weights if weight not in plain]
    if not states:
        return plain, ""
    chosen = states[0]
    stated = tuple(
        replace(weight, measure=weight.measure.partition(",")[0])
        for weight in weights
        if weight.measure.partition(",")[2].strip() == chosen
    )
    return (*plain, *stated), chosen


def _weight(weight: HouseholdWeight) -> MeasureWeight:
    return MeasureWeight(
        measure=weight.measure,
        volume=_volume(weight.measure),
        mass=weight.mass / weight.amount,
    )


def _volume(measure: str) -> float | None:
    """Volume of a cup or spoon [m3]; None for a counted thing."""
    return _VOLUMES.get(measure)


_VOLUMES = {unit.name: unit.factor for unit in UNITS if unit.kind is Kind.VOLUME}
