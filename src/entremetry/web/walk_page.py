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
    KitchenDocument,
)
from entremetry.publish.page_words import shown
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
from entremetry.web.walk_stations import Shelf, stations
from entremetry.web.workbench import workbench_of
from entremetry.words import say

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
    every = stations()
    number = min(max(int(request.path_params["number"]), 1), len(every))
    station, is_part = every[number - 1], HTMX in request.headers
    page = (WalkPart if is_part else WalkPage)(
        started_from=opened.revision,
        number=number,
        titles=tuple(each.title for each in every),
        title=station.title,
        why=shown(station.why),
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
