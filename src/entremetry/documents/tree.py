"""A document as plain data, with the line on which each part stands."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from entremetry.words import quoted, say

Path = tuple[str | int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Tree:
    """Plain data (mappings, lists, texts, numbers, truths, nothing) and its lines from 1."""

    data: dict[str, Any]
    lines: Mapping[Path, int]

    def line(self, path: Path) -> int | None:
        """Line of the part at `path`, or of the nearest part around it that is there."""
        for length in range(len(path), -1, -1):
            if path[:length] in self.lines:
                return self.lines[path[:length]]
        return None


def copied(data: Any) -> Any:
    """Plain data once more: changing the one leaves the other as it is."""
    if isinstance(data, dict):
        return {key: copied(each) if _holds(each) else each for key, each in data.items()}
    if isinstance(data, list):
        return [copied(each) if _holds(each) else each for each in data]
    return data


def _holds(value: object) -> bool:
    return isinstance(value, dict | list)


def field_text(path: Path) -> str:
    """Write a path as people read it; items are counted from 1: placement[2].height."""
    text = ""
    for part in path:
        if isinstance(part, int):
            text += f"[{part + 1}]"
        else:
            text += f".{part}" if text else part
    return text


def shown(value: object, longest: int = 60) -> str:
    """Write a found value shortly, as it stands in the document."""
    if isinstance(value, dict):
        return say("a mapping of {number}", number=len(value))
    if isinstance(value, list):
        return say("a list of {number}", number=len(value))
    if value is None:
        return say("nothing")
    if isinstance(value, bool):
        return str(value).lower()
    text = " ".join(str(value).split())
    short = text if len(text) <= longest else text[: longest - 1] + "…"
    return quoted(short) if isinstance(value, str) else short
