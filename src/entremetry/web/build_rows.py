"""What stands on the page on which a dessert is built: its places, components, lines and steps."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, get_args

from pydantic import BaseModel

from entremetry.dessert.batch_sheet import BatchSheet, ComponentBatch
from entremetry.dessert.document import ComponentDocument, DessertDocument, LineDocument
from entremetry.dessert.placement import DiscCutOut, Placement, RectangleCutOut
from entremetry.dessert.starting_place import SHAPES
from entremetry.documents import Path
from entremetry.kitchen.shape_document import ShapeDocument
from entremetry.method.step import AnyStep
from entremetry.web.build_fields import Field, fields_of
from entremetry.web.build_words import steps as step_words
from entremetry.web.choice_words import choice_words
from entremetry.web.part_path import address_of

WHOLE = ("name", "about", "pieces", "serves", "measures")
STEP_ORDER = (
    *("what", "removes", "bowl", "temperature", "at", "fan", "where", "on", "thickness", "trim"),
    *("water", "overrun", "density", "kept", "ice_bath", "covered", "evaporates", "to_mass"),
    *(
        "to_brix",
        "loss",
        "holds_back",
        "left_behind",
        "time",
        "hands_on",
        "within",
        "keeps",
        "note",
    ),
)
PLACE_ORDER = (
    *("height", "volume", "mass", "below_rim", "from_closed_end", "aside", "turned"),
    *("thickness", "sits", "film", "per_area", "where", "pour", "caught", "on"),
)
SHAPE_ORDER = (
    *("diameter", "base_diameter", "hole_diameter", "length", "width", "height"),
    *("corner_radius", "section"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One thing that can be moved or taken out, with its fields."""

    path: str
    place: int
    last: int
    name: str
    fields: tuple[Field, ...] = ()
    words: str = ""
    is_open: bool = False
    shape: tuple[Field, ...] = ()
    mass: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """One component. Masses in kg."""

    id: str
    path: str
    name: str
    kind: str
    about: tuple[Field, ...]
    lines: tuple[Row, ...]
    steps: tuple[Row, ...]
    made: ComponentBatch | None
    place: int
    last: int


def whole_fields(data: Mapping[str, Any]) -> tuple[Field, ...]:
    """Fields of the dessert itself."""
    return fields_of(DessertDocument, data, (), WHOLE)


def place_rows(data: Mapping[str, Any], names: Mapping[str, str]) -> tuple[Row, ...]:
    """How everything lies in the mould, in the order in which it is filled."""
    entries = data.get("placement") or []
    last = len(entries) - 1
    return tuple(
        _place_row(entry, index, last, names)
        for index, entry in enumerate(entries)
        if isinstance(entry, dict)
    )


def cards(data: Mapping[str, Any], sheet: BatchSheet | None, opened: str) -> tuple[Card, ...]:
    """The components, with what is known of their masses."""
    made = {each.id: each for each in sheet.components} if sheet else {}
    components = data.get("components") or {}
    last = len(components) - 1
    return tuple(
        _card(id_, written, made.get(id_), index, last, opened)
        for index, (id_, written) in enumerate(components.items())
    )


def step_rows(
    steps: Sequence[Mapping[str, Any]],
    path: Path,
    sentences: Sequence[str],
    names: Mapping[str, str],
    opened: str,
) -> tuple[Row, ...]:
    """Steps as sentences; the one that is open has its fields."""
    last = len(steps) - 1
    return tuple(
        _step_row(step, (*path, index), index, last, sentences, names, opened)
        for index, step in enumerate(steps)
    )


def step_model(kind: str) -> type[BaseModel] | None:
    """Model of a step by the word after `step`."""
    models = (m for m in get_args(AnyStep) if kind in get_args(m.model_fields["step"].annotation))
    return next(models, None)


def names_in(component: Mapping[str, Any], made: ComponentBatch | None = None) -> Mapping[str, str]:
    """Lines and bowls that a step of a component may name, each with what it is called."""
    steps = component.get("method") or []
    bowls = (step.get("bowl") for step in steps if isinstance(step, dict))
    known = {line.line: line.name for line in made.lines} if made else {}
    ids = (*(component.get("formula") or {}), *filter(None, bowls))
    return {id_: known.get(id_, id_.replace("-", " ")) for id_ in map(str, ids)}


