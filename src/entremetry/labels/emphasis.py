"""Allergens in the words of a list: which words name them, and what has to be added."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from entremetry.labels.language_words import allergen_word, naming_patterns


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A piece of text; `strong` where it names an allergen, to be set apart by its typeface."""

    text: str
    strong: bool = False


def named(text: str, codes: Iterable[str]) -> str:
    """The text with the allergens added in brackets that it does not name."""
    missing = silent(text, codes)
    if not missing:
        return text
    return f"{text} ({', '.join(dict.fromkeys(allergen_word(code) for code in missing))})"


def silent(text: str, codes: Iterable[str]) -> tuple[str, ...]:
    """The allergens that no word of a text names."""
    return tuple(code for code in sorted(codes) if not _pattern([code]).search(text))


def spans(text: str, codes: Iterable[str]) -> tuple[Span, ...]:
    """The text cut at the words that name allergens."""
    wanted = sorted(codes)
    if not wanted:
        return (Span(text=text),)
    found: list[Span] = []
    last = 0
    for match in _pattern(wanted).finditer(text):
        if match.start() > last:
            found.append(Span(text=text[last : match.start()]))
        found.append(Span(text=match.group(), strong=True))
        last = match.end()
    if last < len(text):
        found.append(Span(text=text[last:]))
    return tuple(found)


def _pattern(codes: Iterable[str]) -> re.Pattern[str]:
    words = {word for code in codes for word in naming_patterns(code)}
    longest_first = sorted(sorted(words), key=len, reverse=True)
    return re.compile(rf"\b({'|'.join(longest_first)})\b", re.IGNORECASE)
