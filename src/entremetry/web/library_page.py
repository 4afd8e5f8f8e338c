"""The library: a card for each dessert."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import Response

from entremetry.errors import DocumentError, EntremetryError
from entremetry.store import StoredDocument
from entremetry.usecases.library import dessert_name, desserts, kitchen_text
from entremetry.web.answers import Choices, answer, small_drawing
from entremetry.web.choosing import NO_DRAWING
from entremetry.web.rendering import rendered
from entremetry.web.wording import counted
from entremetry.web.workbench import workbench_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """One dessert at a glance; `trouble` if no batch can be computed from it."""

    id: str
    name: str
    pieces: int = 0
    mould: str = ""
    drawing: Markup = NO_DRAWING
    trouble: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class LibraryPage:
    """Context of library.html."""

    template: ClassVar[str] = "library.html"
    cards: tuple[Card, ...]


def show_library(request: Request) -> Response:
    """GET /"""
    library = workbench_of(request).library
    kitchen = kitchen_text(library)
    cards = (card(stored, kitchen) for stored in desserts(library))
    return rendered(request, LibraryPage(cards=tuple(sorted(cards, key=_by_name))))


def card(stored: StoredDocument, kitchen: str | None) -> Card:
    """Card of one dessert."""
    try:
        sheet = answer(stored.text, stored.id, Choices(), kitchen).sheet
    except DocumentError as error:
        trouble = f"{counted(len(error.faults), 'fault', 'faults')} in the document"
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


def _by_name(card: Card) -> str:
    return card.name.casefold()
