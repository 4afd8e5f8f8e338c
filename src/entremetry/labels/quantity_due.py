"""Whose quantity has to stand in the list: what the name names, and what is emphasised."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from entremetry.labels.english_names import WORDS as ENGLISH
from entremetry.labels.language_words import list_words
from entremetry.larder.spelling import plain
from entremetry.words import say_later

IN_NAME = say_later("'{word}' stands in the name")
EMPHASISED = say_later(
    "'{word}' stands in the keywords: due if words or a picture of the label emphasise it"
)


def due_words(name: str, keywords: Iterable[str]) -> dict[str, str]:
    """Words that may name an ingredient, with why its quantity is due (article 22)."""
    found = dict.fromkeys(_due(name), IN_NAME)
    for keyword in keywords:
        for word in _due(keyword):
            found.setdefault(word, EMPHASISED)
    return found


def has_word(text: str, word: str) -> bool:
    """Whether a word stands in a text, in the singular or plural."""
    wanted = _stems(word) | {plain(word)}
    return any(wanted & _stems(each) for each in _words(text))


def _due(text: str) -> Iterator[str]:
    rules = list_words()
    for word in _words(text):
        shown = rules.shown(word)
        if len(shown) > 2 and not rules.is_no_ingredient(word):
            yield shown


def _words(text: str) -> list[str]:
    return "".join(c if c.isalpha() else " " for c in text).casefold().split()


def _stems(word: str) -> frozenset[str]:
    """Forms of a word in the spoken language and in English, in which a dessert may be written."""
    return list_words().stems(word) | ENGLISH.stems(word)
