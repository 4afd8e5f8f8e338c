"""What a label states, turned into constituents that add up to one."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from entremetry.larder.constituents import NAMES, SUGARS, Constituents
from entremetry.larder.nutrients import BOUND_TO_FAT, NUTRIENTS, Nutrients
from entremetry.words import decimal, say

TOLERANCE = 0.005
"""How far from one the parts may add up; labels are rounded."""

TOTALS: dict[str, tuple[str, ...]] = {
    "fat": ("cocoa_butter", "milk_fat", "other_fat"),
    "sugars": SUGARS,
    "carbohydrate": (*SUGARS, "polyols", "starch", "other_carbohydrate", "organic_acids"),
}
"""Words of a label that stand for several constituents; carbohydrate is without fibre."""

_UNSPLIT = {
    "fat": "other_fat",
    "sugars": "unsplit_sugars",
    "carbohydrate": "other_carbohydrate",
}
LABEL_WORDS = (*NAMES, *TOTALS, "salt", *NUTRIENTS)


class LabelError(ValueError):
    """A label that cannot be: what was found, and what is accepted."""

    def __init__(self, found: str, accepted: str) -> None:
        self.found = found
        self.accepted = accepted
        super().__init__(f"{found}; {accepted}")


def closed(stated: Mapping[str, float]) -> Constituents:
    """Constituents of a new ingredient from what its label states, as mass fractions.

    Water that is not stated is what the rest leaves. Carbohydrate is as on a European label,
    without fibre; on an American one, fibre has to be taken off first.

    Raises
    ------
    LabelError
        If the parts do not add up, or a part is more than its total.
    """
    stated = _with_ash(stated, 0.0)
    parts = {name: stated.get(name, 0.0) for name in NAMES}
    for total in TOTALS:
        if total in stated:
            members = TOTALS[total]
            parts[_UNSPLIT[total]] += _rest(total, stated[total], (parts[m] for m in members))
    whole = sum(parts.values())
    if "water" not in stated and whole <= 1.0:
        return Constituents(**{**parts, "water": 1.0 - whole})
    if abs(whole - 1.0) > TOLERANCE:
        raise _not_whole(whole)
    return Constituents(**{name: part / whole for name, part in parts.items()})


def stated_nutrients(
    start: Nutrients, stated: Mapping[str, float], before: Constituents, after: Constituents
) -> Nutrients:
    """Nutrients with the stated ones set; what goes with the fat follows it, the rest stays.

    Added sugars become unknown where other sugars are stated than before.
    """
    known = {name: getattr(start, name) for name in NUTRIENTS}
    if before.fat > 0.0:
        for name in BOUND_TO_FAT:
            known[name] = None if known[name] is None else known[name] * after.fat / before.fat
    elif after.fat > 0.0:
        known |= dict.fromkeys(BOUND_TO_FAT)
    if abs(after.sugars - before.sugars) > TOLERANCE:
        known["added_sugars"] = None
    return Nutrients(**{**known, **{name: stated[name] for name in NUTRIENTS if name in stated}})


def _with_ash(stated: Mapping[str, float], before: float) -> Mapping[str, float]:
    """Count salt, which is no part of its own, in the ash: that is at least the salt."""
    salt = stated.get("salt")
    if salt is None:
        return stated
    ash = stated.get("ash", max(before, salt))
    if ash < salt:
        found = say("{salt} of salt in {ash} of ash", salt=_grams(salt), ash=_grams(ash))
        raise LabelError(found, say("no more salt than ash"))
    return {**stated, "ash": ash}


def _rest(total: str, stated: float, parts: Iterable[float]) -> float:
    """What a total holds beside its parts."""
    inside = sum(parts)
    if inside > stated + 1e-9:
        raise LabelError(
            say(
                "{inside} of parts in {stated} of {total}",
                inside=_grams(inside),
                stated=_grams(stated),
                total=total,
            ),
            say("parts that are no more than the {total}", total=total),
        )
    return max(0.0, stated - inside)


def replaced(start: Constituents, stated: Mapping[str, float]) -> Constituents:
    """Constituents with the stated ones set; all others keep their proportions.

    Raises
    ------
    LabelError
        If more than the whole is stated, or the whole is stated and does not add up.
    """
    stated = _with_ash(stated, start.ash)
    fixed = {name: stated[name] for name in NAMES if name in stated}
    for total in TOTALS:
        if total in stated:
            fixed |= _spread(start, total, stated[total], fixed)
    left = 1.0 - sum(fixed.values())
    others = {name: getattr(start, name) for name in NAMES if name not in fixed}
    before = sum(others.values())
    if left < -TOLERANCE or (before <= 0.0 and left > TOLERANCE):
        raise _not_whole(1 - left)
    if left <= 0.0 or before <= 0.0:
        whole = 1.0 - left
        return Constituents(**{name: part / whole for name, part in fixed.items()})
    scaled = {name: part * left / before for name, part in others.items()}
    return replace(start, **fixed, **scaled)


def _spread(
    start: Constituents, total: str, stated: float, fixed: Mapping[str, float]
) -> dict[str, float]:
    """Share a total among its parts as before; those already fixed stay."""
    members = TOTALS[total]
    inside = sum(fixed[m] for m in members if m in fixed)
    rest = _rest(total, stated, [inside])
    free = {m: getattr(start, m) for m in members if m not in fixed}
    before = sum(free.values())
    if before <= 0.0:
        unsplit = _UNSPLIT[total]
        added = (
            {} if unsplit in fixed and rest <= 0.0 else {unsplit: fixed.get(unsplit, 0.0) + rest}
        )
        return dict.fromkeys(free, 0.0) | added
    return {m: part * rest / before for m, part in free.items()}


def _not_whole(whole: float) -> LabelError:
    found = say("parts of {grams}", grams=decimal(f"{100 * whole:.1f} g"))
    return LabelError(found, say("parts that make up 100 g, within 0.5 g"))


def _grams(share: float) -> str:
    """Grams in 100 g of a share."""
    return decimal(f"{100 * share:g} g")
