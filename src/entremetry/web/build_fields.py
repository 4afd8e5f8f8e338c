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
from entremetry.web.build_words import EXAMPLES, hints, labels
from entremetry.web.choice_words import choice_words
from entremetry.web.part_path import address_of
from entremetry.words import say

MODELS: tuple[type[BaseModel], ...] = (
    *(Oven, Freezer, Fridge, Mixer, Tray, FreeHours, Person, MouldDocument, KitchenDocument),
    DessertDocument,
    *get_args(AnyStep),
    *get_args(get_args(Placement)[0]),
)
PROSE = ("note", "about")
NOTHING: Mapping[str, Mapping[str, str]] = MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One field: where its value goes, what it is called, and what is in it.

    `kind` is `text`, `number`, `choice`, `yes`, `names` or `prose`. `choices` are the words that
    a document may hold, each with what it is called.
    """

    path: str
    label: str
    kind: str
    value: str
    hint: str = ""
    choices: tuple[tuple[str, str], ...] = ()
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
    choices: Mapping[str, Mapping[str, str]] = NOTHING,
) -> tuple[Field, ...]:
    """Fields of a part, by the names that are asked for and that the part may have.

    `choices` are those that the schema does not know: by the name of the field, what may be
    chosen and what that is called.
    """
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
    usual = labels().get(name, name.replace("_", " ").capitalize())
    return labels().get(f"{model.__name__}.{name}", usual)


def _hint(model: type[BaseModel], name: str, examples: Sequence[str]) -> str:
    if name in hints():
        return hints()[name]
    usual = EXAMPLES.get(name, str(examples[0]) if examples else "")
    example = EXAMPLES.get(f"{model.__name__}.{name}", usual)
    return say("such as {example}", example=example) if example else ""


def _choices(
    about: Mapping[str, Any], name: str, given: Mapping[str, str]
) -> tuple[tuple[str, str], ...]:
    """What may be chosen: an author's own words, else those of the schema as we call them."""
    if given:
        return tuple(given.items())
    known = choice_words(name)
    return tuple((word, known.get(word, word)) for word in about.get("enum", ()))


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
    choices: Mapping[str, Mapping[str, str]],
) -> Field:
    name = str(path[-1])
    given = _choices(about, name, choices.get(name, {}))
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
