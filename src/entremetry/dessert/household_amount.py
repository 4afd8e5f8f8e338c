"""A mass of an ingredient in the reader's household measures."""

from __future__ import annotations

from dataclasses import replace

from entremetry.dessert.region import is_elsewhere
from entremetry.larder.ingredient import HouseholdWeight, Ingredient
from entremetry.quantities import UNITS, Household, Kind, MeasureWeight, Method, household
from entremetry.words import say, say_count, say_count_later, say_later

PARTS_OF_EGGS = {
    "egg-white": say_count_later("white of {eggs}", "whites of {eggs}"),
    "egg-yolk": say_count_later("yolk of {eggs}", "yolks of {eggs}"),
}
STATES = {
    state: state
    for state in (
        say_later("chips"),
        say_later("chopped"),
        say_later("crumbled"),
        say_later("crumbs"),
        say_later("crushed"),
        say_later("cubes"),
        say_later("diced"),
        say_later("dipped"),
        say_later("frozen"),
        say_later("grated"),
        say_later("ground"),
        say_later("halves"),
        say_later("leaves"),
        say_later("mashed"),
        say_later("packed"),
        say_later("pieces"),
        say_later("pitted"),
        say_later("puréed"),
        say_later("sections"),
        say_later("shredded"),
        say_later("sifted"),
        say_later("sliced"),
        say_later("slivered"),
        say_later("thawed"),
        say_later("unpacked"),
        say_later("unsifted"),
        say_later("whipped"),
        say_later("whole"),
    )
}
"""In what state the larder fills a cup; the state of an own ingredient stays as it is written."""
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
        part = PARTS_OF_EGGS[ingredient.id]
        return replace(amount, text=say_count(*part, amount.number or 1.0, eggs=amount.text))
    if not state or amount.method is Method.SCALES:
        return amount
    said = say(STATES[state]) if state in STATES else state
    return replace(amount, text=f"{amount.text}, {said}")


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
