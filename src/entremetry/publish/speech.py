"""How quantities are said aloud in a language: what its rules are told, and what they give."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from entremetry.quantities.number import FRACTIONS, GLYPHS

MIXED = re.compile(rf"(?:([0-9]+) ?)?(?:([{GLYPHS}])|(?<![0-9])([0-9]+)/([0-9]+))")
LONGEST = 12
"""Digits of a number that a kitchen says."""
UnitWord = Callable[[float], str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Quantity:
    """A quantity as it is written: one number, or both ends of a range, with what follows.

    `unit` says the unit for a number of them, `following` is the next word with its space.
    """

    written: tuple[str, ...]
    unit: UnitWord | None = None
    following: str = ""
    minus: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Speech:
    """The rules of one language.

    `units` are words and signs as they are written behind a number; `point` parts the decimals;
    `to` joins the ends of a range; `said` puts a quantity into words, or returns None for one
    that stays as it is written.
    """

    units: Mapping[str, UnitWord]
    point: str
    to: str
    other: str
    signs: Mapping[str, str]
    said: Callable[[Quantity], str | None]
    quantity: re.Pattern[str] = field(init=False)
    pair: re.Pattern[str] = field(init=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "quantity", _quantity(self.units, self.point, self.to))
        number = rf"[-−]?[0-9{re.escape(self.point)}]+"
        object.__setattr__(self, "pair", re.compile(rf" \(({number} °[CF])\)"))


def _quantity(units: Mapping[str, UnitWord], point: str, to: str) -> re.Pattern[str]:
    mark = re.escape(point)
    number = rf"(?:[0-9]+ ?[{GLYPHS}]|[{GLYPHS}]|(?:[0-9]+ )?[0-9]+/[0-9]+|[0-9]+(?:{mark}[0-9]+)?)"
    unit = "|".join(re.escape(each) for each in sorted(units, key=len, reverse=True))
    return re.compile(
        rf"(?P<minus>(?<![\w.,)])[-−])?(?<![\w.,/])(?P<number>{number})(?![0-9/]|[.,][0-9])"
        rf"(?:(?:[-–]| {to} )(?P<high>{number})(?![0-9/]|[.,][0-9]))?"
        rf"(?: ?(?P<unit>{unit})(?![^\W\d_]|/))?(?P<next> [^\W\d_]+)?"
    )


def parts(written: str) -> tuple[int, int, int] | None:
    """Whole number, top and bottom of a number with a fraction; None if it has none."""
    mixed = MIXED.fullmatch(written)
    if mixed is None:
        return None
    top, bottom = FRACTIONS[mixed[2]] if mixed[2] else (int(mixed[3]), int(mixed[4]))
    return int(mixed[1] or 0), top, bottom
