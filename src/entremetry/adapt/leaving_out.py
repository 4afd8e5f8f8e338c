"""A dessert document without one of its lines, or without a whole component."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from entremetry.adapt.method_without import steps_without
from entremetry.adapt.rebalanced import Change
from entremetry.documents import Path, edited, read_tree, removed
from entremetry.errors import UnknownName
from entremetry.words import say

FILE = "document"


@dataclass(frozen=True, slots=True, kw_only=True)
class Without:
    """A text without something, and all that went or was changed with it.

    `refused` says why it cannot be left out, and the text is then as it was.
    """

    text: str
    changes: tuple[Change, ...] = ()
    refused: str = ""


def without_line(text: str, component: str, line: str) -> Without:
    """A document without a line of a formula; the method no longer names it.

    Raises
    ------
    UnknownName
        If there is no such component or line.
    """
    formula = _component(text, component)["formula"]
    if line not in formula:
        raise UnknownName("line of this formula", line, formula)
    if len(formula) == 1:
        return Without(
            text=text,
            refused=say(
                "{line} is all that {component} is made of: leave out the component",
                line=line,
                component=component,
            ),
        )
    changes = [_change(component, line, say("left out: {name}", name=line))]
    text = _line_gone(text, component, line, changes)
    return Without(text=text, changes=(*changes, _notes()))


def without_component(text: str, component: str, *, name: str = "") -> Without:
    """A document without a component, and without what is there for it alone.

    A refusal calls it by `name`, or as the document does.

    Raises
    ------
    UnknownName
        If there is no such component.
    """
    placement = _data(text)["placement"]
    name = name or str(_component(text, component)["name"])
    refused = _why_not(placement, component, name)
    if refused:
        return Without(text=text, refused=refused)
    changes: list[Change] = []
    waiting = [component]
    while waiting:
        gone = waiting.pop()
        if gone in _data(text)["components"]:
            if len(_data(text)["components"]) == 1:
                return Without(text=text, refused=say("nothing of the dessert would be left"))
            text = _component_gone(text, gone, changes, waiting)
    return Without(text=text, changes=(*changes, _notes()))


def _why_not(placement: Sequence[Mapping[str, Any]], component: str, name: str) -> str:
    own = [each for each in placement if each["component"] == component]
    others = [each for each in placement if each["component"] != component]
    if any(each["as"] == "filling" for each in own):
        return say(
            "{name} takes all the room that is left in the mould, and nothing else would hold the "
            "dessert together",
            name=name,
        )
    soft = ("filling", "layer")
    if any(each["as"] in soft for each in own) and not any(each["as"] in soft for each in others):
        return say("{name} is all that fills the mould", name=name)
    return ""


def _component_gone(text: str, gone: str, changes: list[Change], waiting: list[str]) -> str:
    """The text without a component; what is then without a place or a use is to go next."""
    data = _data(text)
    name = str(data["components"][gone]["name"])
    idle = [*_uses(data, gone), *_soaks(data, gone)]
    changes.append(_change(gone, "", say("left out: {name}", name=name)))
    for number, each in reversed(list(enumerate(data["placement"]))):
        if gone in (each["component"], each.get("on")):
            text = removed(text, ("placement", number))
    for other, line in _lines_of(data, gone):
        if len(_component(text, other)["formula"]) == 1:
            waiting.append(other)
            continue
        changes.append(_change(other, line, say("left out with it: {name}", name=line)))
        text = _line_gone(text, other, line, changes)
    text = removed(text, ("components", gone))
    text = _assembly_without(text, gone, changes)
    waiting += [each for each in idle if not _is_needed(_data(text), each)]
    return text


def _assembly_without(text: str, gone: str, changes: list[Change]) -> str:
    """The assembly without steps that were there for the component alone."""
    data = _data(text)
    coated = any(each["as"] == "coating" for each in data["placement"])
    for number, step in reversed(list(enumerate(data.get("assembly") or []))):
        what = [name for name in step.get("what") or [] if name != gone]
        emptied = bool(step.get("what")) and not what
        if emptied or (step["step"] == "glaze-at" and not coated):
            changes.append(_change("", "", _no_step(step), kind="method"))
            text = removed(text, ("assembly", number))
        elif gone in (step.get("what") or []):
            text = edited(text, ("assembly", number, "what"), what)
    return text


def _line_gone(text: str, component: str, line: str, changes: list[Change]) -> str:
    there = _component(text, component)
    steps = there.get("method") or []
    left = steps_without(steps, {line}, lines=list(there["formula"]))
    for number, (before, after) in reversed(list(enumerate(zip(steps, left, strict=True)))):
        place: Path = ("components", component, "method", number)
        if after is None:
            changes.append(_change(component, line, _no_step(before), kind="method"))
            text = removed(text, place)
        elif after != before:
            text = _with_names(text, place, before, after)
    if not any(step is not None for step in left) and steps:
        text = removed(text, ("components", component, "method"))
    return removed(text, ("components", component, "formula", line))


def _with_names(text: str, place: Path, before: Mapping[str, Any], after: Mapping[str, Any]) -> str:
    for key in ("what", "removes"):
        if key in before and key not in after:
            text = removed(text, (*place, key))
        elif before.get(key) != after.get(key):
            text = edited(text, (*place, key), after[key])
    return text


def _no_step(step: Mapping[str, Any]) -> str:
    named = ", ".join(step.get("what") or ())
    if named:
        return say("no step '{step}' with {named} any more", step=step["step"], named=named)
    return say("no step '{step}' any more", step=step["step"])


def _lines_of(data: Mapping[str, Any], component: str) -> Iterator[tuple[str, str]]:
    """Lines of other formulas that are made of a component."""
    for other, each in data["components"].items():
        for line, written in each["formula"].items():
            if isinstance(written, dict) and written.get("component") == component:
                yield other, line


def _uses(data: Mapping[str, Any], component: str) -> tuple[str, ...]:
    formula = data["components"][component]["formula"].values()
    return tuple(
        str(line["component"]) for line in formula if isinstance(line, dict) and "component" in line
    )


def _soaks(data: Mapping[str, Any], component: str) -> tuple[str, ...]:
    """Syrups that are brushed on a component."""
    return tuple(
        str(each["component"]) for each in data["placement"] if each.get("on") == component
    )


def _is_needed(data: Mapping[str, Any], component: str) -> bool:
    placed = any(each["component"] == component for each in data["placement"])
    return placed or any(True for _ in _lines_of(data, component))


def _change(component: str, line: str, text: str, *, kind: str = "gone") -> Change:
    return Change(component=component, line=line, kind=kind, text=text)


def _notes() -> Change:
    told = say("notes stay as they are and may still name it: read them once more")
    return _change("", "", told, kind="caution")


def _component(text: str, component: str) -> Mapping[str, Any]:
    components: Mapping[str, Mapping[str, Any]] = _data(text)["components"]
    if component not in components:
        raise UnknownName("component of this dessert", component, components)
    return components[component]


def _data(text: str) -> Any:
    return read_tree(text, file=FILE).data
