"""Quantities as they are said in French."""

from __future__ import annotations

from entremetry.publish import unit_words
from entremetry.publish.number_words_french import (
    LARGEST,
    PARTS,
    decimal_words,
    part_words,
    whole_words,
)
from entremetry.publish.speech import LONGEST, Quantity, Speech, parts

UNITS = {
    **unit_words.SIGNS,
    **dict.fromkeys(("seconde", "secondes"), unit_words.second),
    **dict.fromkeys(("minute", "minutes"), unit_words.minute),
    **dict.fromkeys(("heure", "heures"), unit_words.hour),
    **dict.fromkeys(("jour", "jours", "j"), unit_words.day),
    **dict.fromkeys(
        ("c. à s.", "c. à soupe", "cuil. à soupe", "cuillère à soupe", "cuillères à soupe"),
        unit_words.tablespoon,
    ),
    **dict.fromkeys(
        ("c. à c.", "c. à café", "cuil. à café", "cuillère à café", "cuillères à café"),
        unit_words.teaspoon,
    ),
    **dict.fromkeys(("tasse", "tasses"), unit_words.cup),
}
FEMININE = frozenset(
    (
        *("barre", "boîte", "boule", "cavité", "couche", "cuillère", "cuillerée", "feuille"),
        *("fournée", "gousse", "goutte", "heure", "livre", "minute", "once", "part", "pièce"),
        *("pincée", "plaque", "portion", "seconde", "semaine", "tasse", "tranche", "verrine"),
    )
)
"""Things that are counted in a kitchen and take 'une'."""
JOINTS = frozenset(
    (
        *("à", "au", "aux", "avant", "chacun", "chacune", "contre", "d", "dans", "de", "des"),
        *("dont", "du", "en", "entre", "environ", "et", "jusqu", "l", "ou", "par", "pour"),
        *("puis", "sans", "sous", "sur"),
    )
)
"""Words behind a number that name nothing counted."""


def said(quantity: Quantity) -> str | None:
    """One quantity in words: 'une demi-tasse', 'deux cuillères à soupe et demie'."""
    if not all(_sayable(each) for each in quantity.written):
        return None
    last = quantity.written[-1]
    mixed = parts(last)
    noun = quantity.unit(_number(last)) if quantity.unit else _counted(quantity.following)
    rest = quantity.following if quantity.unit or not noun else ""
    feminine = _is_feminine(noun)
    if len(quantity.written) == 1 and mixed:
        words = _with_part(*mixed, noun, feminine=feminine)
    else:
        ends = " à ".join(_alone(each, feminine=feminine) for each in quantity.written)
        words = f"{ends} {noun}" if noun else ends
    return f"{'moins ' if quantity.minus else ''}{words}{rest}"


def _with_part(whole: int, top: int, bottom: int, noun: str, *, feminine: bool) -> str:
    """A fraction of a thing, or things and a fraction."""
    half = (top, bottom) == (1, 2)
    if whole:
        part = f"demi{'e' * feminine}" if half else part_words(top, bottom)
        return f"{whole_words(whole, feminine=feminine)} {noun}".rstrip() + f" et {part}"
    if half:
        return f"un{'e' * feminine} demi-{noun}" if noun else "un demi"
    of = "d’" if noun[:1].casefold() in {*"aeiouyhéèêœâîô"} else "de "
    return f"{part_words(top, bottom)} {of}{noun}" if noun else part_words(top, bottom)


def _alone(written: str, *, feminine: bool) -> str:
    mixed = parts(written)
    if mixed is None:
        return decimal_words(written, feminine=feminine)
    return _with_part(*mixed, "", feminine=False)


def _counted(following: str) -> str:
    """The next word, if it is something that can be counted."""
    word = following.strip()
    return "" if word.casefold() in JOINTS else word


def _is_feminine(noun: str) -> bool:
    head = noun.partition(" ")[0].casefold()
    return head in FEMININE or head.removesuffix("s") in FEMININE


def _number(written: str) -> float:
    """How many, as far as the form of a noun goes."""
    mixed = parts(written)
    return float(mixed[0]) if mixed else float(written.replace(",", "."))


def _sayable(written: str) -> bool:
    mixed = parts(written)
    if mixed is None:
        return len(written) <= LONGEST and _number(written) <= LARGEST
    return mixed[2] in PARTS and len(written) <= LONGEST and 0 < mixed[1] < 20


FRENCH = Speech(
    units=UNITS,
    point=",",
    to="à",
    other=r", ou \1,",
    signs={" / ": " ou ", " + ": " plus ", " × ": " sur ", "±": "plus ou moins "},
    said=said,
)
