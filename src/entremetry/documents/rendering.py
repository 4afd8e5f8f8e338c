"""Plain data into YAML text: short mappings on one line, texts bare where they stay texts."""

from __future__ import annotations

import json
import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from typing import Any

from entremetry.documents.scalars import NotFinite, scalar

WIDTH = 96
FEW = 4
_SIGNS = ".%°²³/()½¼¾⅓⅔⅛⅜⅝⅞+'’;=&-"
_BARE = re.compile(rf"[^\W_](?:[\w ,{_SIGNS}]*[\w{_SIGNS}])?")
_BARE_IN_FLOW = re.compile(rf"[^\W_](?:[\w {_SIGNS}]*[\w{_SIGNS}])?")
_BREAKS = {"\u2028": "\\u2028", "\u2029": "\\u2029"}


def scalar_text(value: Any, *, flow: bool = False) -> str:
    """Write one scalar so that it reads back as itself."""
    if value is None:
        return "null"
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, int | float):
        return repr(value)
    return str(value) if _is_bare(str(value), flow) else quoted(str(value))


def quoted(text: str) -> str:
    """Write a text between double quotes."""
    escaped = json.dumps(text, ensure_ascii=False).replace("\x7f", "\\x7f")
    for character, escape in _BREAKS.items():
        escaped = escaped.replace(character, escape)
    return re.sub("[\x80-\x9f\ufeff\ufffe\uffff]", lambda m: f"\\u{ord(m[0]):04x}", escaped)


def _is_bare(text: str, flow: bool) -> bool:
    """Tell whether a text may stand without quotes."""
    pattern = _BARE_IN_FLOW if flow else _BARE
    if not pattern.fullmatch(text) or "  " in text:
        return False
    try:
        return isinstance(scalar(text), str)
    except NotFinite:
        return False


def flow_text(value: Any) -> str:
    """Write a value on one line: {step: soak, what: [gelatine]}."""
    if isinstance(value, Mapping):
        entries = (f"{_key(key)}: {flow_text(each)}" for key, each in value.items())
        return "{" + ", ".join(entries) + "}"
    if isinstance(value, Sequence) and not isinstance(value, str):
        return "[" + ", ".join(flow_text(each) for each in value) + "]"
    return scalar_text(value, flow=True)


def _key(key: object) -> str:
    """Write a key; one that YAML 1.1 takes for a truth gets quotes, for other readers' sake."""
    text = str(key)
    risky = text.casefold() in {"on", "off", "yes", "no", "y", "n"}
    return quoted(text) if risky else scalar_text(text, flow=True)


def block_lines(value: Any, indent: int = 0, block: Collection[str] = ()) -> Iterator[str]:
    """Yield the lines of a mapping or list; mappings under a key of `block` keep many lines."""
    margin = " " * indent
    if isinstance(value, Mapping):
        for key, each in value.items():
            head = f"{margin}{_key(key)}:"
            broken = key in block and isinstance(each, Mapping) and each
            if _fits(each, len(head) + 1) and _is_leaf(each) and not broken:
                yield f"{head} {on_one_line(each)}"
            else:
                yield head
                yield from block_lines(each, indent + 2, block)
    else:
        for each in value:
            yield from _item(margin, each, indent, block)


def _item(margin: str, value: Any, indent: int, block: Collection[str]) -> Iterator[str]:
    """Yield the lines of one item of a list."""
    if _fits(value, indent + 2):
        yield f"{margin}- {on_one_line(value)}"
    else:
        first, *others = block_lines(value, indent + 2, block)
        yield f"{margin}- {first[indent + 2 :]}"
        yield from others


def is_collection(value: Any) -> bool:
    """Tell whether a value is a mapping or a list."""
    return isinstance(value, Mapping) or (
        isinstance(value, Sequence) and not isinstance(value, str)
    )


def on_one_line(value: Any) -> str:
    """Write a value on one line outside of any braces."""
    return flow_text(value) if is_collection(value) else scalar_text(value)


def _fits(value: Any, before: int) -> bool:
    """Tell whether a value has room on the line; what has no lines of its own always has."""
    return not is_collection(value) or not value or before + len(flow_text(value)) <= WIDTH


def _is_leaf(value: Any) -> bool:
    """Tell whether a value is a scalar, a list of scalars or a mapping of few scalars."""
    if not is_collection(value):
        return True
    inside = value.values() if isinstance(value, Mapping) else value
    few = not isinstance(value, Mapping) or len(value) <= FEW
    return few and not any(is_collection(each) and each for each in inside)
