"""Whose quantity has to stand in the list: what the name names, and what is emphasised."""

from __future__ import annotations

from collections.abc import Iterable

from entremetry.labels.english_names import NOT_BY_NAME
from entremetry.larder.spelling import plain, singular

IN_NAME = "stands in the name"
EMPHASISED = "stands in the keywords: due if words or a picture of the label emphasise it"


def due_words(name: str, keywords: Iterable[str]) -> dict[str, str]:
    """Words that may name an ingredient, with why its quantity is due (article 22)."""
    found = dict.fromkeys(_words(name), IN_NAME)
    for keyword in keywords:
        for word in _words(keyword):
            found.setdefault(word, EMPHASISED)
    return found


def has_word(text: str, word: str) -> bool:
    """Whether a word stands in a text, in the singular or plural."""
    return word in _singulars(text)


def _words(text: str) -> list[str]:
    return [word for word in _singulars(text) if word not in NOT_BY_NAME and len(word) > 2]


def _singulars(text: str) -> list[str]:
    cleaned = "".join(c if c.isalpha() else " " for c in plain(text))
    return [_singular(word) for word in cleaned.split()]


def _singular(word: str) -> str:
    """The word without its plural ending: raspberries, mangoes, almonds."""
    if word.endswith("ies") and len(word) > 4:
        return f"{word[:-3]}y"
    if word.endswith("oes"):
        return word[:-2]
    return singular(word)
