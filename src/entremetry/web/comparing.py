"""Two texts beside each other, line by line."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from difflib import SequenceMatcher

from entremetry.words import say_as

AROUND = 3
GAP = "…"


@dataclass(frozen=True, slots=True, kw_only=True)
class ComparedLine:
    """One line, whose it is (`both`, `theirs` or `mine`), and the word written before it."""

    side: str
    word: str
    text: str


def compared(
    theirs: str, mine: str, *, their_word: str = "", my_word: str = ""
) -> tuple[ComparedLine, ...]:
    """Lines that differ, with a few around them; empty if the texts are alike.

    Without words for them, theirs is the newest and mine is yours.
    """
    their_word = their_word or say_as("whose line", "newest")
    my_word = my_word or say_as("whose line", "yours")
    return tuple(_lines(theirs.splitlines(), mine.splitlines(), their_word, my_word))


def _lines(
    theirs: list[str], mine: list[str], their_word: str, my_word: str
) -> Iterator[ComparedLine]:
    matcher = SequenceMatcher(None, theirs, mine, autojunk=False)
    for number, group in enumerate(matcher.get_grouped_opcodes(AROUND)):
        if number or group[0][1]:
            yield _line("both", "", GAP)
        for tag, start, end, my_start, my_end in group:
            if tag == "equal":
                yield from (_line("both", "", text) for text in theirs[start:end])
                continue
            yield from (_line("theirs", their_word, text) for text in theirs[start:end])
            yield from (_line("mine", my_word, text) for text in mine[my_start:my_end])


def _line(side: str, word: str, text: str) -> ComparedLine:
    return ComparedLine(side=side, word=word, text=text)
