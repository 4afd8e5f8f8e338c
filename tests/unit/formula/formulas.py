"""Formulas of a small larder, as problems for the balance."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from entremetry.formula.gelatine_swap import strength
from entremetry.formula.measures import MEASURES, USUAL
from entremetry.formula.state import PARTS, state_of
from entremetry.formula.wish import FormulaLine, Problem, Solution, Wish, kept
from entremetry.larder.constituents import Constituents
from entremetry.larder.ingredient import Ingredient
from entremetry.physics.arrays import Floats
from entremetry.physics.gelatine import BloomRule

NOTHING_FIXED = (0.0,) * len(PARTS)


def _of(ingredient_id: str, bloom: float | None = None, **parts: float) -> Ingredient:
    parts["water"] = 1.0 - sum(parts.values())
    return Ingredient(
        id=ingredient_id,
        name=ingredient_id.replace("-", " "),
        group="test",
        composition=Constituents(**parts),
        density=1000.0,
        source="from_memory",
        bloom=bloom,
        tags=frozenset({"gelling"} if bloom else ()),
    )


CREAM_48 = _of("cream-48", milk_fat=0.48, protein=0.02, lactose=0.026)
CREAM_35 = _of("cream-35", milk_fat=0.35, protein=0.023, lactose=0.032)
CREAM_30 = _of("cream-30", milk_fat=0.30, protein=0.024, lactose=0.035)
MASCARPONE_45 = _of("mascarpone-45", milk_fat=0.45, protein=0.046, lactose=0.033)
MILK = _of("milk-3-5", milk_fat=0.035, protein=0.033, lactose=0.048, ash=0.007)
SUGAR = _of("sugar", sucrose=1.0)
PUREE = _of("puree", fructose=0.03, glucose=0.03, fibre=0.04, organic_acids=0.02)
SWEET_PUREE = _of(
    "sweet-puree", sucrose=0.1, fructose=0.027, glucose=0.027, fibre=0.036, organic_acids=0.018
)
GELATINE = _of("gelatine-200", bloom=200.0, protein=0.856, ash=0.013)
DARK_70 = _of("dark-70", cocoa_butter=0.42, sucrose=0.30, fibre=0.11, protein=0.08)
DARK_55 = _of("dark-55", cocoa_butter=0.36, sucrose=0.44, fibre=0.08, protein=0.06)
SPIRIT = _of("spirit", alcohol=0.334)


def line(
    ingredient: Ingredient, grams: float, low: float = 0.0, high: float = math.inf
) -> FormulaLine:
    """A line of so many grams, free between two ends in grams."""
    adds = state_of(ingredient.composition, strength(ingredient, BloomRule.LINEAR))
    return FormulaLine(
        name=ingredient.id,
        mass=grams / 1e3,
        adds=tuple(float(part) for part in adds),
        low=low / 1e3,
        high=high / 1e3,
    )


def state(lines: Sequence[FormulaLine], masses: Sequence[float] | None = None) -> Floats:
    """State of a formula, at its own masses or at others."""
    weighed = masses or [each.mass for each in lines]
    summed: Floats = sum(
        (np.array(each.adds) * mass for each, mass in zip(lines, weighed, strict=True)),
        np.zeros(len(PARTS)),
    )
    return summed


def value(name: str, lines: Sequence[FormulaLine], masses: Sequence[float] | None = None) -> float:
    """Value of a measure."""
    found = MEASURES[name].value(state(lines, masses))
    assert found is not None
    return found


def keep(name: str, lines: Sequence[FormulaLine], *, firm: bool = True) -> Wish:
    """Wish that a measure stays as it is in a formula."""
    return kept(MEASURES[name], value(name, lines), firm=firm)


def usual(lines: Sequence[FormulaLine], *, firm: bool) -> tuple[Wish, ...]:
    """Everything that is usually kept and that a formula has."""
    there = {name: MEASURES[name].value(state(lines)) for name in USUAL}
    return tuple(keep(name, lines, firm=firm) for name, found in there.items() if found)


def wish(name: str, aim: float, half: float) -> Wish:
    """Wish for another value."""
    return Wish(measure=MEASURES[name], aim=aim, low=aim - half, high=aim + half)


def problem(lines: Sequence[FormulaLine], wishes: Sequence[Wish]) -> Problem:
    """Problem of lines that nothing is added to."""
    return Problem(lines=tuple(lines), fixed=NOTHING_FIXED, wishes=tuple(wishes))


def grams(solution: Solution) -> list[float]:
    """Masses of a solution in grams."""
    return [mass * 1e3 for mass in solution.masses]


MOUSSE = (
    line(GELATINE, 8.0),
    line(SWEET_PUREE, 350.0),
    line(SUGAR, 50.0),
    line(CREAM_35, 300.0),
    line(DARK_70, 100.0),
)
