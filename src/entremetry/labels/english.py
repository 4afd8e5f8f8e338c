"""What a label says in English; another language is another module of this kind."""

from __future__ import annotations

from entremetry.labels.naming import Rules

ROWS: dict[str, dict[str, str]] = {
    "eu": {
        "energy_kj": "Energy",
        "energy_kcal": "",
        "fat_g": "Fat",
        "saturates_g": "of which saturates",
        "carbohydrate_g": "Carbohydrate",
        "sugars_g": "of which sugars",
        "polyols_g": "of which polyols",
        "fibre_g": "Fibre",
        "protein_g": "Protein",
        "salt_g": "Salt",
    },
    "us": {
        "energy_kcal": "Calories",
        "fat_g": "Total Fat",
        "saturated_fat_g": "Saturated Fat",
        "trans_fat_g": "Trans Fat",
        "cholesterol_mg": "Cholesterol",
        "sodium_mg": "Sodium",
        "carbohydrate_g": "Total Carbohydrate",
        "fibre_g": "Dietary Fiber",
        "sugars_g": "Total Sugars",
        "added_sugars_g": "Includes Added Sugars",
        "polyols_g": "Sugar Alcohol",
        "protein_g": "Protein",
        "vitamin_d_ug": "Vitamin D",
        "calcium_mg": "Calcium",
        "iron_mg": "Iron",
        "potassium_mg": "Potassium",
    },
}
"""Name of each row, by rules and key."""
ALLERGEN_LISTS = {
    "eu": "European Union, annex II as in force on 1 April 2025",
    "us": "United States, nine allergens and the tree nuts of January 2025",
}
"""Whose list of allergens was used, with its date: lists change."""
TITLES = {"eu": "Nutrition declaration", "us": "Nutrition Facts"}
INGREDIENTS = "Ingredients"
WATER = "water"
INFUSION = "infusion"
PIECE, GLASS, VESSEL = "piece", "glass", "vessel"
SMALL_GROUP = "Contains 2% or less of"
CAUTION = (
    "A draft computed from tables and your formula, not a finished label: the law where you sell, "
    "your packets and a competent person decide. Allergens that come by traces, shared tools or "
    "suppliers are not known here."
)
ALCOHOL = (
    "Contains alcohol, {share} of the mass: tell those who avoid it, children and pregnant women "
    "first."
)
KEEPING_FROZEN = "Keep frozen at -18 °C or below. Thaw in the fridge; keep at 5 °C or below."
KEEPING_COLD = "Keep in the fridge at 5 °C or below."
EAT_AFTER_THAWING = "Eat within {time} of thawing. Do not freeze again."
EAT_AFTER_MAKING = "Eat within {time} of making."


def row_name(key: str, rules: Rules) -> str:
    """Name of a row."""
    return ROWS[rules.value][key]
