"""Which lines of a formula a sentence names, and where its words could mean several."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from entremetry.larder.spelling import plain
from entremetry.quantities.amount import singular

_WORD = re.compile(r"[^\W\d_]{3,}")
_ALL = re.compile(
    r"\b(?:all (?:of )?(?:the )?(?:\w+ )?ingredients|everything|tous les ingrédients|le tout)\b",
    re.IGNORECASE,
)
_PART = re.compile(
    r"\b(?:half|third|quarter|some|part|rest|remaining|remainder|moitié|tiers|reste)\b",
    re.IGNORECASE,
)
_IDLE = frozenset(
    {"the", "and", "with", "for", "from", "plus", "each", "into", "des", "les", "une", "avec"}
    | {"large", "small", "medium", "cold", "warm", "hot", "fine", "soft", "whole", "fresh"}
    | {"dark", "white", "chopped", "unsalted"}
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Named:
    """Places of the lines that are named for certain, and of those of which some may be meant.

    `everything` if the words mean all that is left; `part` if they take only a part of something.
    """

    certain: tuple[int, ...] = ()
    possible: tuple[int, ...] = ()
    everything: bool = False
    part: bool = False


def named_lines(sentence: str, names: Sequence[str]) -> Named:
    """Lines that a sentence names: by all their words, or by a word that no other line bears."""
    said = set(_words(sentence))
    bears = [frozenset(_words(name)) - _IDLE for name in names]
    whole = {i for i, words in enumerate(bears) if words and words <= said}
    whole -= {i for i in whole for j in whole if bears[i] < bears[j]}
    taken = frozenset().union(*(bears[i] for i in whole)) if whole else frozenset()
    twins = {i for i in whole for j in whole if i != j and bears[i] == bears[j]}
    certain, possible = whole - twins, set(twins)
    for word in said - taken:
        owners = {i for i, words in enumerate(bears) if word in words}
        if len(owners) == 1:
            certain |= owners
        else:
            possible |= owners - certain
    return Named(
        certain=tuple(sorted(certain)),
        possible=tuple(sorted(possible - certain)),
        everything=_ALL.search(sentence) is not None,
        part=_PART.search(sentence) is not None,
    )


def _words(text: str) -> list[str]:
    return [singular(plain(word)) for word in _WORD.findall(text)]
