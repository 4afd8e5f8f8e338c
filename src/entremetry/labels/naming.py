"""The name that an ingredient has in a list, and what it is made of, in words."""

from __future__ import annotations

from enum import StrEnum

from entremetry.labels.emphasis import named, silent
from entremetry.labels.english_names import BY_START, CONTAINED, EMULSIFIER, NAMES
from entremetry.labels.language_words import allergen_word, list_words, said
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.larder import Larder
from entremetry.larder.spoken_name import is_named, larder_name
from entremetry.words import ENGLISH, current, speaking


class Rules(StrEnum):
    """Whose rules a label follows."""

    EU = "eu"
    US = "us"

    @property
    def language(self) -> str:
        """Code of the language in which a label is written.

        In the European Union the one that is spoken: one that those who buy easily understand,
        article 15 of eu_1169_2011. An American label is in English whatever is spoken: 21 CFR
        101.15(c) wants that of all words that have to stand on it, and 101.9 gives the words of the
        panel (from_memory). A second language may stand beside it; that one is not drafted here.
        """
        return ENGLISH.code if self is Rules.US else current().code


def listed_name(ingredient: Ingredient, rules: Rules) -> str:
    """Name of an ingredient in the list; a cook's own `label_name` goes first."""
    if ingredient.label_name:
        return ingredient.label_name
    place = 0 if rules is Rules.EU else 1
    kind = ingredient.id if is_named(ingredient) else ingredient.kind
    if kind in NAMES:
        return said(NAMES[kind][place])
    for start, names in BY_START:
        if kind.startswith(start):
            return said(names[place])
    return list_words().short(larder_name(ingredient))


def english_name(ingredient: Ingredient) -> str:
    """Its European name in English, as whoever wrote a dessert in English may have called it."""
    with speaking(ENGLISH.code):
        return listed_name(ingredient, Rules.EU)


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
        return said(CONTAINED[ingredient.kind][0 if rules is Rules.EU else 1])
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
        return said(EMULSIFIER[rules.value])
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
