"""Name, id and description of a dessert that has another form now."""

from __future__ import annotations

import re
from collections.abc import Sequence

from entremetry.adapt.build import Build
from entremetry.adapt.form import Form
from entremetry.adapt.layout import Layout, Wanted
from entremetry.documents import edited, read_tree
from entremetry.shapes import Cylinder
from entremetry.words import say, say_later

WORDS = (
    "dome",
    "domes",
    "glass",
    "glasses",
    "ring",
    "log",
    "logs",
    "bar",
    "bars",
    "frame",
    "cake",
    "cakes",
    "dish",
    "coupe",
    "sphere",
    "cube",
    "savarin",
    "heart",
    "piece",
    "pieces",
)
AT_END = re.compile(rf"[ ,]+(?:(?:in|as|from) an? )?(?:{'|'.join(WORDS)})$", re.IGNORECASE)
ID_END = re.compile(rf"-(?:{'|'.join(WORDS)})$")
DOME = 0.6
NAMED = {
    "glass": say_later("{name} in a glass"),
    "dish": say_later("{name} in a dish"),
    "dome": say_later("{name} dome"),
    "ring": say_later("{name} ring"),
    "cake": say_later("{name} cake"),
    "log": say_later("{name} log"),
    "bars": say_later("{name} bars"),
}
"""Name of a dessert in each form, by the word for it."""


def with_titles(text: str, wanted: Wanted, layout: Layout) -> str:
    """The text with a name and description that fit, and a line on its origin."""
    document, word = wanted.build.reckoning.dessert.document, _word(wanted)
    name = AT_END.sub("", document.name)
    named = say(NAMED[word], name=name)
    text = edited(text, ("name",), named)
    text = edited(text, ("id",), f"{ID_END.sub('', document.id)}-{word}")
    if document.keywords:
        text = edited(text, ("keywords",), _keywords(document.keywords, word, wanted))
    if document.about:
        text = edited(text, ("about",), _about(text, wanted, layout))
    layout.tell(
        "",
        say("called '{name}'", name=named),
        say("name, id, keywords and description told of the form before"),
        kind="text",
    )
    return _with_origin(text, wanted)


def _keywords(keywords: Sequence[str], word: str, wanted: Wanted) -> list[str]:
    """Keywords with the word of the form in place of the old one, each once."""
    frozen = "no freezing" if wanted.form.is_vessel else "frozen"
    new = {**dict.fromkeys(WORDS, word), "no freezing": frozen}
    return list(dict.fromkeys(new.get(each.casefold(), each) for each in keywords))


def _word(wanted: Wanted) -> str:
    solid = wanted.mould.solid
    is_dome = solid.area_at(0.2 * solid.height) < DOME * solid.area_at(solid.height)
    if wanted.form in (Form.SINGLE, Form.LARGE) and is_dome:
        return "dome"
    if wanted.form is Form.LARGE and isinstance(solid, Cylinder):
        return "ring"
    return "cake" if wanted.form is Form.SINGLE else wanted.form.value


def _about(text: str, wanted: Wanted, layout: Layout) -> str:
    """The components from the base up, as one sentence."""
    components = read_tree(text, file="document").data["components"]
    upward = [p.id for p in wanted.build.upward]
    others = [p.id for p in wanted.build.parts if p.id not in upward and p.id in components]
    names = [str(components[c]["name"]) for c in dict.fromkeys([*upward, *others])]
    lowered = [names[0], *(each[:1].lower() + each[1:] for each in names[1:])]
    *most, last = lowered
    return say("{names} and {last}.", names=", ".join(most), last=last) if most else f"{last}."


def _with_origin(text: str, wanted: Wanted) -> str:
    """A comment at the top: what follows may hold comments on the dessert before."""
    build: Build = wanted.build
    before, now = build.reckoning.dessert.mould.name, wanted.mould.name
    end = "\r\n" if "\r\n" in text else "\n"
    mark = "\ufeff" if text.startswith("\ufeff") else ""
    line = say(
        "{name}, adapted from {before} to {now}; comments below are of the first.",
        name=build.reckoning.dessert.document.name,
        before=before,
        now=now,
    )
    return f"{mark}# {line}{end}{text.removeprefix(mark)}"
