"""An older revision beside the newest, before it is brought back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from starlette.requests import Request
from starlette.responses import Response

from entremetry.usecases.library import (
    Opened,
    dessert_at,
    dessert_name,
    kitchen_at,
    open_dessert,
    open_kitchen,
)
from entremetry.web.comparing import ComparedLine, compared
from entremetry.web.rendering import rendered
from entremetry.web.workbench import workbench_of
from entremetry.words import say, say_as


@dataclass(frozen=True, slots=True, kw_only=True)
class RevisionPage:
    """Context of revision.html."""

    template: ClassVar[str] = "revision.html"
    heading: str
    number: int
    newest: int
    comparison: tuple[ComparedLine, ...]
    action: str
    back: str


def show_dessert_revision(request: Request) -> Response:
    """GET /desserts/{id}/edit/{number}"""
    library, number = workbench_of(request).library, request.path_params["number"]
    opened = open_dessert(library, request.path_params["id"])
    text = dessert_at(library, opened.id, number)
    heading, action = dessert_name(opened.id, opened.text), f"/desserts/{opened.id}/edit"
    return rendered(request, _page(opened, text, number, heading, action, back=action))


def show_kitchen_revision(request: Request) -> Response:
    """GET /kitchen/revisions/{number}"""
    library, number = workbench_of(request).library, request.path_params["number"]
    text = kitchen_at(library, number)
    opened = open_kitchen(library, starter="")
    page = _page(opened, text, number, say("Your kitchen"), "/kitchen", back="/kitchen")
    return rendered(request, page)


def _page(
    opened: Opened, text: str, number: int, heading: str, action: str, *, back: str
) -> RevisionPage:
    return RevisionPage(
        heading=heading,
        number=number,
        newest=opened.revision,
        comparison=compared(
            text,
            opened.text,
            their_word=say_as("whose line", "then"),
            my_word=say_as("whose line", "now"),
        ),
        action=action,
        back=back,
    )
