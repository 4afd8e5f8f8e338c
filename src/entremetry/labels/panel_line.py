"""Which values a declaration holds, in which order, unit and rounding."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from entremetry.labels import eu_rounding, us_rounding
from entremetry.labels.declared import Declared
from entremetry.labels.nutrition import SALT_IN_SODIUM

GRAM, MILLIGRAM, MICROGRAM = 1e3, 1e6, 1e9  # in a kilogram


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """How a row is written: which nutrient, times what, in which unit, rounded how."""

    key: str
    nutrient: str
    factor: float
    rounding: Callable[[float], Declared]
    level: int = 0
    in_percent: bool = False


EU_LINES = (
    Line(key="fat_g", nutrient="fat", factor=GRAM, rounding=eu_rounding.macronutrient),
    Line(
        key="saturates_g",
        nutrient="saturates",
        factor=GRAM,
        rounding=eu_rounding.fatty_acids,
        level=1,
    ),
    Line(
        key="carbohydrate_g",
        nutrient="carbohydrate",
        factor=GRAM,
        rounding=eu_rounding.macronutrient,
    ),
    Line(
        key="sugars_g",
        nutrient="sugars",
        factor=GRAM,
        rounding=eu_rounding.macronutrient,
        level=1,
    ),
    Line(
        key="polyols_g",
        nutrient="polyols",
        factor=GRAM,
        rounding=eu_rounding.macronutrient,
        level=1,
    ),
    Line(key="fibre_g", nutrient="fibre", factor=GRAM, rounding=eu_rounding.macronutrient),
    Line(key="protein_g", nutrient="protein", factor=GRAM, rounding=eu_rounding.macronutrient),
    Line(key="salt_g", nutrient="sodium", factor=GRAM * SALT_IN_SODIUM, rounding=eu_rounding.salt),
)
"""The order of annex XV of eu_1169_2011; polyols and fibre may be given, the others must be."""

US_LINES = (
    Line(key="fat_g", nutrient="fat", factor=GRAM, rounding=us_rounding.fat, in_percent=True),
    Line(
        key="saturated_fat_g",
        nutrient="saturates",
        factor=GRAM,
        rounding=us_rounding.fat,
        level=1,
        in_percent=True,
    ),
    Line(key="trans_fat_g", nutrient="trans_fat", factor=GRAM, rounding=us_rounding.fat, level=1),
    Line(
        key="cholesterol_mg",
        nutrient="cholesterol",
        factor=MILLIGRAM,
        rounding=us_rounding.cholesterol,
        in_percent=True,
    ),
    Line(
        key="sodium_mg",
        nutrient="sodium",
        factor=MILLIGRAM,
        rounding=us_rounding.sodium,
        in_percent=True,
    ),
    Line(
        key="carbohydrate_g",
        nutrient="total_carbohydrate",
        factor=GRAM,
        rounding=us_rounding.carbohydrate,
        in_percent=True,
    ),
    Line(
        key="fibre_g",
        nutrient="fibre",
        factor=GRAM,
        rounding=us_rounding.carbohydrate,
        level=1,
        in_percent=True,
    ),
    Line(
        key="sugars_g",
        nutrient="sugars",
        factor=GRAM,
        rounding=us_rounding.carbohydrate,
        level=1,
    ),
    Line(
        key="added_sugars_g",
        nutrient="added_sugars",
        factor=GRAM,
        rounding=us_rounding.carbohydrate,
        level=2,
        in_percent=True,
    ),
    Line(
        key="polyols_g",
        nutrient="polyols",
        factor=GRAM,
        rounding=us_rounding.carbohydrate,
        level=1,
    ),
    Line(key="protein_g", nutrient="protein", factor=GRAM, rounding=us_rounding.carbohydrate),
    Line(
        key="vitamin_d_ug",
        nutrient="vitamin_d",
        factor=MICROGRAM,
        rounding=us_rounding.vitamin_d,
        in_percent=True,
    ),
    Line(
        key="calcium_mg",
        nutrient="calcium",
        factor=MILLIGRAM,
        rounding=us_rounding.calcium_or_potassium,
        in_percent=True,
    ),
    Line(
        key="iron_mg",
        nutrient="iron",
        factor=MILLIGRAM,
        rounding=us_rounding.iron,
        in_percent=True,
    ),
    Line(
        key="potassium_mg",
        nutrient="potassium",
        factor=MILLIGRAM,
        rounding=us_rounding.calcium_or_potassium,
        in_percent=True,
    ),
)
"""The order of cfr_21_101_9 (c); vitamins and minerals that must be given since 2016."""
