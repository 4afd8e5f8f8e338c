"""What one setting agent weighs in the place of another."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.errors import BalanceError
from entremetry.larder.ingredient import Ingredient
from entremetry.physics.gelatine import BloomRule, equivalent_mass
from entremetry.physics.gels import AGAR, IOTA, KAPPA, PECTIN_LM, PECTIN_NH, Gel
from entremetry.words import say

REFERENCE_BLOOM = 200.0
PROTEIN = 0.856  # kg/kg of gelatine as sold: usda_sr28
AGAR_DOSE = 0.005  # kg per kg of water; 0.2 to 0.9 % is common_practice
GELATINE_DOSE = 0.016  # kg of 200 Bloom per kg of water that turns out firm: common_practice
AGENTS = {
    "agar-powder": AGAR,
    "agar-dried": AGAR,
    "carrageenan-kappa": KAPPA,
    "carrageenan-iota": IOTA,
    "pectin-lm": PECTIN_LM,
    "pectin-nh": PECTIN_NH,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class BothRules:
    """Mass of the other gelatine by the rule of the trade and by that of gel strength. [kg]"""

    linear: float
    square_root: float

    def by(self, rule: BloomRule) -> float:
        """Mass by one of them."""
        return self.square_root if rule is BloomRule.SQUARE_ROOT else self.linear


def dry_part(ingredient: Ingredient) -> float:
    """Part of an ingredient that is gelatine as sold: 1 of a sheet, 1/7 of a mass of 1 + 6."""
    return min(ingredient.composition.protein / PROTEIN, 1.0)


def strength(ingredient: Ingredient, rule: BloomRule) -> float:
    """Gelatine of 200 Bloom that a mass of an ingredient stands for; 0 if it is none. [kg/kg]"""
    if ingredient.bloom is None:
        return 0.0
    part = dry_part(ingredient)
    return equivalent_mass(part, ingredient.bloom, REFERENCE_BLOOM, rule)


def in_place_of(mass: float, old: Ingredient, new: Ingredient) -> BothRules:
    """Mass of one gelatine in the place of another, sheets, powder and gelatine mass alike.

    Raises
    ------
    BalanceError
        If one of the two is no gelatine.
    """
    if old.bloom is None or new.bloom is None:
        told = say("{old} and {new}: the Bloom of both must be known", old=old.name, new=new.name)
        raise BalanceError(told)
    dry = mass * dry_part(old)
    return BothRules(
        linear=equivalent_mass(dry, old.bloom, new.bloom, BloomRule.LINEAR) / dry_part(new),
        square_root=equivalent_mass(dry, old.bloom, new.bloom, BloomRule.SQUARE_ROOT)
        / dry_part(new),
    )


def agent(ingredient: Ingredient) -> Gel | None:
    """What is known of a setting agent that is no gelatine."""
    return AGENTS.get(ingredient.id)


def usual_dose(ingredient: Ingredient, rule: BloomRule) -> float | None:
    """Mass of a setting agent per mass of water that is usual; None if it sets nothing. [kg/kg]

    For agar the middle of what cooks use; for others the middle of the printed range.
    """
    if ingredient.bloom is not None:
        return GELATINE_DOSE / strength(ingredient, rule)
    found = agent(ingredient)
    if found is None:
        return None
    return AGAR_DOSE if found is AGAR else (found.dose.low + found.dose.high) / 2.0
