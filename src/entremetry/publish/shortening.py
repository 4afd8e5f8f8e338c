"""A sentence of a method cut short for the wall, with every quantity in it kept."""

from __future__ import annotations

import re

from entremetry.publish.typesetting import line
from entremetry.quantities.mentions import mentions
from entremetry.words import ENGLISH, current

SENTENCE_END = re.compile(r"(?<=[.!?])\s+(?=\S)")
CAPITAL_FOLLOWS = re.compile(r"(?<=[.!?])\s+(?=[^\W\d_a-zà-öø-ÿœ]|[«“])")
"""Where 'c. à s.' may stand within a sentence."""
TIME = re.compile(
    r"\d\s*(?:seconds?|minutes?|hours?|days?|secondes?|heures?|jours?|s|min|h|d|j)\b|\d\s*%"
)


def short(sentence: str) -> str:
    """The first sentence, and of the others those that name a quantity, a time or a share."""
    end = SENTENCE_END if current() is ENGLISH else CAPITAL_FOLLOWS
    first, *others = end.split(line(sentence)) or [""]
    kept = [first, *(each for each in others if named(each))]
    return " ".join(kept)


def named(sentence: str) -> bool:
    """Whether a sentence names a number that somebody measures."""
    return TIME.search(sentence) is not None or next(mentions(sentence), None) is not None
