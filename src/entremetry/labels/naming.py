"""The name that an ingredient has in a list, and what it is made of, in words."""

from __future__ import annotations

import re
from enum import StrEnum

from entremetry.labels.emphasis import named, silent
from entremetry.labels.english_names import (
    BY_START,
    CONTAINED,
    EMULSIFIER,
    NAMES,
    REMARKS,
    allergen_word,
)
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.larder import Larder


class Rules(StrEnum):
    """Whose rules a label follows."""

    EU = "eu"
    US = "us"


_PERCENT = re.compile(r"\s*\d[\d.,]*(-\d+)?\s*%(\s+(sugar|alcohol|fat|in dry matter))?")
_REMARKS = re.compile(rf"\s*\b({'|'.join(map(re.escape, REMARKS))})\b")
_BLANKS = re.compile(r"\s+")


def listed_name(ingredient: Ingredient, rules: Rules) -> str:
    """Name of an ingredient in the list; a cook's own `label_name` goes first."""
    if ingredient.label_name:
        return ingredient.label_name
    place = 0 if rules is Rules.EU else 1
    kind = ingredient.id if _has_a_name(ingredient) else ingredient.kind
    if kind in NAMES:
        return NAMES[kind][place]
    for start, names in BY_START:
        if kind.startswith(start):
            return names[place]
    return _plain(ingredient.name)


def _has_a_name(ingredient: Ingredient) -> bool:
    """Whether a cook gave a name to an own ingredient."""
    return "name" in ingredient.overridden


def _plain(name: str) -> str:
    """A larder's name without percentages and remarks, in lower case but for proper names."""
    name = name.removesuffix(" (own)")
    short = _BLANKS.sub(" ", _REMARKS.sub("", _PERCENT.sub("", name))).strip()
    return short[:1].lower() + short[1:] if short else name


def codes_of(ingredient: Ingredient, rules: Rules) -> frozenset[str]:
    """Allergens of an ingredient by the list of a jurisdiction."""
    return ingredient.allergens_eu if rules is Rules.EU else ingredient.allergens_us


def made_of(ingredient: Ingredient, rules: Rules, larder: Larder) -> str:
    """What a compound is made of, in descending order; empty if the larder does not know.

    An allergen that none of its parts accounts for stands at the end: soya as the lecithin it is.
    """
    if ingredient.contains:
        return ingredient.contains
    if ingredient.kind in CONTAINED:
        return CONTAINED[ingredient.kind][0 if rules is Rules.EU else 1]
    found = [
        _part(larder.find(part.id), rules, larder)
        for part in sorted(ingredient.parts, key=lambda part: -part.share)
    ]
    text = ", ".join(dict.fromkeys(found))
    if not text:
        return ""
    missing = silent(text, codes_of(ingredient, rules))
    return ", ".join([text, *(_beside(code, rules) for code in missing)])


def _part(part: Ingredient, rules: Rules, larder: Larder) -> str:
    name, inner = listed_name(part, rules), made_of(part, rules, larder)
    whole = f"{name} ({inner})" if inner else name
    return named(whole, codes_of(part, rules)) if rules is Rules.EU else whole


def _beside(code: str, rules: Rules) -> str:
    if code == "soybeans":
        return EMULSIFIER[rules.value]
    return allergen_word(code, american=rules is Rules.US)


COMPOUND_GROUPS = frozenset({"biscuit and cake", "confection", "glaze"})
COMPOUND_STARTS = ("chocolate-", "hazelnut-chocolate-spread", "coating-", "baking-powder")


def is_compound(ingredient: Ingredient) -> bool:
    """Whether a list has to say what it is made of."""
    if ingredient.parts or ingredient.contains:
        return True
    kind = ingredient.kind
    by_kind = kind.startswith(COMPOUND_STARTS) and kind != "chocolate-unsweetened"
    return ingredient.group in COMPOUND_GROUPS or by_kind
