"""A pasted text split into components at its headings."""

from __future__ import annotations

import re
from dataclasses import dataclass

from entremetry.dessert.pasted_words import is_blank

_FOR_THE = re.compile(r"^(?:for\s+(?:the\s+)?|pour\s+(?:l[ae]s?\s+|l['’]\s*))(?=\S)", re.IGNORECASE)
LONGEST_NAME = 120


@dataclass(frozen=True, slots=True, kw_only=True)
class PastedComponent:
    """A heading and the lines under it."""

    name: str
    lines: tuple[str, ...]


def pasted_components(text: str, name: str) -> tuple[PastedComponent, ...]:
    """Split a text at its headings: lines that end in a colon or start with '#'.

    Without any, all lines are one component that bears `name`.
    """
    found: list[tuple[str, list[str]]] = [(name, [])]
    for line in text.splitlines():
        if is_blank(line):
            continue
        heading = _heading(line)
        if heading:
            found.append((heading, []))
        else:
            found[-1][1].append(line)
    return tuple(PastedComponent(name=n, lines=tuple(lines)) for n, lines in found if lines)


def _heading(line: str) -> str:
    """The words of a heading; nothing if the line is none."""
    bare = line.strip().strip("*_ ")
    if not (bare.endswith(":") or bare.startswith("#")):
        return ""
    words = _FOR_THE.sub("", bare.strip("#*:_ ").strip())
    return (words[:1].upper() + words[1:])[:LONGEST_NAME]
