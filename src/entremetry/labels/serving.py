"""The American serving: a household measure of discrete units with its mass."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from entremetry.labels.declared import nearest
from entremetry.words import decimal, say

FRACTIONS = frozenset(n * k for n in (2, 3, 4, 5, 6) for k in (1, 2, 3))
"""Parts into which a whole may be divided on a label: halves to sixths, or those in two or
three; 21 CFR 101.9(b)(5), from_memory."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Serving:
    """What one person is taken to eat: the household measure, its mass [kg], how many there are."""

    household: str
    mass: float
    per_container: int
    note: str = ""


def serving(piece_mass: float, serves: int, *, one: str) -> Serving:
    """Serving of a piece that `serves` so many; `one` names a whole piece: 'piece', 'glass'."""
    if serves == 1:
        return Serving(household=f"1 {one}", mass=piece_mass, per_container=1)
    note = (
        ""
        if serves in FRACTIONS
        else say(
            "1/{serves} is no fraction that a label may use; choose one of the nearest.",
            serves=serves,
        )
    )
    return Serving(
        household=f"1/{serves} {one}",
        mass=piece_mass / serves,
        per_container=serves,
        note=note,
    )


def metric_mass(kilograms: float) -> str:
    """Mass of a serving: whole grams, halves from 2 to 5 g, tenths below; from_memory."""
    grams = kilograms * 1e3
    step = "0.1" if grams < 2.0 else "0.5" if grams < 5.0 else "1"
    number = nearest(grams, step)
    whole = number == number.to_integral_value()
    return f"{decimal(f'{number.quantize(Decimal(1)) if whole else number:f}')} g"
