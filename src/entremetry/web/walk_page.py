"""A walk through the kitchen: what is owned, station by station, each change kept at once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, ClassVar

from pydantic import BaseModel
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from entremetry.documents import Path, read_tree
from entremetry.errors import EntremetryError
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
from entremetry.store.shelf import built_in_moulds
from entremetry.usecases.building import alter_kitchen
from entremetry.usecases.library import kitchen_at, open_kitchen
from entremetry.web.build_fields import Field, fields_of
from entremetry.web.build_form import Seen, alteration_of
from entremetry.web.build_refusal import Refused, refused_change
from entremetry.web.build_rows import Row
from entremetry.web.choice_words import choice_words
from entremetry.web.forms import Form
from entremetry.web.part_path import address_of
from entremetry.web.rendering import HTMX, rendered
from entremetry.web.starter_kitchen import STARTER
from entremetry.web.workbench import workbench_of
from entremetry.words import say, say_later


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """A list of things at a station: where it stands, what each thing is, what is asked of it.

    `words` and `add` are messages: what the list is called, and what adds to it.
    """

    key: str
    words: str
    add: str
    model: type[BaseModel]
    names: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Station:
    """One stop of the walk: what it is called, what it decides, its single fields, its shelves."""

    title: str
    why: str
    names: tuple[str, ...] = ()
    shelves: tuple[Shelf, ...] = ()


STATIONS: tuple[Station, ...] = (
    Station(
        title=say_later("How you measure"),
        why=say_later(
            "Cups and spoons differ by country; the room decides how fast things cool and thaw."
        ),
        names=("name", "measures", "room_temperature", "time_zone"),
    ),
    Station(
        title=say_later("Heat"),
        why=say_later(
            "Two things at one temperature share an oven; at two temperatures they wait."
        ),
        names=("hobs",),
        shelves=(
            Shelf(
                key="ovens",
                words=say_later("Ovens"),
                add=say_later("Add to ovens"),
                model=Oven,
                names=("name", "fan", "trays"),
            ),
        ),
    ),
    Station(
        title=say_later("Cold"),
        why=say_later(
            "How cold, how large and on what a piece stands decide how long it freezes and thaws."
        ),
        shelves=(
            Shelf(
                key="freezers",
                words=say_later("Freezers"),
                add=say_later("Add to freezers"),
                model=Freezer,
                names=("name", "temperature", "volume", "freezes_per_day", "stands_on", "blast"),
            ),
            Shelf(
                key="fridges",
                words=say_later("Fridges"),
                add=say_later("Add to fridges"),
                model=Fridge,
                names=("name", "temperature", "volume", "stands_on", "fan"),
            ),
        ),
    ),
    Station(
        title=say_later("Bench"),
        why=say_later(
            "One mixer means one foam at a time; a tray says how many bases come out of a sheet."
        ),
        names=("benches",),
        shelves=(
            Shelf(
                key="mixers",
                words=say_later("Mixers"),
                add=say_later("Add to mixers"),
                model=Mixer,
                names=("name", "bowls", "volume"),
            ),
            Shelf(
                key="trays",
                words=say_later("Trays"),
                add=say_later("Add to trays"),
                model=Tray,
                names=("name", "length", "width", "owned"),
            ),
        ),
    ),
    Station(
        title=say_later("Moulds"),
        why=say_later("Fill one cavity to the rim with water and weigh the water: 1 g is 1 ml."),
        shelves=(
            Shelf(
                key="moulds",
                words=say_later("Moulds of your own"),
                add=say_later("Add to moulds of your own"),
                model=MouldDocument,
                names=("name", "cavities", "owned", "material"),
            ),
        ),
    ),
    Station(
        title=say_later("Hands"),
        why=say_later("Plans are made for the hours in which somebody is free."),
        shelves=(
            Shelf(
                key="people",
                words=say_later("People"),
                add=say_later("Add to people"),
                model=Person,
                names=("name",),
            ),
        ),
    ),
)
HOURS = ("day", "date", "start", "end")


@dataclass(frozen=True, slots=True, kw_only=True)
class ShelfShown:
    """A shelf with what stands on it; `hours` are the free hours of each person."""

    key: str
    words: str
    add: str
    rows: tuple[Row, ...]
    new: tuple[Field, ...]
    hours: tuple[tuple[Row, ...], ...] = ()
    new_hours: tuple[tuple[Field, ...], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkPage:
    """Context of walk.html and walk_part.html."""

    template: ClassVar[str] = "walk.html"
    started_from: int
    number: int
    titles: tuple[str, ...]
    title: str
    why: str
    fields: tuple[Field, ...]
    shelves: tuple[ShelfShown, ...]
    likes: tuple[tuple[str, str], ...]
    refused: Refused | None
    told: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkPart(WalkPage):
    """The part that a change renews."""

    template: ClassVar[str] = "walk_part.html"


def show_walk(request: Request) -> Response:
    """GET /kitchen/walk/{number}"""
    return _answer(request)


def change(request: Request, form: Form) -> Response:
    """POST /kitchen/walk/{number}: one change, kept at once."""
    library = workbench_of(request).library
    started_from = form.whole_number("started_from") or 0
    try:
        text = kitchen_at(library, started_from) if started_from else STARTER
        alteration = alteration_of(form, Seen(text=text, kitchen=None))
        if alteration is not None:
            alter_kitchen(library, alteration, started_from=started_from, starter=STARTER)
    except EntremetryError as error:
        return _answer(request, refused=refused_change(error, form))
    if HTMX in request.headers:
        return _answer(request, told=say("Kept."))
    return RedirectResponse(request.url.path, status_code=303)


def _answer(request: Request, *, refused: Refused | None = None, told: str = "") -> Response:
    opened = open_kitchen(workbench_of(request).library, starter=STARTER)
    data = read_tree(opened.text, file="kitchen").data
    number = min(max(int(request.path_params["number"]), 1), len(STATIONS))
    station, is_part = STATIONS[number - 1], HTMX in request.headers
    page = (WalkPart if is_part else WalkPage)(
        started_from=opened.revision,
        number=number,
        titles=tuple(each.title for each in STATIONS),
        title=station.title,
        why=station.why,
        fields=fields_of(KitchenDocument, data, (), station.names),
        shelves=tuple(_shelf(shelf, data) for shelf in station.shelves),
        likes=tuple((mould.id, mould.name) for mould in built_in_moulds().values()),
        refused=refused,
        told=told,
    )
    answer = rendered(request, page, status=422 if refused and not is_part else 200)
    answer.headers["Vary"] = HTMX
    return answer


def _shelf(shelf: Shelf, data: Mapping[str, Any]) -> ShelfShown:
    things = [thing for thing in data.get(shelf.key) or [] if isinstance(thing, dict)]
    path: Path = (shelf.key,)
    shown = ShelfShown(
        key=shelf.key,
        words=shelf.words,
        add=shelf.add,
        rows=_rows(things, path, shelf.model, shelf.names),
        new=fields_of(shelf.model, {}, (*path, len(things)), shelf.names),
    )
    if shelf.key != "people":
        return shown
    free = [[hour for hour in thing.get("free") or []] for thing in things]
    places = [(*path, index, "free") for index in range(len(things))]
    return ShelfShown(
        key=shown.key,
        words=shown.words,
        add=shown.add,
        rows=shown.rows,
        new=shown.new,
        hours=tuple(
            _rows(hours, place, FreeHours, HOURS) for hours, place in zip(free, places, strict=True)
        ),
        new_hours=tuple(
            fields_of(FreeHours, {}, (*place, len(hours)), HOURS)
            for hours, place in zip(free, places, strict=True)
        ),
    )


def _rows(
    things: Sequence[Mapping[str, Any]], path: Path, model: type[BaseModel], names: Sequence[str]
) -> tuple[Row, ...]:
    last = len(things) - 1
    return tuple(
        Row(
            path=address_of((*path, index)),
            place=index,
            last=last,
            name=_name(thing) or str(index + 1),
            fields=fields_of(model, thing, (*path, index), names),
        )
        for index, thing in enumerate(things)
    )


def _name(thing: Mapping[str, Any]) -> str:
    """Name of a thing; of free hours their weekday, or their date."""
    day = str(thing.get("day", ""))
    return str(thing.get("name") or choice_words("day").get(day, day) or thing.get("date") or "")
