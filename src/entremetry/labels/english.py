"""What a label says, in English; the catalogues have it in other languages.

The European names of the values are those of annex XV of eu_1169_2011, whose wording is fixed in
each language of the Union: a catalogue holds the words of that language's own version. What is
American is in English only, see `naming.Rules.language`.
"""

from __future__ import annotations

from entremetry.labels.naming import Rules
from entremetry.words import decimal, say, say_later

ROWS: dict[str, dict[str, str]] = {
    "eu": {
        "energy_kj": say_later("Energy"),
        "energy_kcal": "",
        "fat_g": say_later("Fat"),
        "saturates_g": say_later("of which saturates"),
        "carbohydrate_g": say_later("Carbohydrate"),
        "sugars_g": say_later("of which sugars"),
        "polyols_g": say_later("of which polyols"),
        "fibre_g": say_later("Fibre"),
        "protein_g": say_later("Protein"),
        "salt_g": say_later("Salt"),
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
    "eu": say_later("European Union, annex II as in force on 1 April 2025"),
    "us": "United States, nine allergens and the tree nuts of January 2025",
}
"""Whose list of allergens was used, with its date: lists change."""
RULES = {"eu": say_later("EU"), "us": "US"}
TITLES = {"eu": say_later("Nutrition declaration"), "us": "Nutrition Facts"}
INGREDIENTS = say_later("Ingredients")
INFUSED = say_later("{ingredient} infusion")
SMALL_GROUP = "Contains 2% or less of"
CAUTION = say_later(
    "A draft computed from tables and your formula, not a finished label: the law where you sell, "
    "your packets and a competent person decide. Allergens that come by traces, shared tools or "
    "suppliers are not known here."
)
ALCOHOL = say_later(
    "Contains alcohol, {share} of the mass: tell those who avoid it, children and pregnant women "
    "first."
)
KEEPING_FROZEN = say_later(
    "Keep frozen at -18 °C or below. Thaw in the fridge; keep at 5 °C or below."
)
KEEPING_COLD = say_later("Keep in the fridge at 5 °C or below.")
EAT_AFTER_THAWING = say_later("Eat within {time} of thawing. Do not freeze again.")
EAT_AFTER_MAKING = say_later("Eat within {time} of making.")


def row_name(key: str, rules: Rules) -> str:
    """Name of a row; the second of two rows of one value has none."""
    name = ROWS[rules.value][key]
    return say(name) if name and rules is Rules.EU else name


def title(rules: Rules) -> str:
    """What stands above the values."""
    return say(TITLES[rules.value]) if rules is Rules.EU else TITLES[rules.value]


def rules_name(rules: Rules) -> str:
    """Whose rules they are, in letters."""
    return say(RULES[rules.value]) if rules is Rules.EU else RULES[rules.value]


def allergen_list(rules: Rules) -> str:
    """Whose list of allergens was used, with its date."""
    return say(ALLERGEN_LISTS[rules.value]) if rules is Rules.EU else ALLERGEN_LISTS[rules.value]


def percent(share: float, decimals: int = 0) -> str:
    """A share inside a sentence: 12%."""
    return say("{number}%", number=decimal(f"{share * 100:.{decimals}f}"))
