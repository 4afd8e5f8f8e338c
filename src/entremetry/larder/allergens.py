"""Allergens that must be declared, by jurisdiction, and the words that name them in a document.

The lists are those of the European Union (and the United Kingdom) as in force on 1 April 2025 and
of the United States as of the guidance of January 2025, which took coconut off the tree nuts.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from entremetry.errors import UnknownName

EU_SOURCE = "eu_1169_2011"
US_SOURCE = "fda_allergens_2025"


class Declared(NamedTuple):
    """What one allergen is called in the list of each jurisdiction; None if it is not on it."""

    eu: str | None
    us: str | None


def _nut(name: str, *, us_only: bool = False) -> Declared:
    return Declared(None if us_only else f"nuts:{name}", f"tree-nuts:{name}")


ALLERGENS: dict[str, Declared] = {
    "milk": Declared("milk", "milk"),
    "egg": Declared("eggs", "egg"),
    "fish": Declared("fish", "fish"),
    "crustaceans": Declared("crustaceans", "crustacean-shellfish"),
    "molluscs": Declared("molluscs", None),
    "wheat": Declared("gluten:wheat", "wheat"),
    "rye": Declared("gluten:rye", None),
    "barley": Declared("gluten:barley", None),
    "oats": Declared("gluten:oats", None),
    "soya": Declared("soybeans", "soybeans"),
    "peanuts": Declared("peanuts", "peanuts"),
    "sesame": Declared("sesame", "sesame"),
    "celery": Declared("celery", None),
    "mustard": Declared("mustard", None),
    "lupin": Declared("lupin", None),
    "sulphites": Declared("sulphites", None),
    "almond": _nut("almond"),
    "hazelnut": _nut("hazelnut"),
    "walnut": _nut("walnut"),
    "cashew": _nut("cashew"),
    "pecan": _nut("pecan"),
    "brazil": _nut("brazil"),
    "pistachio": _nut("pistachio"),
    "macadamia": _nut("macadamia"),
    "pine-nut": _nut("pine-nut", us_only=True),
    "black-walnut": Declared("nuts:walnut", "tree-nuts:black-walnut"),
}
"""Word in a document -> what it is called in the European and in the American list."""

EU_CODES = frozenset(declared.eu for declared in ALLERGENS.values() if declared.eu)
US_CODES = frozenset(declared.us for declared in ALLERGENS.values() if declared.us)
ANIMAL = frozenset({"milk", "egg", "fish", "crustaceans", "molluscs"})
"""Allergens that are themselves of animal origin."""


def declared(words: Iterable[str]) -> tuple[frozenset[str], frozenset[str]]:
    """Return the European and the American codes of some allergens.

    Raises
    ------
    UnknownName
        If a word names no allergen.
    """
    eu: set[str] = set()
    us: set[str] = set()
    for word in words:
        if word not in ALLERGENS:
            raise UnknownName("allergen", word, ALLERGENS)
        found = ALLERGENS[word]
        eu |= {found.eu} if found.eu else set()
        us |= {found.us} if found.us else set()
    return frozenset(eu), frozenset(us)
