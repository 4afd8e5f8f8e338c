"""Put text into a document, or cut it out, at the marks of the parser."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar

import yaml

from entremetry.documents.rendering import (
    WIDTH,
    block_lines,
    flow_text,
    is_collection,
    on_one_line,
    quoted,
)
from entremetry.documents.tree import Path


class _Loader(getattr(yaml, "CSafeLoader", yaml.SafeLoader)):  # type: ignore[misc]
    """Finds the marks of every part, and asks of no word what it means."""

    yaml_implicit_resolvers: ClassVar[dict[str, Any]] = {}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Place:
    """A node of the document: its parent, its key if it has one, and whether it is in braces."""

    node: Any
    parent: Any = None
    key: Any = None
    in_braces: bool = False


def spliced_in(text: str, path: Path, value: Any) -> str | None:
    """Return the text with the part set; None if its layout does not allow it."""
    places = _places(text, path)
    there, rest = places[-1], path[len(places) - 1 :]
    for part in reversed(rest[1:]):
        value = [value] if isinstance(part, int) else {part: value}
    if not rest:
        return _replaced(text, there, value)
    if not isinstance(there.node, yaml.CollectionNode):
        return _replaced(text, there, {rest[0]: value} if isinstance(rest[0], str) else [value])
    return _added(text, there, rest[0], value)


def spliced_out(text: str, path: Path) -> str | None:
    """Return the text without the part; None if its layout does not allow it."""
    places = _places(text, path)
    if len(places) <= len(path):
        return None
    there, around = places[-1], places[-2]
    if len(there.parent.value) == 1:
        if around.parent is None:
            return None
        return _replaced(text, around, {} if there.key else [])
    if there.parent.flow_style:
        return _cut_from_braces(text, there)
    return _cut_lines(text, there)


def spliced_name(text: str, path: Path, name: str) -> str | None:
    """Return the text with the part under another name; None if its layout does not allow it."""
    places = _places(text, path)
    key = places[-1].key
    if len(places) <= len(path) or key is None:
        return None
    start, end = int(key.start_mark.index), int(key.end_mark.index)
    return text[:start] + flow_text(name) + text[end:]


def spliced_order(text: str, path: Path, to: int) -> str | None:
    """Return the text with the part at another place; None if its layout does not allow it."""
    places = _places(text, path)
    if len(places) <= len(path) or places[-1].parent.flow_style:
        return None
    spans = _spans(text, places[-1].parent)
    if spans is None:
        return None
    blocks = [text[start:end].rstrip("\n") for start, end in spans]
    gaps = [
        text[start:end][len(b) :] or "\n" for (start, end), b in zip(spans, blocks, strict=True)
    ]
    members = [_first(member) for member in places[-1].parent.value]
    spot = members.index(places[-1].key or places[-1].node)
    blocks.insert(to, blocks.pop(spot))
    ordered = "".join(block + gap for block, gap in zip(blocks, gaps, strict=True))
    return text[: spans[0][0]] + ordered + text[spans[-1][1] :]


def _first(member: Any) -> Any:
    """Where a member of a mapping or list begins: at its key, or at itself."""
    return member[0] if isinstance(member, tuple) else member


def _spans(text: str, parent: Any) -> list[tuple[int, int]] | None:
    """Whole lines of each member of a block; None if one shares its line with something else."""
    starts = []
    for member in parent.value:
        mark = _first(member).start_mark
        start = text.rfind("\n", 0, mark.index) + 1
        if text[start : mark.index].strip() != ("" if isinstance(member, tuple) else "-"):
            return None
        starts.append(start)
    end = _end(parent)
    line_end = end if text[end - 1 : end] == "\n" else text.find("\n", end) + 1
    stops = [*starts[1:], line_end or len(text)]
    return list(zip(starts, stops, strict=True))


def _places(text: str, path: Path) -> list[_Place]:
    """Return the nodes along a path, from the root as far as they are there."""
    root: Any = yaml.compose(text, Loader=_Loader)
    places = [_Place(node=root)]
    for part in path:
        found = _inside(places[-1], part)
        if found is None:
            break
        places.append(found)
    return places


def _inside(around: _Place, part: str | int) -> _Place | None:
    """Return the place of a part inside a mapping or list."""
    parent: Any = around.node
    braces = around.in_braces or bool(getattr(parent, "flow_style", False))
    if isinstance(parent, yaml.MappingNode):
        for key, node in parent.value:
            if key.value == part:
                return _Place(node=node, parent=parent, key=key, in_braces=braces)
    if isinstance(parent, yaml.SequenceNode) and isinstance(part, int) and part < len(parent.value):
        return _Place(node=parent.value[part], parent=parent, in_braces=braces)
    return None


def _end(node: Any) -> int:
    """Where the text of a node ends, without the comments and blank lines behind it."""
    if isinstance(node, yaml.CollectionNode) and not node.flow_style and node.value:
        last = node.value[-1]
        return _end(last[1] if isinstance(last, tuple) else last)
    return int(node.end_mark.index)


def _replaced(text: str, place: _Place, value: Any) -> str | None:
    """Put a new value in the place of a node."""
    node = place.node
    start, end = int(node.start_mark.index), _end(node)
    if isinstance(node, yaml.ScalarNode) and node.style in {"|", ">"}:
        return _replaced_block_text(text, place, value)
    new = _in_the_same_style(node, value, place.in_braces)
    column = place.key.start_mark.column if place.key else None
    if not place.in_braces and is_collection(value) and column is not None:
        keep = isinstance(node, yaml.CollectionNode) and not node.flow_style
        new = _on_lines(value, column, new, keep=keep)
    if place.key is not None and (node.__class__ is not yaml.ScalarNode or new.startswith("\n")):
        start = text.index(":", int(place.key.end_mark.index)) + 1
        new = new if new.startswith("\n") else f" {new}"
    elif start == end:
        new = f" {new}"
    return text[:start] + new + text[end:]


def _replaced_block_text(text: str, place: _Place, value: Any) -> str | None:
    """Put a value in the place of a text of several lines."""
    if place.key is None:
        return None
    start = text.index(":", int(place.key.end_mark.index)) + 1
    return f"{text[:start]} {on_one_line(value)}\n{text[_end(place.node) :]}"


def _in_the_same_style(node: Any, value: Any, in_braces: bool) -> str:
    """Write a value on one line, a text in the quotes of the text before it."""
    if isinstance(value, str) and isinstance(node, yaml.ScalarNode):
        if node.style == '"':
            return quoted(value)
        if node.style == "'" and value.isprintable():
            return "'" + value.replace("'", "''") + "'"
    return flow_text(value) if in_braces else on_one_line(value)


def _on_lines(value: Any, column: int, one_line: str, *, keep: bool) -> str:
    """Write a mapping or list on lines of its own if it is long, or if the one before was."""
    if not value or (not keep and column + len(one_line) < WIDTH // 2):
        return one_line
    return "\n" + "\n".join(block_lines(value, column + 2))


def _added(text: str, place: _Place, part: str | int, value: Any) -> str | None:
    """Add an entry to a mapping, or an item to a list."""
    node = place.node
    if isinstance(node, yaml.MappingNode) != isinstance(part, str):
        return None
    entry = {part: value} if isinstance(part, str) else [value]
    if node.flow_style or not node.value:
        return _added_in_braces(text, node, flow_text(entry)[1:-1])
    end = _end(node)
    line_end = end if text[end - 1 : end] == "\n" else text.find("\n", end)
    lines = "\n".join(block_lines(entry, int(node.start_mark.column)))
    if line_end == -1:
        return f"{text}\n{lines}\n"
    if text[line_end - 1 : line_end] == "\n":
        return f"{text[:line_end]}{lines}\n{text[line_end:]}"
    return f"{text[:line_end]}\n{lines}{text[line_end:]}"


def _added_in_braces(text: str, node: Any, new: str) -> str:
    """Add an entry or item behind the last one in braces or brackets."""
    if not node.value:
        start = int(node.start_mark.index) + 1
        return text[:start] + new + text[int(node.end_mark.index) - 1 :]
    last = node.value[-1]
    end = int((last[1] if isinstance(last, tuple) else last).end_mark.index)
    return f"{text[:end]}, {new}{text[end:]}"


def _cut_from_braces(text: str, place: _Place) -> str:
    """Cut an entry or item and one comma out of braces or brackets."""
    members = [pair if isinstance(pair, tuple) else (pair, pair) for pair in place.parent.value]
    spot = next(i for i, (_, node) in enumerate(members) if node is place.node)
    if spot + 1 < len(members):
        start, end = members[spot][0].start_mark.index, members[spot + 1][0].start_mark.index
    else:
        start, end = members[spot - 1][1].end_mark.index, members[spot][1].end_mark.index
    return text[:start] + text[end:]


def _cut_lines(text: str, place: _Place) -> str | None:
    """Cut the lines of an entry or item out of a block."""
    first = place.key or place.node
    start = text.rfind("\n", 0, first.start_mark.index) + 1
    before = text[start : first.start_mark.index].strip()
    if place.key and before == "-":
        return _cut_up_to_the_next(text, place)
    if before != ("" if place.key else "-"):
        return None
    end = _end(place.node)
    line_end = end if text[end - 1 : end] == "\n" else text.find("\n", end) + 1
    return text[:start] + (text[line_end:] if line_end > 0 else "")


def _cut_up_to_the_next(text: str, place: _Place) -> str | None:
    """Cut the first entry of a mapping that stands behind the dash of a list."""
    keys = [key for key, _ in place.parent.value]
    if keys[0] is not place.key:
        return None
    return text[: keys[0].start_mark.index] + text[keys[1].start_mark.index :]
