"""Two texts beside each other, line by line."""

from __future__ import annotations

from dataclasses import dataclass
from difflib import ndiff

SIDES = {"- ": ("theirs", "newest │ "), "+ ": ("mine", "yours  │ "), "  ": ("both", "       │ ")}


@dataclass(frozen=True, slots=True, kw_only=True)
class ComparedLine:
    """One line, whose it is, and how that is written before it."""

    side: str
    mark: str
    text: str


def compared(theirs: str, mine: str) -> tuple[ComparedLine, ...]:
    """Every line of both texts; lines that are alike stand once."""
    lines = ndiff(theirs.splitlines(), mine.splitlines())
    return tuple(_line(line) for line in lines if line[:2] in SIDES)


def _line(line: str) -> ComparedLine:
    side, mark = SIDES[line[:2]]
    return ComparedLine(side=side, mark=mark, text=line[2:])
