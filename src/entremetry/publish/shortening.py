"""A sentence of a method cut short for the wall, with every quantity in it kept."""

from __future__ import annotations

import re

from entremetry.publish.typesetting import line
from entremetry.quantities.mentions import mentions

SENTENCE_END = re.compile(r"(?<=[.!?])\s+(?=\S)")
TIME = re.compile(r"\d\s*(?:seconds?|minutes?|hours?|days?|s|min|h|d)\b|\d\s*%")


def short(sentence: str) -> str:
    """The first sentence, and of the others those that name a quantity, a time or a share."""
    first, *others = SENTENCE_END.split(line(sentence)) or [""]
    kept = [first, *(each for each in others if named(each))]
    return " ".join(kept)


def named(sentence: str) -> bool:
    """Whether a sentence names a number that somebody measures."""
    return TIME.search(sentence) is not None or next(mentions(sentence), None) is not None
