"""Quantities mentioned in prose, and which of them stand as a pair."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from entremetry.errors import QuantityError
from entremetry.quantities.number import GLYPHS, NUMBER_PATTERN, number
from entremetry.quantities.spelling import unit_called
from entremetry.quantities.table import COUNTRY_SPELLINGS, COUNTRY_WORDS, UNITS
from entremetry.quantities.unit import Kind, Measures, Unit

_KINDS = (Kind.TEMPERATURE, Kind.MASS, Kind.VOLUME, Kind.LENGTH)


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


@cache
def _spelled() -> frozenset[str]:
    """Every folded spelling of the units that are looked for."""
    plain = {s.casefold() for u in UNITS if u.kind in _KINDS for s in (u.name, *u.spellings)}
    letters = {"°c", "°f", "° c", "° f", "ºc", "ºf", "º c", "º f"}
    countries = {f"{c} {m}" for c in COUNTRY_SPELLINGS for m in COUNTRY_WORDS}
    return frozenset((plain - {"k", "m"}) | letters | countries | set(COUNTRY_WORDS))


_NUMBER = re.compile(
    rf"(?=[-−.0-9{GLYPHS}])(?:(?<![\w.,])[-−])?(?<![\w.,])(?<![0-9]/)(?:{NUMBER_PATTERN})"
)
_DASH = re.compile(r"\s{0,3}(?:-|–|—|\bto\b|\band\b|\bà\b)\s{0,3}")
_SHAPE = re.compile(
    r"[\s-]{0,3}([℃℉\"″]|[°º] ?[CFcf](?![^\W_])|[A-Za-z][A-Za-z.]{0,13}(?: [A-Za-z.]{1,12}){0,2})"
)
_JOINT = re.compile(
    r"\.?\s{0,3}(?:[(\[]\s{0,3}(?:or |about |approx\.? |ca\.? |= ?|≈ ?)?|[/=≈]\s{0,3}|,?\s+or\s+"
    r"|,?\s+ou\s+|,?\s+(?:that is|i\.e\.),?\s*)",
    re.IGNORECASE,
)
_LETTERS = {"C": "°C", "F": "°F", "℃": "°C", "℉": "°F"}


def pairs(text: str) -> Iterator[tuple[Mention, Mention]]:
    """Yield neighbouring mentions which stand for one another."""
    found = list(mentions(text))
    for first, second in zip(found, found[1:], strict=False):
        between = text[first.end : second.start]
        if _JOINT.fullmatch(between) and _comparable(first, second):
            yield first, second


def mentions(text: str) -> Iterator[Mention]:
    """Yield every quantity of a text, in order."""
    position = 0
    while low := _NUMBER.search(text, position):
        mention = _range_at(text, low) or _single_at(text, low)
        if mention:
            yield mention
        position = mention.end if mention else low.end()


def _single_at(text: str, only: re.Match[str]) -> Mention | None:
    """Return one number with its unit."""
    word = _word_at(text, only.end())
    return _mention(only.start(), (only[0],), word) if word else None


def _range_at(text: str, low: re.Match[str]) -> Mention | None:
    """Return two numbers with their unit, which the first may carry too."""
    first = _word_at(text, low.end())
    dash = _DASH.match(text, first.end if first else low.end())
    high = _NUMBER.match(text, dash.end()) if dash else None
    word = _word_at(text, high.end()) if high else None
    if high is None or word is None or (first and units_of(first.text) != units_of(word.text)):
        return None
    return _mention(low.start(), (low[0], high[0]), word)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Word:
    """The words of a unit, and where they end."""

    text: str
    end: int


def _word_at(text: str, position: int) -> _Word | None:
    """Return the longest words at a position that are a unit."""
    shape = _SHAPE.match(text, position)
    if shape is None:
        return None
    words, end = shape[1], shape.end()
    while words:
        if words in _LETTERS or _folded(words) in _spelled():
            kept = words.rstrip(".")
            return _Word(text=kept, end=end - len(words) + len(kept))
        shorter = words.rpartition(" ")[0]
        end -= len(words) - len(shorter)
        words = shorter
    return None


def _folded(words: str) -> str:
    """Fold the words of a unit, without the dots of abbreviations."""
    folded = words.casefold()
    return folded if folded.startswith("u.s. ") else folded.replace(".", "")


def _comparable(first: Mention, second: Mention) -> bool:
    """Tell whether two mentions can stand for one another: other unit, as many numbers."""
    if len(first.numbers) != len(second.numbers):
        return False
    if {first.kind, second.kind} == {Kind.MASS, Kind.VOLUME}:
        return True
    return first.kind is second.kind and first.units != second.units


def _mention(start: int, written: tuple[str, ...], word: _Word) -> Mention | None:
    """Make a mention, unless a word or number in it has no meaning we know."""
    units = units_of(word.text)
    if not units:
        return None
    try:
        numbers = tuple(signed(each) for each in written)
    except QuantityError:
        return None
    return Mention(
        start=start,
        end=word.end,
        numbers=numbers,
        written=written,
        units=units,
        word=word.text,
    )


def signed(written: str) -> float:
    """Read a number with its sign."""
    value = number(written.lstrip("-−"))
    return -value if written[0] in "-−" else value


@cache
def units_of(word: str) -> tuple[Unit, ...]:
    """Return every unit that a word may mean: a cup is one of several countries."""
    plain = " ".join(word.split())
    letter = plain.removeprefix("°").removeprefix("º").strip()
    plain = _LETTERS.get(letter, plain)
    measure = COUNTRY_WORDS.get(_folded(plain))
    if measure:
        names = [f"{whose} {measure}" for whose in (*Measures, "label")]
        return tuple(unit for unit in UNITS if unit.name in names)
    try:
        unit = unit_called(plain)
    except QuantityError:
        return ()
    return (unit,) if unit and unit.kind in _KINDS else ()
