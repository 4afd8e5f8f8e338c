"""Quantities as they are said in English."""

from __future__ import annotations

from entremetry.publish import unit_words
from entremetry.publish.number_words import (
    LARGEST,
    PARTS,
    decimal_words,
    fraction_words,
    mixed_words,
)
from entremetry.publish.speech import LONGEST, Quantity, Speech, parts

UNITS = {
    **unit_words.SIGNS,
    "seconds": unit_words.second,
    "second": unit_words.second,
    "minutes": unit_words.minute,
    "minute": unit_words.minute,
    "hours": unit_words.hour,
    "hour": unit_words.hour,
    "days": unit_words.day,
    "day": unit_words.day,
    "tbsp": unit_words.tablespoon,
    "tsp": unit_words.teaspoon,
    "cups": unit_words.cup,
    "cup": unit_words.cup,
}


def said(quantity: Quantity) -> str | None:
    """One quantity in words: 'half a cup', 'fifteen to eighteen minutes'."""
    written, following = quantity.written, quantity.following
    if not all(_sayable(each) for each in written):
        return None
    part = _is_part(written[-1])
    words = " to ".join(_words(each) for each in written)
    single = len(written) == 1 and (part or written[0] == "1")
    name = quantity.unit(1 if single else 2) if quantity.unit else ""
    if part and (name or following):
        first = (name or following.strip())[0]
        words += " an" if first.casefold() in "aeiou" else " a"
    minus = "minus " if quantity.minus else ""
    return f"{minus}{words}{' ' if name else ''}{name}{following}"


def _sayable(written: str) -> bool:
    mixed = parts(written)
    if mixed is None:
        return len(written) <= LONGEST and float(written) <= LARGEST
    return mixed[2] in PARTS and len(written) <= LONGEST and 0 < mixed[1] < 20


def _is_part(written: str) -> bool:
    """Whether a number is a fraction below one."""
    mixed = parts(written)
    return mixed is not None and not mixed[0]


def _words(written: str) -> str:
    mixed = parts(written)
    if mixed is None:
        return decimal_words(written)
    whole, top, bottom = mixed
    return mixed_words(whole, top, bottom) if whole else fraction_words(top, bottom)


ENGLISH = Speech(
    units=UNITS,
    point=".",
    to="to",
    other=r", or \1,",
    signs={" / ": " or ", " + ": " plus ", " × ": " by ", "±": "plus or minus "},
    said=said,
)
