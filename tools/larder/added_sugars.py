"""Which sugars of an ingredient count as added where a label asks for them (cfr_21_101_9).

Added are sugars put in as such, syrups and honey; not those that milk and whole fruit bring
along. No table reports them, so the group of the ingredient decides; where it cannot, the
sugars stay unknown.
"""

from __future__ import annotations

from entremetry.larder import Ingredient

ALL = {"sugar and syrup", "glaze"}
ALL_BUT_MILK_SUGAR = {"confection", "biscuit and cake"}
SWEETENED = {
    "condensed-milk-sweetened",
    "dulce-de-leche",
    "eggnog",
    "whipped-cream-pressurised",
    "egg-yolk-sugared-pasteurised",
    "chocolate-dark-45-59",
    "chocolate-dark-60-69",
    "chocolate-dark-70-85",
    "chocolate-semisweet-chips",
    "chocolate-sweet",
    "chocolate-milk",
    "chocolate-white",
    "hazelnut-chocolate-spread",
    "chocolate-syrup-fudge",
    "dark-chocolate-coffee-beans",
    "almond-paste-us",
    "coconut-cream-sweetened",
    "pectin-sugar-mix",
    "vanilla-extract",
    "vanilla-extract-imitation",
    "vanilla-extract-no-alcohol",
    "vanilla-paste",
    "coffee-extract",
    "coffee-liqueur-27",
    "coffee-liqueur-32",
    "cream-liqueur-17",
    "mint-liqueur-36",
    "orange-liqueur-40",
    "amaretto-28",
    "limoncello-30",
    "blackcurrant-liqueur-15",
    "coconut-liqueur-21",
}
UNKNOWN = {
    "cranberry-dried",
    "apricot-nectar",
    "peach-nectar",
    "pear-nectar",
    "soya-milk",
    "oat-milk",
    "cider-vinegar",
    "balsamic-vinegar",
}


def added_sugars(start: Ingredient) -> float | None:
    """Added sugars as a mass fraction, None where the group does not tell."""
    sugars, milk_sugar = start.composition.sugars, start.composition.lactose
    if start.group in ALL:
        return sugars
    if start.id in SWEETENED or start.group in ALL_BUT_MILK_SUGAR:
        return sugars - milk_sugar
    return None if start.id in UNKNOWN and sugars > 0.0 else 0.0
