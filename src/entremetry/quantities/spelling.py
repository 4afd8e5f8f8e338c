"""Which unit a word means; the ambiguous words are refused, never guessed."""

from __future__ import annotations

from functools import cache

from entremetry.errors import QuantityError, nearest_names
from entremetry.quantities.table import COUNTRY_SPELLINGS, COUNTRY_WORDS, UNITS
from entremetry.quantities.unit import Kind, Measures, Unit
from entremetry.words import quoted, say, say_later

AMBIGUOUS: dict[str, tuple[str, str]] = {
    "T": (say_later("a tablespoon to some, nothing to others"), "tbsp"),
    "Tb": (say_later("a tablespoon to some"), "tbsp"),
    "t": (say_later("a teaspoon to some, a tonne to others"), say_later("tsp, or kg")),
    "c": (say_later("a cup to some"), say_later("cup, or °C for a temperature")),
    "C": (
        say_later("a cup to some, degrees Celsius to others"),
        say_later("cup, or °C for a temperature"),
    ),
    "F": (say_later("degrees Fahrenheit to some"), "°F"),
    "M": (say_later("metres or minutes"), say_later("m, mm or min")),
    "Mg": (say_later("milligrams or tonnes"), say_later("mg, or kg")),
    "gr": (say_later("a grain to some, a gram to others"), "g"),
    "grs": (say_later("grains to some, grams to others"), "g"),
    "#": (say_later("a pound to some, a number to others"), "lb"),
    "'": (say_later("feet or minutes"), say_later("ft or min")),
    "dag": (say_later("a unit that few readers know"), "g"),
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
    "dessertspoon": say_later("tsp or ml"),
    "dessertspoons": say_later("tsp or ml"),
    "glass": "ml",
    "glasses": "ml",
    "spoon": say_later("tsp or tbsp"),
    "spoons": say_later("tsp or tbsp"),
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
        meaning, instead = (say(each) for each in AMBIGUOUS[spelled])
        raise QuantityError(say("'{text}', {meaning}", text=spelled, meaning=meaning), instead)
    folded = " ".join(spelled.casefold().replace("fl. oz", "fl oz").split())
    if folded in UNKNOWN_SIZES:
        found = say("'{text}', a measure this kitchen does not use", text=folded)
        raise QuantityError(found, say(UNKNOWN_SIZES[folded]))
    if folded in COUNTRY_WORDS:
        return _of_country(word, COUNTRY_WORDS[folded], measures)
    return _by_spelling().get(folded) or _with_country(folded)


def unit_named(name: str) -> Unit:
    """Return the unit of the table which bears exactly this name."""
    for unit in UNITS:
        if unit.name == name:
            return unit
    raise QuantityError(quoted(name), say("the name of a unit"), nearest_units(name))


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
    found = say("'{text}', a measure we know no size for", text=folded)
    raise QuantityError(found, say("the amount in ml"))


def _of_country(word: str, measure: str, measures: Measures | str | None) -> Unit:
    """Return a cup or spoon of the country that is given; refuse to guess one."""
    choices = [choice for choice in Measures if f"{choice} {measure}" in _by_spelling()]
    if measures is None:
        listed = ", ".join(f"{choice} {measure}" for choice in choices)
        raise QuantityError(
            say("'{text}' without whose it is", text=word.strip()),
            say("one of {names}; or 'measures:' for all", names=listed),
        )
    unit = _by_spelling().get(f"{Measures(measures)} {measure}")
    if unit is None:
        listed = ", ".join(f"{choice} {measure}" for choice in choices)
        raise QuantityError(
            say("'{text}' in {measures} measures", text=word.strip(), measures=measures),
            say("ml, or one of {names}", names=listed),
        )
    return unit


def spellings(*kinds: Kind) -> tuple[str, ...]:
    """Return the names of the units of these kinds, the plain cups and spoons included."""
    names = {unit.name for unit in UNITS if unit.kind in kinds}
    names |= {other for unit in UNITS if unit.kind in kinds for other in unit.spellings}
    return tuple(sorted(names | (set(COUNTRY_WORDS) if Kind.VOLUME in kinds else set())))


def nearest_units(word: str, *kinds: Kind) -> tuple[str, ...]:
    """Return the spellings of units which look most like `word`."""
    return nearest_names(word, spellings(*(kinds or tuple(Kind))))
