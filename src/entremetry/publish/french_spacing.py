"""Spaces and apostrophes of French print: before high signs, inside quotation marks, at numbers.

A narrow space before ; ! ? and a full one before : and inside « », none of which may break: the
usage of the French printing house (Lexique des regles typographiques, from memory). A percent
sign has the space of the Unicode locale data.
"""

from __future__ import annotations

import re

SPACES = "[ \u00a0\u202f]"
HIGH_SIGN = re.compile(rf"(?<=[^\s;:!?(]){SPACES}*(?=[;!?]+(?:\s|$|[»”)\]]))")
COLON = re.compile(rf"(?<=[^\s;:!?(]){SPACES}*(?=:(?:\s|$))")
OPENING = re.compile(rf"«{SPACES}*")
CLOSING = re.compile(rf"{SPACES}*»")
PERCENT = re.compile(rf"(?<=\d){SPACES}*(?=%(?!\w))")
APOSTROPHE = re.compile(r"(?<=[^\W\d_])'(?=\w)")
UNIT = re.compile(
    r"(?<=[\d}½⅓¼¾⅔⅛]) "  # } ends a number that is filled in later
    r"(?=c\. à [sc]\.|(?:pièces?|feuilles?|tasses?|jours?|j|parts?|personnes?)\b)"
)
INSIDE_SPOON = re.compile(r"\bc\. à (?=[sc]\.)")


def french(text: str) -> str:
    """Text with the spaces of French print; what has them already stays as it is."""
    text = HIGH_SIGN.sub("\u202f", text)
    text = COLON.sub("\u00a0", text)
    text = CLOSING.sub("\u00a0»", OPENING.sub("«\u00a0", text))
    text = PERCENT.sub("\u00a0", text)
    text = APOSTROPHE.sub("’", text)
    text = UNIT.sub("\u00a0", text)
    return INSIDE_SPOON.sub("c.\u00a0à\u00a0", text)
