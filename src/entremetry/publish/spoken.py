"""A text as it is said aloud: every number and unit in words."""

from __future__ import annotations

import re
from functools import cache

from entremetry.publish.speech import Quantity, Speech
from entremetry.publish.speech_english import ENGLISH
from entremetry.publish.speech_french import FRENCH
from entremetry.publish.typography import MINUS
from entremetry.publish.unit_words import SIGNS
from entremetry.quantities.mentions import Mention, mentions, pairs
from entremetry.quantities.unit import Kind
from entremetry.words import current

RULES = {"en": ENGLISH, "fr": FRENCH}
"""Languages whose numbers can be put into words; another one keeps the digits."""
SPARE_COMMA = re.compile(r",(?=[,.;:!?)]|\Z)")


def speech() -> Speech:
    """The rules of the language that is spoken."""
    spoken_here = current()
    return RULES.get(spoken_here.code) or digits_kept(spoken_here.decimal)


@cache
def digits_kept(point: str) -> Speech:
    """For a language without rules: numbers stay in digits, signs of units become words."""
    return Speech(
        units=SIGNS,
        point=point,
        to="–",
        other=r", \1,",
        signs={},
        said=lambda quantity: _in_digits(quantity, point),
    )


def _in_digits(quantity: Quantity, point: str) -> str | None:
    if quantity.unit is None:
        return None
    whole = quantity.written[-1].partition(point)[0]
    name = quantity.unit(float(whole) if whole.isdecimal() else 1.0)
    minus = MINUS if quantity.minus else ""
    return f"{minus}{'–'.join(quantity.written)} {name}{quantity.following}"


def spoken(text: str) -> str:
    """Text with its numbers in words; the second of a pair follows after 'or'."""
    rules = speech()
    words = rules.pair.sub(rules.other, text)
    words = rules.quantity.sub(lambda match: _said(match, rules), words)
    for sign, word in rules.signs.items():
        words = words.replace(sign, word)
    return SPARE_COMMA.sub("", words)


def shown(text: str) -> tuple[str, ...]:
    """Every quantity of a text with its unit, as it is written."""
    found = (match for match in speech().quantity.finditer(text) if match["unit"])
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


def _said(match: re.Match[str], rules: Speech) -> str:
    """One quantity in words; what is no number of a kitchen stays as it stands."""
    unit = match["unit"]
    quantity = Quantity(
        written=(match["number"], *([match["high"]] if match["high"] else [])),
        unit=rules.units[unit] if unit else None,
        following=match["next"] or "",
        minus=bool(match["minus"]),
    )
    words = rules.said(quantity)
    return match[0] if words is None else words
