"""A dessert: its section, the choice of mould and pieces, and how much of everything."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import ClassVar, TypeAlias
from urllib.parse import urlencode

from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.publish.typography import millilitres
from entremetry.store import StoredDocument
from entremetry.usecases.library import dessert, dessert_name, kitchen_text
from entremetry.web.choosing import View, mould_words, sheet_view, view
from entremetry.web.mould_tiles import mould_groups, tile_of
from entremetry.web.rendering import fragment, page_text, rendered
from entremetry.web.speech import kept_by_language
from entremetry.web.turns import in_turn
from entremetry.web.workbench import workbench_of
from entremetry.words import say

Asked: TypeAlias = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Named:
    """Something to choose by name."""

    id: str
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DessertPage:
    """Context of dessert.html; texts of fields are as they were typed."""

    template: ClassVar[str] = "dessert.html"
    id: str
    name: str
    about: str
    view: View
    pieces: str
    mould: str
    chosen_mould: str
    tiles: Markup
    ingredients: tuple[Named, ...]
    have_g: str
    have_of: str
    query: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetAnswer:
    """Context of sheet_answer.html: what a choice changes on the page."""

    template: ClassVar[str] = "sheet_answer.html"
    id: str
    view: View
    chosen_mould: str
    query: str


def show_dessert(request: Request) -> Response:
    """GET /desserts/{id}"""
    workbench = workbench_of(request)
    stored = dessert(workbench.library, request.path_params["id"])
    asked = tuple(request.query_params.items())
    kitchen = kitchen_text(workbench.library)
    return HTMLResponse(page_of(stored, asked, kitchen, workbench.token, request.url.path))


@kept_by_language(64)
def page_of(
    stored: StoredDocument, asked: Asked, kitchen: str | None, token: str, path: str
) -> str:
    """Page as it is sent; the same for the same text, kitchen and question."""
    return page_text(dessert_page(stored, dict(asked), kitchen), token=token, path=path)


@in_turn
def show_sheet(request: Request) -> Response:
    """GET /desserts/{id}/sheet: the part of the page that a choice changes."""
    library = workbench_of(request).library
    stored = dessert(library, request.path_params["id"])
    kitchen = kitchen_text(library)
    shown = sheet_view(stored.text, stored.id, request.query_params, kitchen)
    page = SheetAnswer(
        id=stored.id,
        view=shown,
        chosen_mould=chosen_mould(shown, request.query_params, kitchen),
        query=query_of(shown, request.query_params),
    )
    return rendered(request, page)


def chosen_mould(shown: View, asked: Mapping[str, str], kitchen: str | None) -> str:
    """What was chosen, even if it does not work; empty if that is as the document says."""
    tile = tile_of(kitchen, asked.get("mould", ""))
    if shown.sheet or tile is None:
        return shown.chosen_mould
    return say("{mould}, {volume}", mould=tile.name, volume=millilitres(tile.volume))


def pieces_shown(
    sheet: BatchSheet | None, usual: BatchSheet | None, asked: Mapping[str, str]
) -> str:
    """Number in the field: as computed, else as typed, else as the document says."""
    if sheet is not None:
        return str(sheet.pieces)
    return asked.get("pieces", "") or (str(usual.pieces) if usual else "")


def query_of(shown: View, asked: Mapping[str, str]) -> str:
    """What was chosen, for the address of the recipe page; empty if nothing was."""
    chosen = {"mould": asked.get("mould", "")}
    if shown.sheet and (asked.get("pieces") or asked.get("have_g")):
        chosen["pieces"] = str(shown.sheet.pieces)
    return urlencode({name: value for name, value in chosen.items() if value})


def dessert_page(
    stored: StoredDocument, asked: Mapping[str, str], kitchen: str | None
) -> DessertPage:
    """Context of the page for what the query asks."""
    shown = sheet_view(stored.text, stored.id, asked, kitchen)
    usual = view(stored.text, stored.id, {}, kitchen).sheet
    known = shown.sheet or usual
    own_mould = mould_words(usual) if usual else ""
    return DessertPage(
        id=stored.id,
        name=known.name if known else dessert_name(stored.id, stored.text),
        about=known.about if known else "",
        view=shown,
        pieces=pieces_shown(shown.sheet, usual, asked),
        mould=asked.get("mould", ""),
        chosen_mould=chosen_mould(shown, asked, kitchen) or own_mould,
        tiles=tiles(kitchen, asked.get("mould", ""), own_mould),
        ingredients=ingredients(known) if known else (),
        have_g=asked.get("have_g", ""),
        have_of=asked.get("have_of", ""),
        query=query_of(shown, asked),
    )


@kept_by_language(256)
def tiles(kitchen: str | None, chosen: str, own: str) -> Markup:
    """Moulds to choose from."""
    return fragment("tiles.html", groups=mould_groups(kitchen), chosen=chosen, own=own)


def ingredients(sheet: BatchSheet) -> tuple[Named, ...]:
    """Each ingredient of a sheet once, by name."""
    lines = (line for component in sheet.components for line in component.lines)
    bought = {purchase.id for purchase in sheet.shopping}
    return _by_name({line.id: line.name for line in lines if line.id in bought}.items())


def _by_name(names: Iterable[tuple[str, str]]) -> tuple[Named, ...]:
    found = (Named(id=id_, name=name) for id_, name in names)
    return tuple(sorted(found, key=lambda named: named.name.casefold()))
