"""Numbers as people write them: 1 1/2, 1½, 0.5, 1,5."""

from __future__ import annotations

import re

from entremetry.errors import QuantityError
from entremetry.words import either, quoted, say

FRACTIONS: dict[str, tuple[int, int]] = {
    "¼": (1, 4),
    "½": (1, 2),
    "¾": (3, 4),
    "⅓": (1, 3),
    "⅔": (2, 3),
    "⅛": (1, 8),
    "⅜": (3, 8),
    "⅝": (5, 8),
    "⅞": (7, 8),
    "⅕": (1, 5),
    "⅖": (2, 5),
    "⅗": (3, 5),
    "⅘": (4, 5),
    "⅙": (1, 6),
    "⅚": (5, 6),
}
GLYPHS = "".join(FRACTIONS)
NUMBER_PATTERN = (
    rf"(?:[0-9]++ ?[{GLYPHS}]|(?:[0-9]++ )?[0-9]++[/⁄][0-9]++|[{GLYPHS}]"
    r"|[0-9]{1,3}(?: [0-9]{3})++(?![0-9])(?:\.[0-9]++)?"
    r"|[0-9]++(?:[.,][0-9]++)*+|\.[0-9]++)"
)
"""One number, in a text whose spaces are single."""

_MIXED = re.compile(rf"([0-9]+ ?)?(?:([{GLYPHS}])|(?<![0-9])([0-9]+)[/⁄]([0-9]+))")
_DECIMAL = re.compile(r"[0-9]*\.[0-9]+|[0-9]+")
_THOUSANDS = re.compile(r"[1-9][0-9]{0,2}(?:,[0-9]{3})+(?:\.[0-9]+)?")
_COMMA = re.compile(r"[0-9]+,[0-9]+")
_MOST_DIGITS = 30


def number(text: str) -> float:
    """Read one number, which is never negative; raise QuantityError if it is none."""
    written = " ".join(text.split())
    if len(written) > _MOST_DIGITS:
        found = say("a number of {number} characters", number=len(written))
        raise QuantityError(found, say("a number a scale can show"))
    mixed = _MIXED.fullmatch(written)
    if mixed:
        return _mixed(written, mixed)
    if _THOUSANDS.fullmatch(written):
        raise QuantityError(
            say("'{text}', a thousand to some readers and a decimal to others", text=written),
            either([written.replace(",", ""), written.replace(",", ".", 1)]),
        )
    plain = written.replace(" ", "")
    if _COMMA.fullmatch(plain):
        plain = plain.replace(",", ".")
    if not _DECIMAL.fullmatch(plain):
        raise QuantityError(quoted(written), say("a number, such as 240, 0.5 or 1 1/2"))
    return float(plain)


def _mixed(written: str, match: re.Match[str]) -> float:
    """Add up a whole number and a fraction."""
    whole, glyph, over, under = match.groups()
    top, bottom = FRACTIONS[glyph] if glyph else (int(over), int(under))
    if bottom == 0:
        found = say("'{text}', a division by zero", text=written)
        raise QuantityError(found, say("a number, such as 1/2"))
    return int(whole or 0) + top / bottom


_PRINTED = {top / bottom: glyph for glyph, (top, bottom) in FRACTIONS.items()}


def mixed_text(value: float) -> str:
    """Write a number with a fraction sign where it is a fraction a hand can measure."""
    whole, rest = divmod(value, 1)
    for fraction, glyph in _PRINTED.items():
        if abs(rest - fraction) < 1e-6:
            return f"{whole:.0f}{glyph}" if whole else glyph
    return f"{value:.3f}".rstrip("0").rstrip(".")
