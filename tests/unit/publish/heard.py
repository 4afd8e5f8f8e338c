"""Numbers heard in a text: words back into values, written apart from the words' maker."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

TEENS = (
    *("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"),
    *("eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen"),
    *("eighteen", "nineteen"),
)
DECADES = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
ONES = {word: value for value, word in enumerate(TEENS)}
TENS = {word: 20 + 10 * k for k, word in enumerate(DECADES)}
PARTS = {"half": 2, "third": 3, "quarter": 4, "fifth": 5, "sixth": 6, "eighth": 8}
WORD = re.compile(r"[a-z]+|[^a-z\s-]+")


def numbers_heard(text: str) -> list[Fraction]:
    """Every number of a text that is said in words, in order."""
    words = WORD.findall(text.casefold().replace("-", " "))
    return list(_numbers(words))


def _numbers(words: list[str]) -> Iterator[Fraction]:
    k = 0
    while k < len(words):
        value, used = _number(words[k:])
        if value is not None:
            yield value
        k += max(used, 1)


def _number(words: list[str]) -> tuple[Fraction | None, int]:
    part = _part(words)
    if part[0] is not None:
        return part
    whole, used = _whole(words)
    if whole is None:
        return None, 0
    value = Fraction(whole)
    if words[used : used + 1] == ["point"]:
        used, scale = used + 1, Fraction(1, 10)
        while used < len(words) and ONES.get(words[used], 10) < 10:
            value += ONES[words[used]] * scale
            used, scale = used + 1, scale / 10
    elif words[used : used + 1] == ["and"]:
        more, further = _part(words[used + 1 :])
        if more is not None:
            value, used = value + more, used + 1 + further
    return value, used


def _part(words: list[str]) -> tuple[Fraction | None, int]:
    top, start = (ONES.get(words[0]), 1) if words and words[0] in ONES else (1, 0)
    if start == 0 and words[:1] == ["a"]:
        start = 1
    name = words[start] if start < len(words) else ""
    name = "half" if name == "halves" else name.removesuffix("s")
    if top is None or name not in PARTS:
        return None, 0
    return Fraction(top, PARTS[name]), start + 1


def _whole(words: list[str]) -> tuple[int | None, int]:
    total = current = 0
    used, seen = 0, False
    while used < len(words):
        word = words[used]
        if word in ONES:
            current += ONES[word]
        elif word in TENS:
            current += TENS[word]
        elif word == "hundred" and seen:
            current *= 100
        elif word == "thousand" and seen:
            total, current = total + current * 1000, 0
        elif not (
            word == "and"
            and seen
            and words[used - 1] in {"hundred", "thousand"}
            and used + 1 < len(words)
            and (words[used + 1] in ONES or words[used + 1] in TENS)
        ):
            break
        seen = True
        used += 1
        plain_end = word in ONES or (
            word in TENS
            and words[used : used + 1][:1]
            and (words[used] not in ONES or ONES[words[used]] >= 10)
        )
        if plain_end and words[used : used + 1] not in (["hundred"], ["thousand"], ["and"]):
            break
    return (total + current, used) if seen else (None, 0)
