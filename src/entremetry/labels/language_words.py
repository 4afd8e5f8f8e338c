"""Which words steer a list in the language that is spoken: the one place that tells them apart.

A language without rules of its own here is served by its catalogue alone: what no rule knows to be
named is named by the catalogue's word, in brackets after the ingredient, and emphasised.
"""

from __future__ import annotations

import re

from entremetry.labels import english_names, french_names
from entremetry.labels.list_words import ListWords
from entremetry.words import current, say, say_as

BY_LANGUAGE = {"en": english_names.WORDS, "fr": french_names.WORDS}
OTHERWISE = ListWords(not_by_name=english_names.NOT_BY_NAME, singular=english_names.WORDS.singular)


def list_words() -> ListWords:
    """The rules of the language that is spoken."""
    return BY_LANGUAGE.get(current().code, OTHERWISE)


def allergen_word(code: str, *, american: bool = False) -> str:
    """The word that names an allergen: of a nut or a cereal its own name, not the group's."""
    return say_as("allergen", english_names.allergen_word(code, american=american))


def allergen_code(code: str) -> str:
    """An allergen as the lists of the larder have it: 'milk', 'gluten: wheat'."""
    group, *names = (say_as("allergen", part) for part in code.split(":"))
    return say("{group}: {name}", group=group, name=names[0]) if names else group


def allergen_group(code: str) -> str:
    """The group that is named with a nut or a cereal; empty for all others."""
    group = english_names.GROUPS.get(code.partition(":")[0], "")
    return say_as("allergen", group) if group else ""


def naming_patterns(code: str) -> tuple[str, ...]:
    """Patterns of the words that have named an allergen once they stand in a list."""
    return list_words().allergens.get(code) or (re.escape(allergen_word(code)),)


def said(name: str) -> str:
    """A name of a list, written in English in the data."""
    return say_as("list", name)
