"""Methods of components whose part in the dessert is another one now."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from entremetry.adapt.assembly import FROZEN, scaled_hands
from entremetry.adapt.base_fit import spoken
from entremetry.adapt.form import Form
from entremetry.adapt.layout import Layout, Wanted
from entremetry.adapt.shape_words import shape_spoken
from entremetry.documents import Path, edited, read_tree, removed
from entremetry.quantities import format_celsius
from entremetry.quantities.temperature import parse_temperature
from entremetry.words import say, say_later

SIZE = re.compile(r"\d+\s*(?:mm|cm)\b")
MOULDS = re.compile(r"\b(?:moulds?|rings?|frames?|glass(?:es)?|domes?|logs?)\b")
GLAZE_AT_MOST = 303.15  # K: warmer, it melts into a chilled mousse: common_practice
FIRST_TIME = "6 h"  # until the time is computed
CRUMB_NOTE = say_later("Break it into crumbs on a tray; stir once halfway, until evenly golden.")
INSIDE = {Form.GLASS: "glasses", Form.DISH: "dish", Form.FRAME: "frame"}
"""What stands in an English note in place of the mould before."""
INTO = {
    Form.GLASS: say_later("Into the glasses."),
    Form.DISH: say_later("Into the dish."),
    Form.FRAME: say_later("Into the frame."),
}
THIN_NOTE = say_later(
    "It is thinner than before and done sooner: look after two thirds of the time."
)


def with_methods(text: str, wanted: Wanted, layout: Layout) -> str:
    """The text with every method that has to follow, and what is not needed taken out."""
    for component, shape in layout.frozen.items():
        text = _frozen(text, layout, component, shape)
    for component in layout.poured:
        text = _poured(text, wanted, layout, component)
    for component in layout.glazes:
        text = _cooler(text, layout, component)
    for component, cut in layout.cut.items():
        text = _cut(text, wanted, layout, component, cut)
    for component in layout.crumbs:
        text = _crumbs(text, layout, component)
    for component in layout.left_out:
        text = removed(text, ("components", component))
    return text


def with_hands(text: str, wanted: Wanted, ratio: float) -> str:
    """The text with hands at the components' steps for `ratio` times as much."""
    for component in wanted.build.reckoning.dessert.components:
        place: Path = ("components", component.id, "method")
        for number, step in enumerate(component.steps):
            if step.hands_on is not None:
                text = edited(text, (*place, number, "hands_on"), scaled_hands(step, ratio))
    return text


def _frozen(text: str, layout: Layout, component: str, shape: Mapping[str, str]) -> str:
    method = _method(text, component)
    if not method:
        return text
    how = say(_cast(shape["kind"]), shape=shape_spoken(shape))
    text = _note(text, component, method, "pour", how)
    if not any(step["step"] == "freeze-until" for step in method):
        step = {"step": "freeze-until", "temperature": FROZEN, "time": FIRST_TIME}
        text = edited(text, ("components", component, "method", len(method)), step)
        told = say("frozen before it goes in")
        layout.tell(component, told, say("soft, it would not lie straight"), kind="method")
    return text


def _cast(kind: str) -> str:
    if kind in ("cylinder", "box", "ring"):
        return say_later("Into {shape}: cast in a ring closed with film, or cut out of a sheet.")
    return say_later("Into {shape}.")


def _poured(text: str, wanted: Wanted, layout: Layout, component: str) -> str:
    method = _method(text, component)
    for number in reversed(range(len(method))):
        if method[number]["step"] == "freeze-until":
            text = removed(text, ("components", component, "method", number))
            told = say("not frozen any more")
            layout.tell(component, told, say("it is poured where it stays"), kind="method")
    last = _last(method, "pour")
    if last is not None:
        note = str(method[last].get("note", ""))
        if not note or SIZE.search(note):
            note = say(INTO[wanted.form])
        else:
            note = MOULDS.sub(INSIDE[wanted.form], note)
        text = edited(text, ("components", component, "method", last, "note"), note)
    name = str(_part(text, ("components", component, "name")))
    if name.endswith(" insert"):
        text = edited(text, ("components", component, "name"), name.removesuffix(" insert"))
    return text


def _cooler(text: str, layout: Layout, component: str) -> str:
    """A glaze that is poured on a mousse that is not frozen."""
    method = _method(text, component)
    last = _last(method, "cool-to")
    if last is None:
        return text
    return _capped(text, layout, component, last, str(method[last]["temperature"]))


def _capped(text: str, layout: Layout, component: str, number: int, written: str) -> str:
    if parse_temperature(written) <= GLAZE_AT_MOST:
        return text
    cooler = format_celsius(GLAZE_AT_MOST)
    layout.tell(
        component,
        say("poured at {temperature}, {before} before", temperature=cooler, before=written),
        say("the mousse under it is not frozen and would melt"),
        kind="method",
    )
    return edited(text, ("components", component, "method", number, "temperature"), cooler)


def _cut(text: str, wanted: Wanted, layout: Layout, component: str, cut: Mapping[str, str]) -> str:
    method = _method(text, component)
    for kind in ("pour", "cut"):
        last = _last(method, kind)
        if last is not None and SIZE.search(str(method[last].get("note", ""))):
            how = say("For {cut} each.", cut=spoken(cut))
            text = edited(text, ("components", component, "method", last, "note"), how)
    last = _last(method, "bake")
    if component in layout.baked and last is not None:
        note = f"{method[last].get('note', '')} {say(THIN_NOTE)}".strip()
        text = edited(text, ("components", component, "method", last, "note"), note)
    return text


def _crumbs(text: str, layout: Layout, component: str) -> str:
    """A dough that was rolled and cut is baked as crumbs."""
    method = _method(text, component)
    for number in reversed(range(len(method))):
        if method[number]["step"] in ("roll", "cut"):
            text = removed(text, ("components", component, "method", number))
    method = _method(text, component)
    last = _last(method, "bake")
    if last is not None:
        text = edited(text, ("components", component, "method", last, "note"), say(CRUMB_NOTE))
    text = edited(text, ("components", component, "kind"), "crumble")
    text = edited(text, ("components", component, "density"), "0.45 g/ml")
    told = say("neither rolled nor cut")
    layout.tell(component, told, say("crumbs need no shape"), kind="method")
    return text


def _note(text: str, component: str, method: list[dict[str, Any]], kind: str, note: str) -> str:
    last = _last(method, kind)
    if last is None:
        return text
    return edited(text, ("components", component, "method", last, "note"), note)


def _last(method: list[dict[str, Any]], kind: str) -> int | None:
    return next((n for n in reversed(range(len(method))) if method[n]["step"] == kind), None)


def _method(text: str, component: str) -> list[dict[str, Any]]:
    return list(_part(text, ("components", component)).get("method") or [])


def _part(text: str, path: Path) -> Any:
    part: Any = read_tree(text, file="document").data
    for key in path:
        part = part[key]
    return part
