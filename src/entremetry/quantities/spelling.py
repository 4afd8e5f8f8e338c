"""Which unit a word means; the ambiguous words are refused, never guessed."""

from __future__ import annotations

from functools import cache

from entremetry.errors import QuantityError, nearest_names
from entremetry.quantities.table import COUNTRY_SPELLINGS, COUNTRY_WORDS, UNITS
from entremetry.quantities.unit import Kind, Measures, Unit

AMBIGUOUS: dict[str, tuple[str, str]] = {
    "T": ("a tablespoon to some, nothing to others", "tbsp"),
    "Tb": ("a tablespoon to some", "tbsp"),
    "t": ("a teaspoon to some, a tonne to others", "tsp, or kg"),
    "c": ("a cup to some", "cup, or °C for a temperature"),
    "C": ("a cup to some, degrees Celsius to others", "cup, or °C for a temperature"),
    "F": ("degrees Fahrenheit to some", "°F"),
    "M": ("metres or minutes", "m, mm or min"),
    "Mg": ("milligrams or tonnes", "mg, or kg"),
    "gr": ("a grain to some, a gram to others", "g"),
    "grs": ("grains to some, grams to others", "g"),
    "#": ("a pound to some, a number to others", "lb"),
    "'": ("feet or minutes", "ft or min"),
    "dag": ("a unit that few readers know", "g"),
}
"""Spellings with two meanings: what they could be, and what to write instead."""


UNKNOWN_SIZES: dict[str, str] = {
    "tonne": "kg",
    "tonnes": "kg",
    "ton": "kg",
    "tons": "kg",
    "stone": "kg",
    "gill": "ml",
    "gills": "ml",
    "dessertspoon": "tsp or ml",
    "dessertspoons": "tsp or ml",
    "glass": "ml",
    "glasses": "ml",
    "spoon": "tsp or tbsp",
    "spoons": "tsp or tbsp",
}
"""Measures whose size is not agreed, or no size for a kitchen."""


@cache
def _by_spelling() -> dict[str, Unit]:
    """Map every folded spelling to its unit."""
    return {
        spelling.casefold(): unit for unit in UNITS for spelling in (unit.name, *unit.spellings)
    }


def unit_called(word: str, measures: Measures | str | None = None) -> Unit | None:
    """Return the unit that `word` means, or None if it is no unit.

    Raises QuantityError if the word means different units to different readers.
    """
    spelled = word.strip().rstrip(".") if word.strip() not in COUNTRY_SPELLINGS else word.strip()
    if spelled in AMBIGUOUS:
        meaning, instead = AMBIGUOUS[spelled]
        raise QuantityError(f"'{spelled}', {meaning}", instead)
    folded = " ".join(spelled.casefold().replace("fl. oz", "fl oz").split())
    if folded in UNKNOWN_SIZES:
        raise QuantityError(
            f"'{folded}', a measure this kitchen does not use", UNKNOWN_SIZES[folded]
        )
    if folded in COUNTRY_WORDS:
        return _of_country(word, COUNTRY_WORDS[folded], measures)
    return _by_spelling().get(folded) or _with_country(folded)


def unit_named(name: str) -> Unit:
    """Return the unit of the table which bears exactly this name."""
    for unit in UNITS:
        if unit.name == name:
            return unit
    raise QuantityError(f"'{name}'", "the name of a unit", nearest_units(name))


def _with_country(folded: str) -> Unit | None:
    """Read 'us cup', 'Australian tablespoon' and the like."""
    country, _, measure = folded.partition(" ")
    if country not in COUNTRY_SPELLINGS or measure not in COUNTRY_WORDS:
        return None
    plain = COUNTRY_WORDS[measure]
    candidates = (str(COUNTRY_SPELLINGS[country]), "uk" if country.startswith("imp") else "")
    for prefix in candidates:
        unit = _by_spelling().get(f"{prefix} {plain}")
        if unit and (prefix != "uk" or country == "uk" or plain not in {"tbsp", "tsp"}):
            return unit
    raise QuantityError(f"'{folded}', a measure we know no size for", "the amount in ml")


def _of_country(word: str, measure: str, measures: Measures | str | None) -> Unit:
    """Return a cup or spoon of the country that is given; refuse to guess one."""
    choices = [choice for choice in Measures if f"{choice} {measure}" in _by_spelling()]
    if measures is None:
        listed = ", ".join(f"{choice} {measure}" for choice in choices)
        raise QuantityError(
            f"'{word.strip()}' without whose it is", f"one of {listed}; or 'measures:' for all"
        )
    unit = _by_spelling().get(f"{Measures(measures)} {measure}")
    if unit is None:
        listed = ", ".join(f"{choice} {measure}" for choice in choices)
        raise QuantityError(f"'{word.strip()}' in {measures} measures", f"ml, or one of {listed}")
    return unit


def spellings(*kinds: Kind) -> tuple[str, ...]:
    """Return the names of the units of these kinds, the plain cups and spoons included."""
    names = {unit.name for unit in UNITS if unit.kind in kinds}
    names |= {other for unit in UNITS if unit.kind in kinds for other in unit.spellings}
    return tuple(sorted(names | (set(COUNTRY_WORDS) if Kind.VOLUME in kinds else set())))


def nearest_units(word: str, *kinds: Kind) -> tuple[str, ...]:
    """Return the spellings of units which look most like `word`."""
    return nearest_names(word, spellings(*(kinds or tuple(Kind))))
