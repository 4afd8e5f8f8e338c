"""Rounding of a European declaration, by the Commission's guidance of December 2012.

The guidance has no legal status, as it says itself. Amounts in g, energy in kJ or kcal.
"""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal

from entremetry.labels.declared import RANGE, Declared, nearest

SOURCE = "eu_guidance_2012"


def energy(value: float, unit: str) -> Declared:
    """Energy to the nearest kJ or kcal."""
    return Declared(number=nearest(value, "1").quantize(Decimal(1)), unit=unit)


def gram_rule(
    negligible: float, fine: str, coarse: str, coarse_from: float
) -> Callable[[float], Declared]:
    """A rule: nothing up to `negligible`, then in `fine` steps, from `coarse_from` in coarse."""

    def declared(grams: float) -> Declared:
        RANGE.require(grams)
        if grams <= negligible:
            limit = Decimal(repr(negligible)).quantize(Decimal(fine))
            return Declared(
                number=limit if grams > 0.0 else Decimal(0), unit="g", less_than=grams > 0.0
            )
        number = nearest(grams, fine)
        if number >= Decimal(repr(coarse_from)):
            return Declared(number=nearest(grams, coarse).quantize(Decimal(coarse)), unit="g")
        return Declared(number=number.quantize(Decimal(fine)), unit="g")

    return declared


macronutrient = gram_rule(0.5, "0.1", "1", 10.0)
"""Fat, carbohydrate, sugars, protein, fibre, polyols, starch."""
fatty_acids = gram_rule(0.1, "0.1", "1", 10.0)
"""Saturates, mono-unsaturates, polyunsaturates."""
salt = gram_rule(0.0125, "0.01", "0.1", 1.0)
"""Salt, which is sodium times 2.5."""
