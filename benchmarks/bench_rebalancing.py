"""A formula of twelve ingredients rebalanced after a swap, against one linear program."""

from __future__ import annotations

import numpy as np
from figure import Figure, median_seconds
from scipy.optimize import linprog

from entremetry.formula.gelatine_swap import strength
from entremetry.formula.measures import MEASURES, USUAL
from entremetry.formula.rebalancing import rebalanced
from entremetry.formula.state import PARTS, state_of
from entremetry.formula.wish import FormulaLine, Problem, kept
from entremetry.physics.gelatine import BloomRule
from entremetry.store.larder_file import open_larder

FORMULA = {
    "gelatine-sheet-gold": 9.0,
    "raspberry-puree": 250.0,
    "strawberry-puree": 100.0,
    "lemon-juice": 12.0,
    "caster-sugar": 55.0,
    "glucose-syrup-42de": 20.0,
    "egg-yolk": 60.0,
    "whole-milk": 120.0,
    "cream-35": 320.0,
    "mascarpone": 60.0,
    "couverture-white-30": 80.0,
    "kirsch-45": 12.0,
}
SWAPPED = {"cream-35": "cream-30", "couverture-white-30": "couverture-dark-55"}


def line(ingredient_id: str, grams: float) -> FormulaLine:
    """A line of the larder."""
    found = open_larder().find(ingredient_id)
    adds = state_of(found.composition, strength(found, BloomRule.LINEAR))
    return FormulaLine(name=found.id, mass=grams / 1e3, adds=tuple(float(part) for part in adds))


def problem() -> Problem:
    """Keep what is usually kept, and the ice, after two swaps."""
    before = sum(
        np.array(each.adds) * each.mass for each in (line(n, g) for n, g in FORMULA.items())
    )
    values = {name: MEASURES[name].value(before) for name in (*USUAL, "ice")}
    wishes = tuple(kept(MEASURES[n], v, firm=n != "fat") for n, v in values.items() if v)
    lines = tuple(line(SWAPPED.get(name, name), grams) for name, grams in FORMULA.items())
    return Problem(lines=lines, fixed=(0.0,) * len(PARTS), wishes=wishes)


def one_linear_program() -> object:
    """Twelve masses under eight demands, nothing else."""
    rows = np.random.default_rng(1).random((8, len(FORMULA)))
    return linprog(np.ones(len(FORMULA)), A_ub=-rows, b_ub=-np.ones(8), method="highs")


def measure(rounds: int = 30) -> Figure:
    """Time the balance, with proof that it can be met."""
    asked = problem()
    return Figure(
        name=f"a formula of {len(FORMULA)} ingredients rebalanced",
        seconds=median_seconds(lambda: rebalanced(asked), rounds),
        reference="one linear program of that size (HiGHS)",
        reference_seconds=median_seconds(one_linear_program, rounds),
        target=0.200,
    )
