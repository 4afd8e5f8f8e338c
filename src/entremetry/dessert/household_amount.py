"""A mass of an ingredient in the reader's household measures."""

from __future__ import annotations

from dataclasses import replace

from entremetry.dessert.region import is_elsewhere
from entremetry.larder.ingredient import HouseholdWeight, Ingredient
from entremetry.quantities import UNITS, Household, Kind, MeasureWeight, Method, household

PARTS_OF_EGGS = {"egg-white": ("white", "whites"), "egg-yolk": ("yolk", "yolks")}
NO_SPOONS = frozenset({"weigh-only", "gelling"})


def household_amount(mass: float, ingredient: Ingredient, measures: str) -> Household:
    """Household words for so much [kg] of an ingredient, with how far they drift.

    Plain cups and spoons come first; if the ingredient is only known in some state (sliced,
    whipped), that state is said.
    """
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
