"""Masses in the words of a refusal."""

from __future__ import annotations


def grams(mass: float) -> str:
    """Mass in grams, to four digits."""
    return f"{mass * 1000.0:.4g} g"