def new_step_fields(kind: str, path: Path, names: Mapping[str, str]) -> tuple[Field, ...]:
    """Fields of a step that is to be added."""
    model = step_model(kind)
    if model is None:
        return ()
    return fields_of(model, {}, path, STEP_ORDER, choices={"what": names, "removes": names})


def _place_row(entry: Mapping[str, Any], index: int, last: int, names: Mapping[str, str]) -> Row:
    path: Path = ("placement", index)
    place, component = str(entry.get("as")), str(entry.get("component"))
    model = _placement_model(place)
    fields = fields_of(model, entry, path, PLACE_ORDER, choices={"on": names}) if model else ()
    cut = entry.get("cut_out")
    return Row(
        path=address_of(path),
        place=index,
        last=last,
        name=names.get(component, component),
        words=place,
        fields=fields,
        shape=_shape_fields(entry.get("shape"), (*path, "shape"))
        + _cut_fields(cut, (*path, "cut_out")),
    )


def _placement_model(place: str) -> type[BaseModel] | None:
    models = get_args(get_args(Placement)[0])
    return next((m for m in models if place in get_args(m.model_fields["role"].annotation)), None)


def _shape_fields(shape: Any, path: Path) -> tuple[Field, ...]:
    """Kind and measures of an insert's shape, where it is one that is drawn from its measures."""
    if not isinstance(shape, dict):
        return ()
    kind = str(shape.get("kind"))
    models = get_args(get_args(ShapeDocument)[0])
    model = next((m for m in models if kind in get_args(m.model_fields["kind"].annotation)), None)
    if model is None or kind not in SHAPES:
        return ()
    known = choice_words("kind")
    shapes = {each: known.get(each, each) for each in SHAPES}
    return fields_of(model, shape, path, ("kind", *SHAPE_ORDER), choices={"kind": shapes})


def _cut_fields(cut: Any, path: Path) -> tuple[Field, ...]:
    if not isinstance(cut, dict):
        return ()
    model = DiscCutOut if cut.get("kind") == "disc" else RectangleCutOut
    return fields_of(model, cut, path, SHAPE_ORDER)


def _card(
    id_: str,
    written: Mapping[str, Any],
    made: ComponentBatch | None,
    index: int,
    last: int,
    opened: str,
) -> Card:
    path: Path = ("components", id_)
    names = names_in(written, made)
    return Card(
        id=id_,
        path=address_of(path),
        name=str(written.get("name", id_)),
        kind=str(written.get("kind", "")),
        about=fields_of(ComponentDocument, written, path, ("name", "kind", "density", "note")),
        lines=tuple(_line_rows(written.get("formula") or {}, path, made)),
        steps=step_rows(
            written.get("method") or [],
            (*path, "method"),
            made.method if made else (),
            names,
            opened,
        ),
        made=made,
        place=index,
        last=last,
    )


def _line_rows(
    formula: Mapping[str, Any], path: Path, made: ComponentBatch | None
) -> Iterable[Row]:
    amounts = {each.line: each for each in made.lines} if made else {}
    last = len(formula) - 1
    for index, (name, written) in enumerate(formula.items()):
        data = {"amount": written} if isinstance(written, str) else written or {}
        at: Path = (*path, "formula", name)
        known = amounts.get(name)
        yield Row(
            path=address_of(at),
            place=index,
            last=last,
            name=known.name if known else name.replace("-", " "),
            words=name,
            fields=fields_of(LineDocument, data, at, ("amount", "note")),
            mass=known.mass if known else None,
        )


def _step_row(
    step: Mapping[str, Any],
    path: Path,
    index: int,
    last: int,
    sentences: Sequence[str],
    names: Mapping[str, str],
    opened: str,
) -> Row:
    address, kind = address_of(path), str(step.get("step"))
    is_open = address == opened
    model = step_model(kind) if is_open else None
    choices = {"what": names, "removes": names}
    return Row(
        path=address,
        place=index,
        last=last,
        name=step_words().get(kind, kind),
        words=sentences[index] if index < len(sentences) else "",
        is_open=is_open,
        fields=fields_of(model, step, path, STEP_ORDER, choices=choices) if model else (),
    )
