"""Lines of a formula changed in the text of a document: weighed, renamed, added, left out."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from entremetry.documents import Path, edited, read_tree, removed, renamed

NAMING = ("what", "removes")  # keys of a step under which lines are named


def line_with_mass(text: str, component: str, line: str, mass: float) -> str:
    """Text with the mass of a line [kg]; what else its author wrote there stays."""
    place = _place(component, line)
    written = _part(text, place)
    amount = mass_written(mass)
    return edited(text, (*place, "amount") if isinstance(written, dict) else place, amount)


def line_renamed(text: str, component: str, line: str, name: str, ingredient: str) -> str:
    """Text with a line of another ingredient, under another name everywhere it is named."""
    place = _place(component, line)
    written = _part(text, place)
    if name != line:
        text = renamed(text, place, name)
        for path in _mentions(text, component, line):
            text = edited(text, path, name)
    if isinstance(written, dict) and (name != ingredient or "ingredient" in written):
        return edited(text, (*_place(component, name), "ingredient"), ingredient)
    if name == ingredient:
        return text
    return edited(text, _place(component, name), {"ingredient": ingredient, "amount": written})


def line_added(
    text: str, component: str, name: str, ingredient: str, mass: float, *, beside: str
) -> str:
    """Text with one more line, which enters the method with the last mention of another."""
    amount = mass_written(mass)
    value = amount if name == ingredient else {"ingredient": ingredient, "amount": amount}
    text = edited(text, _place(component, name), value)
    mentions = [path for path in _mentions(text, component, beside) if path[-2] == "what"]
    if not mentions:
        return text
    what = mentions[-1][:-1]
    return edited(text, (*what, len(_part(text, what))), name)


def line_without(text: str, component: str, line: str) -> str:
    """Text without a line, in formula and method; a list that named nothing else goes as well."""
    text = removed(text, _place(component, line))
    for path in reversed(list(_mentions(text, component, line))):
        alone = len(_part(text, path[:-1])) == 1
        text = removed(text, path[:-1] if alone else path)
    return text


def enter_together(text: str, component: str, one: str, other: str) -> bool:
    """Tell whether the method names two lines at the same steps, so that they may be one."""
    steps = [{path[3] for path in _mentions(text, component, line)} for line in (one, other)]
    return steps[0] == steps[1]


def mass_written(mass: float) -> str:
    """A mass [kg] as a document says it, exact enough to be reckoned with further."""
    return f"{mass * 1e3:.7g} g" if mass * 1e3 >= 1e-3 else f"{mass * 1e3:.7f} g"


def _mentions(text: str, component: str, line: str) -> Iterator[Path]:
    """Paths at which the method of a component names a line."""
    method = _part(text, ("components", component)).get("method") or []
    for index, step in enumerate(method):
        for key in NAMING:
            for at, name in enumerate(step.get(key) or []):
                if name == line:
                    yield ("components", component, "method", index, key, at)


def _place(component: str, line: str) -> Path:
    return ("components", component, "formula", line)


def _part(text: str, path: Path) -> Any:
    part: Any = read_tree(text, file="document").data
    for key in path:
        part = part[key]
    return part
