"""Rounding of an American declaration, 21 CFR 101.9(c), as FDA's appendix H tabulates it."""

from __future__ import annotations

from decimal import Decimal

from entremetry.labels.declared import RANGE, Declared, nearest

SOURCE = "cfr_21_101_9"
TABLE = "fda_labeling_guide_2009"


def calories(kcal: float) -> Declared:
    """Calories: below 5 none, up to 50 in fives, above in tens."""
    RANGE.require(kcal)
    if kcal < 5.0:
        return _number(Decimal(0), "kcal")
    return _number(nearest(kcal, "5" if kcal <= 50.0 else "10"), "kcal")


def fat(grams: float) -> Declared:
    """Total, saturated and trans fat: below half a gram none, below five in halves, then whole."""
    RANGE.require(grams)
    if grams < 0.5:
        return _number(Decimal(0), "g")
    return _number(nearest(grams, "0.5" if grams < 5.0 else "1"), "g")


def cholesterol(milligrams: float) -> Declared:
    """Cholesterol: below 2 mg none, up to 5 'less than 5', then in fives."""
    RANGE.require(milligrams)
    if milligrams < 2.0:
        return _number(Decimal(0), "mg")
    if milligrams <= 5.0:
        return Declared(number=Decimal(5), unit="mg", less_than=True)
    return _number(nearest(milligrams, "5"), "mg")


def sodium(milligrams: float) -> Declared:
    """Sodium: below 5 mg none, up to 140 in fives, above in tens."""
    RANGE.require(milligrams)
    if milligrams < 5.0:
        return _number(Decimal(0), "mg")
    return _number(nearest(milligrams, "5" if milligrams <= 140.0 else "10"), "mg")


def carbohydrate(grams: float) -> Declared:
    """Carbohydrate, fibre, sugars, protein: below half a gram none, below one 'less than 1'."""
    RANGE.require(grams)
    if grams < 0.5:
        return _number(Decimal(0), "g")
    if grams < 1.0:
        return Declared(number=Decimal(1), unit="g", less_than=True)
    return _number(nearest(grams, "1"), "g")


def vitamin_d(micrograms: float) -> Declared:
    """Vitamin D to a tenth of a microgram (from_memory)."""
    return _number(nearest(micrograms, "0.1"), "mcg")


def iron(milligrams: float) -> Declared:
    """Iron to a tenth of a milligram (from_memory)."""
    return _number(nearest(milligrams, "0.1"), "mg")


def calcium_or_potassium(milligrams: float) -> Declared:
    """Calcium and potassium to ten milligrams (from_memory)."""
    return _number(nearest(milligrams, "10"), "mg")


DAILY_VALUES: dict[str, float] = {
    "fat": 78e-3,
    "saturates": 20e-3,
    "cholesterol": 300e-6,
    "sodium": 2300e-6,
    "total_carbohydrate": 275e-3,
    "fibre": 28e-3,
    "added_sugars": 50e-3,
    "vitamin_d": 20e-9,
    "calcium": 1300e-6,
    "iron": 18e-6,
    "potassium": 4700e-6,
}
"""Daily values for adults since 2016 [kg]: from_memory."""
VITAMINS_AND_MINERALS = ("vitamin_d", "calcium", "iron", "potassium")


def daily_value_percent(name: str, kilograms: float) -> int:
    """Percent of the daily value, from the amount before rounding.

    Vitamins and minerals: below 2 none, up to 10 in twos, up to 50 in fives, then in tens; all
    others in ones (from_memory).
    """
    percent = 100.0 * kilograms / DAILY_VALUES[name]
    RANGE.require(percent)
    if name not in VITAMINS_AND_MINERALS:
        return int(nearest(percent, "1"))
    if percent < 2.0:
        return 0
    return int(nearest(percent, "2" if percent <= 10.0 else "5" if percent <= 50.0 else "10"))


def _number(number: Decimal, unit: str) -> Declared:
    whole = number == number.to_integral_value()
    return Declared(number=number.quantize(Decimal(1)) if whole else number, unit=unit)
