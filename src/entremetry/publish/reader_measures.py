"""Household words of every ingredient over a span of masses, so that a page looks them up."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from entremetry.dessert.household_amount import household_amount
from entremetry.larder.ingredient import Ingredient
from entremetry.quantities import format_mass
from entremetry.words import say

STEP = 0.03  # logarithm of the mass between two entries
LESS, MORE = 0.2, 20.0  # of the masses published
BLANK = "{}"  # stands for the mass itself


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """Words that hold from a mass on [kg]; the first and the last hold beyond the span."""

    masses: tuple[float, ...]
    texts: tuple[str, ...]


def measure_words(ingredient: Ingredient, masses: Iterable[float], measures: str) -> Words:
    """Words for an ingredient of which so much was published."""
    published = sorted(masses)
    low, high = published[0] * LESS, published[-1] * MORE
    count = math.ceil(math.log(high / low) / STEP)
    found: list[tuple[float, str]] = []
    for number in range(count + 1):
        mass = low * math.exp(STEP * number)
        text = _words(mass, ingredient, measures)
        if not found or found[-1][1] != text:
            found.append((mass * math.exp(-STEP / 2.0), text))
    return Words(
        masses=tuple(float(f"{mass:.4g}") for mass, _ in found),
        texts=tuple(text for _, text in found),
    )


def _words(mass: float, ingredient: Ingredient, measures: str) -> str:
    text = household_amount(mass, ingredient, measures).text
    weighed = say("weigh: {mass}", mass=format_mass(mass))
    return text.replace(weighed, say("weigh: {mass}", mass=BLANK))


def packed(words: Mapping[str, Words], texts: dict[str, int]) -> dict[str, list[list[float]]]:
    """Words with each text as its number in `texts`, which grows."""
    return {
        name: [list(each.masses), [texts.setdefault(text, len(texts)) for text in each.texts]]
        for name, each in words.items()
    }
