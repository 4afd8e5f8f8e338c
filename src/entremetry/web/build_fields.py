"""Fields of a form, made from what the document's schema says of a part."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Any, get_args

from pydantic import BaseModel

from entremetry.dessert.document import DessertDocument
from entremetry.dessert.placement import Placement
from entremetry.documents import Path
from entremetry.kitchen.kitchen_document import (
    FreeHours,
    Freezer,
    Fridge,
    KitchenDocument,
    Mixer,
    Oven,
    Person,
    Tray,
)
from entremetry.kitchen.mould_document import MouldDocument
from entremetry.method.step import AnyStep
from entremetry.web.build_words import HINTS, LABELS
from entremetry.web.part_path import address_of

MODELS: tuple[type[BaseModel], ...] = (
    *(Oven, Freezer, Fridge, Mixer, Tray, FreeHours, Person, MouldDocument, KitchenDocument),
    DessertDocument,
    *get_args(AnyStep),
    *get_args(get_args(Placement)[0]),
)
PROSE = ("note", "about")
NOTHING: Mapping[str, Sequence[str]] = MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One field: where its value goes, what it is called, and what is in it.

    `kind` is `text`, `number`, `choice`, `yes`, `names` or `prose`.
    """

    path: str
    label: str
    kind: str
    value: str
    hint: str = ""
    choices: tuple[str, ...] = ()
    required: bool = False

    @property
    def id(self) -> str:
        """Id of the field on the page."""
        return "f-" + "-".join(part for part in self.path.replace("#", "").split("/"))


def fields_of(
    model: type[BaseModel],
    data: Mapping[str, Any],
    path: Path,
    names: Sequence[str],
    *,
    choices: Mapping[str, Sequence[str]] = NOTHING,
) -> tuple[Field, ...]:
    """Fields of a part, by the names that are asked for and that the part may have."""
    known = properties(model)
    return tuple(
        _field(known[name], model, data.get(name), (*path, name), choices)
        for name in names
        if name in known
    )


@cache
def properties(model: type[BaseModel]) -> Mapping[str, Mapping[str, Any]]:
    """What the schema says of each property, without the branch that means 'left out'."""
    schema = model.model_json_schema()
    definitions = schema.get("$defs", {})
    required = schema.get("required", ())
    return {
        name: {**_plain(about, definitions), "required": name in required}
        for name, about in schema["properties"].items()
    }


def _label(model: type[BaseModel], name: str) -> str:
    """What a field is called; the same name may mean something else in another part."""
    usual = LABELS.get(name, name.replace("_", " ").capitalize())
    return LABELS.get(f"{model.__name__}.{name}", usual)


def _hint(model: type[BaseModel], name: str, examples: Sequence[str]) -> str:
    usual = f"such as {examples[0]}" if examples else ""
    return HINTS.get(f"{model.__name__}.{name}") or HINTS.get(name, usual)


def _plain(about: Mapping[str, Any], definitions: Mapping[str, Any]) -> Mapping[str, Any]:
    branches = [each for each in about.get("anyOf", ()) if each.get("type") != "null"]
    inner = branches[0] if branches else about
    if "$ref" in inner:
        inner = definitions[inner["$ref"].rpartition("/")[2]]
    return {**inner, **{key: value for key, value in about.items() if key == "description"}}


def _field(
    about: Mapping[str, Any],
    model: type[BaseModel],
    value: Any,
    path: Path,
    choices: Mapping[str, Sequence[str]],
) -> Field:
    name = str(path[-1])
    given = tuple(choices.get(name, ())) or tuple(about.get("enum", ()))
    examples = about.get("examples", ())
    return Field(
        path=address_of(path),
        label=_label(model, name),
        kind=_kind(about, name, bool(given)),
        value=shown_value(value),
        hint=_hint(model, name, examples),
        choices=given,
        required=about["required"],
    )


def _kind(about: Mapping[str, Any], name: str, chosen: bool) -> str:
    if about.get("type") == "array":
        return "names"
    if about.get("type") == "boolean":
        return "yes"
    if chosen:
        return "choice"
    if about.get("type") == "integer":
        return "number"
    return "prose" if name in PROSE else "text"


@cache
def kind_of(name: str) -> str:
    """Kind of the field of a name; the same name is of the same kind everywhere."""
    for model in MODELS:
        if name in properties(model):
            about = properties(model)[name]
            return _kind(about, name, bool(about.get("enum")))
    return "text"


def shown_value(value: Any) -> str:
    """A value as its author wrote it."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else ""
    if isinstance(value, list):
        return ", ".join(str(each) for each in value)
    return str(value)
