"""Masses in the words of a refusal."""

from __future__ import annotations

from entremetry.words import decimal


def grams(mass: float) -> str:
    """Mass in grams, to four digits."""
    return decimal(f"{mass * 1000.0:.4g} g")


def number(value: float, digits: int = 4) -> str:
    """A number to so many digits."""
    return decimal(f"{value:.{digits}g}")
