"""Quantities mentioned in prose, and which of them stand as a pair."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from entremetry.errors import QuantityError
from entremetry.quantities.number import NUMBER_PATTERN, number
from entremetry.quantities.spelling import unit_called
from entremetry.quantities.table import COUNTRY_SPELLINGS, COUNTRY_WORDS, UNITS
from entremetry.quantities.unit import Kind, Measures, Unit

_KINDS = (Kind.TEMPERATURE, Kind.MASS, Kind.VOLUME, Kind.LENGTH)
_DASH = r"\s*(?:-|–|—|\bto\b|\band\b)\s*"


@dataclass(frozen=True, slots=True, kw_only=True)
class Mention:
    """One quantity, or a range of it, with every unit its words may mean."""

    start: int
    end: int
    numbers: tuple[float, ...]
    written: tuple[str, ...]
    units: tuple[Unit, ...]
    word: str

    @property
    def kind(self) -> Kind:
        """What is measured."""
        return self.units[0].kind


def _spelled() -> str:
    """Pattern of every unit that is looked for, longest first."""
    plain = {s for u in UNITS if u.kind in _KINDS for s in (u.name, *u.spellings)}
    letters = {"° ?C", "° ?F", "º ?C", "º ?F", "deg\\.? ?C", "deg\\.? ?F", "℃", "℉", "C", "F"}
    words = sorted((plain - {"K", "m", '"'}) | set(COUNTRY_WORDS), key=len, reverse=True)
    countries = "|".join(re.escape(word) for word in COUNTRY_SPELLINGS)
    measures = "|".join(re.escape(word) for word in sorted(COUNTRY_WORDS, key=len, reverse=True))
    joined = "|".join((*sorted(letters, key=len, reverse=True), *map(re.escape, words)))
    return rf"(?:(?:(?i:{countries}) (?i:{measures})|(?i:{joined}))(?![^\W_])|\"|″)"


_SIGNED = rf"(?:(?<![\w.,])[-−])?(?<![\w.,])(?<![0-9]/)(?:{NUMBER_PATTERN})"
_JOINT = re.compile(
    r"\.?\s*(?:[(\[]\s*(?:or |about |approx\.? |ca\.? |= ?|≈ ?)?|[/=≈]\s*|,?\s+or\s+"
    r"|,?\s+(?:that is|i\.e\.),?\s*)",
    re.IGNORECASE,
)
_LETTERS = {"C": "°C", "F": "°F", "℃": "°C", "℉": "°F"}


@cache
def _mention_pattern() -> re.Pattern[str]:
    """Pattern of a quantity or a range of it; made at the first use, for it is long."""
    unit = _spelled()
    return re.compile(rf"({_SIGNED})(?:\s*({unit})?{_DASH}({_SIGNED}))?[\s-]*({unit})")


def pairs(text: str) -> Iterator[tuple[Mention, Mention]]:
    """Yield neighbouring mentions which stand for one another."""
    found = list(mentions(text))
    for first, second in zip(found, found[1:], strict=False):
        between = text[first.end : second.start]
        if _JOINT.fullmatch(between) and _comparable(first, second):
            yield first, second


def mentions(text: str) -> Iterator[Mention]:
    """Yield every quantity of a text, in order."""
    for match in _mention_pattern().finditer(text):
        mention = _mention(match)
        if mention:
            yield mention


def _comparable(first: Mention, second: Mention) -> bool:
    """Tell whether two mentions can stand for one another: other unit, as many numbers."""
    if len(first.numbers) != len(second.numbers):
        return False
    if {first.kind, second.kind} == {Kind.MASS, Kind.VOLUME}:
        return True
    return first.kind is second.kind and first.units != second.units


def _mention(match: re.Match[str]) -> Mention | None:
    """Make a mention, unless a word in it has no meaning we know."""
    low, low_unit, high, word = match.groups()
    written = (low, high) if high else (low,)
    units = units_of(word)
    if not units or (low_unit and units_of(low_unit) != units):
        return None
    try:
        numbers = tuple(signed(each) for each in written)
    except QuantityError:
        return None
    return Mention(
        start=match.start(),
        end=match.end(),
        numbers=numbers,
        written=written,
        units=units,
        word=word,
    )


def signed(written: str) -> float:
    """Read a number with its sign."""
    value = number(written.lstrip("-−"))
    return -value if written[0] in "-−" else value


def units_of(word: str) -> tuple[Unit, ...]:
    """Return every unit that a word may mean: a cup is one of several countries."""
    plain = " ".join(word.split())
    letter = plain.removeprefix("°").removeprefix("º").strip()
    plain = _LETTERS.get(letter, plain)
    measure = COUNTRY_WORDS.get(plain.casefold())
    if measure:
        names = [f"{whose} {measure}" for whose in (*Measures, "label")]
        return tuple(unit for unit in UNITS if unit.name in names)
    try:
        unit = unit_called(plain)
    except QuantityError:
        return ()
    return (unit,) if unit and unit.kind in _KINDS else ()
