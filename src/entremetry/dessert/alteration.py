"""One change that a person makes to a dessert, in the text of its document.

An alteration names the part that it touches, so that two people who change different parts
of one dessert need not wait for each other.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from typing import Any

from entremetry.documents import Path, edited, moved, read_tree, removed

RIVALS: Mapping[str, tuple[tuple[str, ...], ...]] = {
    "layer": (("height", "volume", "mass"),),
    "insert": (("below_rim", "from_closed_end"),),
    "coating": (("film", "per_area"),),
    "soak": (("mass", "per_area"),),
}
"""Measures of a placement of which only one may be stated, by its place."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Alteration:
    """A change of the text, and the part of the document that it touches."""

    touches: Path
    change: Callable[[str], str]


def part_at(text: str, path: Path) -> Any:
    """Plain data of a part; None if it is not there."""
    part: Any = read_tree(text, file="document").data
    for key in path:
        if isinstance(part, dict):
            part = part.get(key)
        elif isinstance(part, list) and isinstance(key, int) and 0 <= key < len(part):
            part = part[key]
        else:
            return None
    return part


def setting(path: Path, value: Any) -> Alteration:
    """Set a part, or take it out where the value is None; a rival measure goes out with it."""

    def change(text: str) -> str:
        if value is None:
            return text if part_at(text, path) is None else removed(text, path)
        return edited(_without_rivals(text, path), path, value)

    return Alteration(touches=path, change=change)


def setting_on_line(component: str, line: str, field: str, value: str | None) -> Alteration:
    """Set the amount, the ingredient or the note of a line, however it is written."""
    path: Path = ("components", component, "formula", line)

    def change(text: str) -> str:
        written = part_at(text, path)
        if isinstance(written, dict):
            return setting((*path, field), value).change(text)
        if field == "amount":
            return edited(text, path, value or "")
        if value is None:
            return text
        whole = {"amount": written, field: value}
        return edited(text, path, whole)

    return Alteration(touches=path, change=change)


def taking_out(path: Path) -> Alteration:
    """Take a part out."""
    return Alteration(touches=path, change=lambda text: removed(text, path))


def taking_out_component(component: str) -> Alteration:
    """Take a component out, with every place it has in the mould."""

    def change(text: str) -> str:
        placed = part_at(text, ("placement",)) or []
        for index in reversed(range(len(placed))):
            if isinstance(placed[index], dict) and placed[index].get("component") == component:
                text = removed(text, ("placement", index))
        return removed(text, ("components", component))

    return Alteration(touches=(), change=change)


def moving(path: Path, to: int) -> Alteration:
    """Put a part at another place among its neighbours, counted from 0."""
    return Alteration(touches=path[:-1], change=lambda text: moved(text, path, to))


def adding(path: Path, item: Any) -> Alteration:
    """Add an item at the end of a list, which may be new."""

    def change(text: str) -> str:
        there = part_at(text, path)
        if there is None:
            return edited(text, path, [item])
        return edited(text, (*path, len(there)), item)

    return Alteration(touches=path, change=change)


def adding_lines(component: str, lines: Mapping[str, Any]) -> Alteration:
    """Add lines to a formula; a name that is taken gets a number."""
    path: Path = ("components", component, "formula")

    def change(text: str) -> str:
        for name, written in lines.items():
            text = edited(text, (*path, free_name(name, part_at(text, path) or {})), written)
        return text

    return Alteration(touches=path, change=change)


def adding_component(component: str, written: Any, place: Mapping[str, Any]) -> Alteration:
    """Add a component with its place in the mould."""

    def change(text: str) -> str:
        name = free_name(component, part_at(text, ("components",)) or {})
        text = edited(text, ("components", name), written)
        return adding(("placement",), {**place, "component": name}).change(text)

    return Alteration(touches=("components",), change=change)


def free_name(wanted: str, taken: Collection[str]) -> str:
    """The name, with a number if it is taken."""
    name, number = wanted, 2
    while name in taken:
        name, number = f"{wanted}-{number}", number + 1
    return name


def _without_rivals(text: str, path: Path) -> str:
    if len(path) != 3 or path[0] != "placement":
        return text
    entry = part_at(text, path[:2])
    groups = RIVALS.get(entry.get("as", ""), ()) if isinstance(entry, dict) else ()
    for group in groups:
        for rival in group if path[2] in group else ():
            if rival != path[2] and rival in entry:
                text = removed(text, (*path[:2], rival))
    return text
