"""Every field that a form of ours asks has a label, and every word of a choice has a name."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import get_args

from pydantic import BaseModel

from entremetry.dessert.document import ComponentDocument, DessertDocument, LineDocument
from entremetry.dessert.placement import DiscCutOut, Placement, RectangleCutOut
from entremetry.kitchen.kitchen_document import FreeHours, KitchenDocument
from entremetry.kitchen.shape_document import ShapeDocument
from entremetry.method.step import AnyStep
from entremetry.web.build_fields import fields_of, properties
from entremetry.web.build_rows import PLACE_ORDER, SHAPE_ORDER, STEP_ORDER, WHOLE
from entremetry.web.build_words import labels
from entremetry.web.choice_words import choice_words, kinds
from entremetry.web.walk_page import HOURS
from entremetry.web.walk_stations import stations
from entremetry.words import speaking


def asked() -> Iterator[tuple[type[BaseModel], Sequence[str]]]:
    """Yield every model that a form shows, with the fields that may be asked."""
    yield DessertDocument, WHOLE
    yield ComponentDocument, ("name", "kind", "density", "note")
    yield LineDocument, ("amount", "note")
    yield FreeHours, HOURS
    yield from ((model, STEP_ORDER) for model in get_args(AnyStep))
    yield from ((model, PLACE_ORDER) for model in get_args(get_args(Placement)[0]))
    yield from ((model, SHAPE_ORDER) for model in get_args(get_args(ShapeDocument)[0]))
    yield from ((model, SHAPE_ORDER) for model in (DiscCutOut, RectangleCutOut))
    for station in stations():
        yield KitchenDocument, station.names
        yield from ((shelf.model, shelf.names) for shelf in station.shelves)


def lacking() -> Iterator[str]:
    """Yield every field without a label, and every word of a choice without a name."""
    for model, names in asked():
        for name in set(names) & set(properties(model)):
            words = set(properties(model)[name].get("enum", ())) - set(choice_words(name))
            yield from (f"{model.__name__}.{name}: {word}" for word in sorted(words))
            if name not in labels():
                yield f"{model.__name__}.{name}"


def test_every_field_has_a_label_and_words_for_its_choices() -> None:
    assert list(lacking()) == []


def test_a_form_in_french_keeps_the_words_of_the_document() -> None:
    with speaking("fr"):
        name, kind = fields_of(ComponentDocument, {"kind": "soak"}, ("x",), ("name", "kind"))
    assert (name.label, kind.label) == ("Nom", "Nature")
    assert kind.value == "soak"
    assert ("soak", "imbibage") in kind.choices


def test_a_hint_in_french_names_what_a_document_takes() -> None:
    with speaking("fr"):
        (start,) = fields_of(FreeHours, {}, ("x",), ("start",))
    assert start.hint == "par exemple 18:00"


def test_kinds_are_those_of_a_component() -> None:
    assert set(kinds()) == set(properties(ComponentDocument)["kind"]["enum"])
