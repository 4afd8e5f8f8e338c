"""The kitchen: its text, to be read and edited."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from entremetry.errors import Conflict, DocumentError
from entremetry.usecases.library import (
    KITCHEN,
    Opened,
    drop_kitchen_draft,
    open_kitchen,
    restore_kitchen,
    save_kitchen,
    undo_kitchen,
)
from entremetry.web.editing import Subject, conflict_page, faulty_page, opened_page
from entremetry.web.forms import Form
from entremetry.web.rendering import rendered
from entremetry.web.starter_kitchen import STARTER
from entremetry.web.workbench import Workbench, workbench_of
from entremetry.words import say, say_later


def show_kitchen(request: Request) -> Response:
    """GET /kitchen"""
    return rendered(request, opened_page(_subject(), _opened(workbench_of(request))))


def save(request: Request, form: Form) -> Response:
    """POST /kitchen"""
    workbench, text = workbench_of(request), form.text("text")
    started_from = form.whole_number("started_from") or 0
    try:
        save_kitchen(workbench.library, text, started_from=started_from)
    except DocumentError as error:
        page = faulty_page(_subject(), _opened(workbench), text, started_from, error.faults)
        return rendered(request, page, status=422)
    except Conflict as error:
        page = conflict_page(_subject(), _opened(workbench), text, str(error))
        return rendered(request, page, status=409)
    return RedirectResponse("/kitchen", status_code=303)


def undo(request: Request, form: Form) -> Response:
    """POST /kitchen/undo"""
    started_from = form.whole_number("started_from") or 0
    undo_kitchen(workbench_of(request).library, started_from=started_from)
    return RedirectResponse("/kitchen", status_code=303)


def restore(request: Request, form: Form) -> Response:
    """POST /kitchen/restore"""
    restore_kitchen(
        workbench_of(request).library,
        form.whole_number("revision") or 0,
        started_from=form.whole_number("started_from") or 0,
    )
    return RedirectResponse("/kitchen", status_code=303)


def throw_draft_away(request: Request, form: Form) -> Response:
    """POST /kitchen/drop-draft"""
    drop_kitchen_draft(workbench_of(request).library)
    return RedirectResponse("/kitchen", status_code=303)


def _subject() -> Subject:
    return Subject(
        id=KITCHEN,
        thing="kitchen",
        untouched=say_later("The kitchen itself is as it was."),
        heading=say("Your kitchen"),
        lead=say_later(
            "What you own: moulds, cold, heat, and whose cups and spoons you measure with."
        ),
        label=say_later("Kitchen document"),
        action="/kitchen",
        revisions="/kitchen/revisions",
        back="/",
        back_words=say_later("To the library"),
    )


def _opened(workbench: Workbench) -> Opened:
    return open_kitchen(workbench.library, starter=STARTER)
