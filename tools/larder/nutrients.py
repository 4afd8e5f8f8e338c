"""Nutrients of a row: as printed, by a rule that says so, or unknown."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from added_sugars import added_sugars
from tables import Row

from entremetry.larder import BOUND_TO_FAT, NUTRIENTS, Constituents, Ingredient, Nutrients

PRINTED = {
    "saturates": ("saturates", 1e-2),
    "trans_fat": ("trans_fat", 1e-2),
    "cholesterol": ("cholesterol_mg", 1e-5),
    "calcium": ("calcium_mg", 1e-5),
    "iron": ("iron_mg", 1e-5),
    "potassium": ("potassium_mg", 1e-5),
    "vitamin_d": ("vitamin_d_ug", 1e-8),
}
MILK_SATURATES = 61.924 / 99.48  # usda_sr28, food 01003
COCOA_SATURATES = 59.7 / 100.0  # usda_sr28, food 04501
MILK_TRANS = 3.278 / 81.11  # usda_sr28, food 01001
MILK_CHOLESTEROL = 0.256 / 99.48  # usda_sr28, food 01003
EGG_TRANS = 0.038 / 9.51  # usda_sr28, food 01123
HARDENED = ("butter and fat", "confection", "biscuit and cake", "chocolate and cocoa")
TRANS_NOTE = "trans fat is blank in the table and taken"


def printed(row: Row) -> Nutrients:
    """What a row of SR28 reports; blank stays unknown."""
    return Nutrients(
        **{
            name: float(row[column]) * factor if row[column] else None
            for name, (column, factor) in PRINTED.items()
        }
    )


def ruled(start: Ingredient, *, say: Callable[[str], None] = lambda note: None) -> Nutrients:
    """Nutrients with what follows from the fat, from being of plants, and from the group."""
    known, parts = start.nutrients, start.composition
    if "vegan" in start.tags:
        known = replace(
            known,
            cholesterol=known.cholesterol or 0.0,
            vitamin_d=known.vitamin_d or 0.0,
        )
    if known.saturates is None:
        known = replace(known, saturates=saturates(parts))
    if known.cholesterol is None and parts.fat == parts.milk_fat:
        known = replace(known, cholesterol=parts.milk_fat * MILK_CHOLESTEROL)
    if known.trans_fat is None:
        value, why = trans_fat(start)
        known = replace(known, trans_fat=value)
        if why and parts.fat > 0.001:
            say(f"{TRANS_NOTE} {why}")
    if parts.ash == 0.0:
        missing = [n for n in ("calcium", "iron", "potassium") if getattr(known, n) is None]
        known = replace(known, **dict.fromkeys(missing, 0.0))
    if known.added_sugars is None:
        known = replace(known, added_sugars=added_sugars(start))
    return known


def saturates(parts: Constituents) -> float | None:
    """Saturated part of milk fat and cocoa butter; unknown where there is other fat."""
    if parts.other_fat > 0.0:
        return None
    return parts.milk_fat * MILK_SATURATES + parts.cocoa_butter * COCOA_SATURATES


def trans_fat(start: Ingredient) -> tuple[float | None, str]:
    """Trans fat where the table leaves it blank, and how it was taken."""
    parts = start.composition
    if start.group == "egg":
        return parts.fat * EGG_TRANS, "in the share that whole egg has"
    if "vegan" in start.tags and start.group not in HARDENED:
        return 0.0, "as nothing: plants hold none unless their fat is hardened (from memory)"
    if parts.other_fat > 0.0:
        return None, ""
    why = "in the share that salted butter has" if parts.milk_fat else "as nothing: cocoa butter"
    return parts.milk_fat * MILK_TRANS, why


def of_parts(made: Mapping[str, float], larder: Mapping[str, Ingredient], rule: str) -> Nutrients:
    """Nutrients of what is made of others; unknown as soon as they are unknown in one of them."""
    skimmed = rule.endswith(" without fat")
    total: dict[str, float | None] = {}
    for name in NUTRIENTS:
        values = [(getattr(larder[part].nutrients, name), share) for part, share in made.items()]
        if skimmed and name in BOUND_TO_FAT:
            total[name] = 0.0
        elif any(value is None and share > 0.0 for value, share in values):
            total[name] = None
        else:
            total[name] = sum((value or 0.0) * share for value, share in values)
    return Nutrients(**total)
