"""An amount in a formula: a mass, a volume, or a count of things."""

from __future__ import annotations

from dataclasses import dataclass
from difflib import get_close_matches

from entremetry.errors import QuantityError
from entremetry.quantities.spelling import nearest_units, spellings
from entremetry.quantities.unit import Kind
from entremetry.words import quoted, say, say_later

_A_UNIT = say_later("a unit, such as g or ml, or things, such as sheets")
_IRREGULAR = {"leaves": "leaf", "halves": "half", "loaves": "loaf", "pieces": "piece"}
_KEPT = frozenset({"couscous", "molasses", "swiss", "glass", "grass", "hibiscus"})
# fmt: off
KNOWN_THINGS: frozenset[str] = frozenset((
    "bag", "bar", "bean", "box", "bunch", "can", "clove", "cube", "dash", "disc", "drop", "egg",
    "envelope", "fruit", "half", "jar", "leaf", "lemon", "lime", "packet", "pack", "pat",
    "piece", "pinch", "pod", "sachet", "sheet", "slice", "sprig", "stick", "tin", "tub",
    "white", "yolk",
))
# fmt: on
"""Counted things; a word that is none of them and nearly a unit is a slip of the pen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """A number of a unit; `si` is kg or m³, and None for a count of things."""

    number: float
    unit: str
    kind: Kind
    si: float | None


def counted(number: float, words: str) -> Amount:
    """Make a count of things; refuse words that are nearly a unit."""
    thing = singular(words)
    _refuse_slips(words)
    return Amount(number=number, unit=thing, kind=Kind.COUNT, si=None)


def singular(words: str) -> str:
    """Return the words with their last one in the singular."""
    *before, last = words.split() or [""]
    folded = last.casefold()
    if folded in _IRREGULAR:
        last = _IRREGULAR[folded]
    elif folded.endswith(("ches", "shes", "xes")):
        last = last[:-2]
    elif folded.endswith("s") and len(last) > 3 and folded not in _KEPT:
        last = last[:-1]
    return " ".join((*before, last))


def _refuse_slips(words: str) -> None:
    """Raise QuantityError for '2 tbps' or '3 x', which no one can count."""
    first = words.split()[0] if words else ""
    if not words or singular(first).casefold() in KNOWN_THINGS:
        return
    if any(character in words for character in '{}[]<>|\\=*_~;:!?@$%^&"#'):
        raise QuantityError(quoted(words), say(_A_UNIT))
    close = get_close_matches(first.casefold(), spellings(Kind.MASS, Kind.VOLUME), n=3, cutoff=0.75)
    if close or len(first) < 3:
        nearest = tuple(close) or nearest_units(first, Kind.MASS, Kind.VOLUME)
        raise QuantityError(quoted(words), say(_A_UNIT), nearest)
