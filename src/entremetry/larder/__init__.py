"""Ingredients: what they are made of, how they are measured, whom they may harm."""

from entremetry.larder.allergens import ALLERGENS, EU_CODES, US_CODES, declared
from entremetry.larder.constituents import NAMES, SUGARS, Constituents
from entremetry.larder.generic import Generic, all_generics, generic_for
from entremetry.larder.ingredient import HouseholdWeight, Ingredient, Pack
from entremetry.larder.larder import Larder
from entremetry.larder.nutrients import BOUND_TO_FAT, NUTRIENTS, Nutrients, Part
from entremetry.larder.syrup import mean_molar_mass
from entremetry.larder.tags import TAGS

__all__ = [
    "ALLERGENS",
    "BOUND_TO_FAT",
    "EU_CODES",
    "NAMES",
    "NUTRIENTS",
    "SUGARS",
    "TAGS",
    "US_CODES",
    "Constituents",
    "Generic",
    "HouseholdWeight",
    "Ingredient",
    "Larder",
    "Nutrients",
    "Pack",
    "Part",
    "all_generics",
    "declared",
    "generic_for",
    "mean_molar_mass",
]
