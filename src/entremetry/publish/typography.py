"""Numbers and units as a page prints them, in the language that is spoken."""

from __future__ import annotations

import re

from entremetry.publish.french_spacing import french
from entremetry.words import current

NO_BREAK = "\u00a0"
NARROW = "\u202f"
MINUS = "\u2212"
TIMES = "×"

UNIT = (
    r"(?:kg|g|mg|ml|mL|l|L|cl|dl|mm|cm|m|min|h|s|°C|°F|°Bx|%|cups?|tbsp|tsp|oz|lb|sheets?|pieces?)"
)
BEFORE_UNIT = re.compile(rf"(?<=\d) (?={UNIT}\b|[°%])")
MINUS_SIGN = re.compile(r"(?<![\w.,)-])-(?=\d)")
BETWEEN_SIZES = re.compile(r"(?<=\d)( ?)x( ?)(?=\d)")
RANGE = re.compile(r"(?<=\d)-(?=\d+(?:[.,]\d+)?(?:\s|$|[°%]))")


def typeset(text: str) -> str:
    """Text with true minus and multiplication signs, and numbers kept beside their units."""
    text = MINUS_SIGN.sub(MINUS, text)
    text = BETWEEN_SIZES.sub(rf"\1{TIMES}\2", text)
    text = RANGE.sub("–", text)
    text = BEFORE_UNIT.sub(NO_BREAK, text)
    return french(text) if current().code == "fr" else text


def grams(mass: float) -> str:
    """Mass in kg, said in grams as a scale shows them."""
    value = mass * 1e3
    if abs(value) >= 9.95:
        return f"{_signed(f'{value:,.0f}')}{NO_BREAK}g"
    places = 1 if abs(value) >= 0.995 else 2
    text = f"{value:.{places}f}".rstrip("0").rstrip(".")
    return f"{_signed(text)}{NO_BREAK}g"


def millilitres(volume: float) -> str:
    """Volume in m3, said in millilitres."""
    value = volume * 1e6
    text = f"{value:,.0f}" if value >= 99.5 else f"{value:.1f}".removesuffix(".0")
    return f"{_signed(text)}{NO_BREAK}ml"


def millimetres(length: float) -> str:
    """Length in m, said in millimetres to a tenth."""
    text = f"{length * 1e3:.1f}".removesuffix(".0")
    return f"{_signed(text)}{NO_BREAK}mm"


def per_cent(fraction: float) -> str:
    """Fraction as a percentage with the digits it deserves."""
    value = abs(fraction) * 100.0
    text = f"{value:.1f}".removesuffix(".0") if value < 10.0 else f"{value:.0f}"
    sign = MINUS if fraction < 0 else ""
    return f"{sign}{_signed(text)}{current().before_percent}%"


def hours(time: float) -> str:
    """Seconds as hours and minutes."""
    minutes = round(time / 60.0)
    whole, rest = divmod(minutes, 60)
    parts = [f"{whole}{NO_BREAK}h"] * bool(whole) + [f"{rest}{NO_BREAK}min"] * bool(rest)
    return " ".join(parts) or f"0{NO_BREAK}min"


def _signed(written: str) -> str:
    """A number written as 1,234.5 with the spoken language's signs, in groups of three digits."""
    spoken = current()
    return written.translate({ord(","): spoken.group, ord("."): spoken.decimal})
