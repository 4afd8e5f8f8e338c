"""A text as it is said aloud: every number and unit in words."""

from __future__ import annotations

import re

from entremetry.publish.number_words import (
    LARGEST,
    PARTS,
    decimal_words,
    fraction_words,
    mixed_words,
)
from entremetry.publish.typography import MINUS
from entremetry.quantities.mentions import Mention, mentions, pairs
from entremetry.quantities.number import FRACTIONS, GLYPHS
from entremetry.quantities.unit import Kind

UNITS = {
    "g/ml": ("gram per millilitre", "grams per millilitre"),
    "kg": ("kilogram", "kilograms"),
    "mg": ("milligram", "milligrams"),
    "g": ("gram", "grams"),
    "ml": ("millilitre", "millilitres"),
    "l": ("litre", "litres"),
    "mm": ("millimetre", "millimetres"),
    "cm": ("centimetre", "centimetres"),
    "min": ("minute", "minutes"),
    "h": ("hour", "hours"),
    "s": ("second", "seconds"),
    "seconds": ("second", "seconds"),
    "second": ("second", "seconds"),
    "minutes": ("minute", "minutes"),
    "minute": ("minute", "minutes"),
    "hours": ("hour", "hours"),
    "hour": ("hour", "hours"),
    "days": ("day", "days"),
    "day": ("day", "days"),
    "tbsp": ("tablespoon", "tablespoons"),
    "tsp": ("teaspoon", "teaspoons"),
    "cups": ("cup", "cups"),
    "cup": ("cup", "cups"),
    "oz": ("ounce", "ounces"),
    "lb": ("pound", "pounds"),
    "°C": ("degree Celsius", "degrees Celsius"),
    "°F": ("degree Fahrenheit", "degrees Fahrenheit"),
    "°Bx": ("degree Brix", "degrees Brix"),
    "%": ("per cent", "per cent"),
}
NUMBER = rf"(?:[0-9]+ ?[{GLYPHS}]|[{GLYPHS}]|(?:[0-9]+ )?[0-9]+/[0-9]+|[0-9]+(?:\.[0-9]+)?)"
UNIT = "|".join(re.escape(unit) for unit in UNITS)
QUANTITY = re.compile(
    rf"(?P<minus>(?<![\w.,)])[-{MINUS}])?(?<![\w.,/])(?P<number>{NUMBER})(?![0-9/]|[.,][0-9])"
    rf"(?:(?:[-–]| to )(?P<high>{NUMBER})(?![0-9/]|[.,][0-9]))?"
    rf"(?: ?(?P<unit>{UNIT})(?![^\W\d_]|/))?(?P<next> [^\W\d_])?"
)
MIXED = re.compile(rf"(?:([0-9]+) ?)?(?:([{GLYPHS}])|(?<![0-9])([0-9]+)/([0-9]+))")
PAIR = re.compile(rf" \(([-{MINUS}]?[0-9.]+ °[CF])\)")
SIGNS = {" / ": " or ", " + ": " plus ", " × ": " by ", "±": "plus or minus "}
SPARE_COMMA = re.compile(r",(?=[,.;:!?)]|\Z)")


def spoken(text: str) -> str:
    """Text with its numbers in words; the second of a pair follows after 'or'."""
    words = PAIR.sub(r", or \1,", text)
    words = QUANTITY.sub(_said, words)
    for sign, word in SIGNS.items():
        words = words.replace(sign, word)
    return SPARE_COMMA.sub("", words)


def shown(text: str) -> tuple[str, ...]:
    """Every quantity of a text with its unit, as it is written."""
    found = (match for match in QUANTITY.finditer(text) if match["unit"])
    return tuple(text[match.start() : match.end("unit")] for match in found)


def in_both_scales(text: str) -> str:
    """Text in which every temperature stands in °C and in °F."""
    paired = {mention.start for pair in pairs(text) for mention in pair}
    lone = [
        mention
        for mention in mentions(text)
        if mention.kind is Kind.TEMPERATURE and mention.start not in paired
    ]
    for mention in reversed(lone):
        text = f"{text[: mention.end]} ({_other_scale(mention)}){text[mention.end :]}"
    return text


def _other_scale(mention: Mention) -> str:
    celsius = mention.units[0].name == "°C"
    values = [
        round(value * 1.8 + 32.0 if celsius else (value - 32.0) / 1.8) for value in mention.numbers
    ]
    return f"{'–'.join(str(value) for value in values)} {'°F' if celsius else '°C'}"


def _said(match: re.Match[str]) -> str:
    """One quantity in words; what is no number of a kitchen stays as it stands."""
    written = [match["number"], *([match["high"]] if match["high"] else [])]
    if not all(_sayable(each) for each in written):
        return match[0]
    unit, following = match["unit"], match["next"] or ""
    part = _is_part(written[-1])
    words = " to ".join(_words(each) for each in written)
    single = len(written) == 1 and (part or written[0] == "1")
    name = UNITS[unit][0 if single else 1] if unit else ""
    if part and (name or following):
        first = (name or following.strip())[0]
        words += " an" if first.casefold() in "aeiou" else " a"
    minus = "minus " if match["minus"] else ""
    return f"{minus}{words}{' ' if name else ''}{name}{following}"


def _sayable(written: str) -> bool:
    mixed = MIXED.fullmatch(written)
    if mixed is None:
        return len(written) <= 12 and float(written) <= LARGEST
    return _parts(mixed)[2] in PARTS and len(written) <= 12 and 0 < _parts(mixed)[1] < 20


def _is_part(written: str) -> bool:
    """Whether a number is a fraction below one."""
    mixed = MIXED.fullmatch(written)
    return mixed is not None and not _parts(mixed)[0]


def _parts(mixed: re.Match[str]) -> tuple[int, int, int]:
    """Whole number, top and bottom."""
    top, bottom = FRACTIONS[mixed[2]] if mixed[2] else (int(mixed[3]), int(mixed[4]))
    return int(mixed[1] or 0), top, bottom


def _words(written: str) -> str:
    mixed = MIXED.fullmatch(written)
    if mixed is None:
        return decimal_words(written)
    whole, top, bottom = _parts(mixed)
    return mixed_words(whole, top, bottom) if whole else fraction_words(top, bottom)
