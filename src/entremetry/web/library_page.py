"""The library: a card for each dessert, a page of them at a time."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import Response

from entremetry.errors import DocumentError, EntremetryError
from entremetry.store import StoredDocument
from entremetry.usecases.library import (
    dessert,
    dessert_name,
    desserts,
    kitchen_text,
    listed_name,
)
from entremetry.web.answers import Choices, answer, small_drawing
from entremetry.web.choosing import NO_DRAWING
from entremetry.web.rendering import rendered
from entremetry.web.workbench import workbench_of
from entremetry.words import say_count

AT_ONCE = 24
DRAWN = 8  # of a page at once; those further down are drawn when they are seen
LONGEST_FIND = 120


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """One dessert at a glance; `trouble` if no batch can be computed from it."""

    id: str
    name: str
    pieces: int = 0
    mould: str = ""
    drawing: Markup = NO_DRAWING
    trouble: str = ""
    later: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class LibraryPage:
    """Context of library.html: the cards of one page, and what was looked for."""

    template: ClassVar[str] = "library.html"
    cards: tuple[Card, ...]
    find: str
    found: int
    all: int
    page: int
    pages: int


@dataclass(frozen=True, slots=True, kw_only=True)
class CardPart:
    """Context of library_card.html."""

    template: ClassVar[str] = "library_card.html"
    card: Card


def show_library(request: Request) -> Response:
    """GET /?find=WORDS&page=N"""
    library = workbench_of(request).library
    kitchen, every = kitchen_text(library), desserts(library)
    find = request.query_params.get("find", "").strip()[:LONGEST_FIND]
    found = _found(every, find)
    pages = max(1, -(-len(found) // AT_ONCE))
    asked = request.query_params.get("page", "")
    number = int(asked) if asked.isascii() and asked.isdigit() and len(asked) < 6 else 1
    page = min(max(number, 1), pages)
    shown = found[(page - 1) * AT_ONCE : page * AT_ONCE]
    return rendered(
        request,
        LibraryPage(
            cards=(
                *(card(stored, kitchen) for stored in shown[:DRAWN]),
                *(_later(stored) for stored in shown[DRAWN:]),
            ),
            find=find,
            found=len(found),
            all=len(every),
            page=page,
            pages=pages,
        ),
    )


def show_card(request: Request) -> Response:
    """GET /desserts/{id}/card: the card of one dessert, for a page that is already there."""
    library = workbench_of(request).library
    stored = dessert(library, request.path_params["id"])
    return rendered(request, CardPart(card=card(stored, kitchen_text(library))))


def _later(stored: StoredDocument) -> Card:
    return Card(id=stored.id, name=listed_name(stored.id, stored.text), later=True)


def _found(every: Sequence[StoredDocument], find: str) -> list[StoredDocument]:
    """Desserts whose name has every word that is looked for, by name."""
    words = find.casefold().split()
    named = [(listed_name(stored.id, stored.text).casefold(), stored) for stored in every]
    fitting = [pair for pair in named if all(word in pair[0] for word in words)]
    return [stored for _, stored in sorted(fitting, key=lambda pair: (pair[0], pair[1].id))]


def card(stored: StoredDocument, kitchen: str | None) -> Card:
    """Card of one dessert."""
    try:
        sheet = answer(stored.text, stored.id, Choices(), kitchen).sheet
    except DocumentError as error:
        trouble = say_count(
            "{number} fault in the document", "{number} faults in the document", len(error.faults)
        )
        return Card(id=stored.id, name=dessert_name(stored.id, stored.text), trouble=trouble)
    except EntremetryError as error:
        return Card(id=stored.id, name=dessert_name(stored.id, stored.text), trouble=str(error))
    return Card(
        id=stored.id,
        name=sheet.name,
        pieces=sheet.pieces,
        mould=sheet.mould.name,
        drawing=small_drawing(stored.text, stored.id, kitchen),
    )
