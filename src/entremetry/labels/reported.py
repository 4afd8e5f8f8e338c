"""Nutrients that an ingredient's source reports or leaves blank, and how much a blank can hide."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from entremetry.larder.ingredient import Ingredient
from entremetry.larder.nutrients import NUTRIENTS

CHOLESTEROL_IN_FAT = 1.085 / 26.54  # usda_sr28, food 01125: egg yolk, the richest of the larder
VITAMIN_D_IN_FAT = 5.4e-6 / 26.54  # usda_sr28, food 01125
SODIUM_IN_SALT = 22.990 / 58.443
CALCIUM_IN_ASH = 0.40  # of calcium carbonate: from_memory
POTASSIUM_IN_ASH = 0.52  # of potassium chloride: from_memory
IRON_IN_ASH = 0.01  # leaves of dried herbs: from_memory


@dataclass(frozen=True, slots=True, kw_only=True)
class Reported:
    """How to read a nutrient off an ingredient, and the most there can be where it is blank."""

    of: Callable[[Ingredient], float | None]
    at_most: Callable[[Ingredient], float]


def _sodium(ingredient: Ingredient) -> float | None:
    return None if "sodium" in ingredient.not_reported else ingredient.sodium


def _nutrient(name: str) -> Callable[[Ingredient], float | None]:
    def of(ingredient: Ingredient) -> float | None:
        value: float | None = getattr(ingredient.nutrients, name)
        return value

    return of


AT_MOST: dict[str, Callable[[Ingredient], float]] = {
    "saturates": lambda i: i.composition.fat,
    "trans_fat": lambda i: i.composition.fat,
    "cholesterol": lambda i: i.composition.fat * CHOLESTEROL_IN_FAT,
    "added_sugars": lambda i: i.composition.sugars,
    "vitamin_d": lambda i: i.composition.fat * VITAMIN_D_IN_FAT,
    "calcium": lambda i: i.composition.ash * CALCIUM_IN_ASH,
    "iron": lambda i: i.composition.ash * IRON_IN_ASH,
    "potassium": lambda i: i.composition.ash * POTASSIUM_IN_ASH,
}
"""Most of a nutrient in an ingredient whose source leaves it blank, as a mass fraction."""

REPORTED: dict[str, Reported] = {
    "sodium": Reported(of=_sodium, at_most=lambda i: i.composition.ash * SODIUM_IN_SALT),
    **{name: Reported(of=_nutrient(name), at_most=AT_MOST[name]) for name in NUTRIENTS},
}
HELD = tuple(REPORTED)
