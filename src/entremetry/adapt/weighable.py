"""Masses as a kitchen can weigh them."""

from __future__ import annotations

from collections.abc import Sequence

COARSE, FINE, EXACT = 1.0, 0.1, 1e-4
FINENESS = (COARSE, FINE, EXACT)
"""Whole grams from 100 g, tenths from 5 g, hundredths below; then ten times finer; then all."""
GRAM = 1e-3
HARDLY = 0.025  # part of a mass that is not worth a change


def weighable(mass: float, fineness: float) -> float:
    """Mass rounded to what a scale shows. [kg]"""
    step = GRAM * fineness * (1.0 if mass >= 0.1 else 0.1 if mass >= 0.005 else 0.01)
    return round(round(mass / step) * step, 12)


def settled(masses: Sequence[float], starts: Sequence[float]) -> list[float]:
    """Masses of which those that hardly moved are what they were."""
    return [
        start if abs(mass - start) <= HARDLY * start else mass
        for mass, start in zip(masses, starts, strict=True)
    ]


def weighed(
    masses: Sequence[float],
    starts: Sequence[float],
    ends: Sequence[tuple[float, float]],
    fineness: float,
) -> list[float]:
    """Masses of lines, rounded where they changed, within the ends that were set for them."""
    return [
        start
        if abs(mass - start) <= 1e-6 * start
        else min(max(weighable(mass, fineness), low), high)
        for mass, start, (low, high) in zip(masses, starts, ends, strict=True)
    ]
