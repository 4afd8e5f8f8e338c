"""Edit a dessert's document: faults beside it, nothing lost, undo and history."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from entremetry.errors import Conflict, DocumentError
from entremetry.publish.page_words import shown
from entremetry.usecases.library import (
    Opened,
    dessert_name,
    drop_draft,
    open_dessert,
    restore_dessert,
    save_dessert,
    undo_dessert,
)
from entremetry.web.editing import Subject, conflict_page, faulty_page, opened_page
from entremetry.web.forms import Form
from entremetry.web.rendering import rendered
from entremetry.web.workbench import workbench_of
from entremetry.words import say, say_later

LEAD = say_later("The document says what you decide. Everything else is computed from it.")


def show_edit(request: Request) -> Response:
    """GET /desserts/{id}/edit"""
    opened = open_dessert(workbench_of(request).library, _id(request))
    return rendered(request, opened_page(_subject(opened), opened))


def save(request: Request, form: Form) -> Response:
    """POST /desserts/{id}/edit"""
    library, dessert_id, text = workbench_of(request).library, _id(request), form.text("text")
    started_from = form.whole_number("started_from") or 0
    try:
        save_dessert(library, dessert_id, text, started_from=started_from)
    except DocumentError as error:
        opened = open_dessert(library, dessert_id)
        page = faulty_page(_subject(opened), opened, text, started_from, error.faults)
        return rendered(request, page, status=422)
    except Conflict as error:
        opened = open_dessert(library, dessert_id)
        page = conflict_page(_subject(opened), opened, text, str(error))
        return rendered(request, page, status=409)
    return RedirectResponse(f"/desserts/{dessert_id}", status_code=303)


def undo(request: Request, form: Form) -> Response:
    """POST /desserts/{id}/edit/undo"""
    dessert_id = _id(request)
    started_from = form.whole_number("started_from") or 0
    undo_dessert(workbench_of(request).library, dessert_id, started_from=started_from)
    return RedirectResponse(f"/desserts/{dessert_id}/edit", status_code=303)


def restore(request: Request, form: Form) -> Response:
    """POST /desserts/{id}/edit/restore"""
    dessert_id = _id(request)
    restore_dessert(
        workbench_of(request).library,
        dessert_id,
        form.whole_number("revision") or 0,
        started_from=form.whole_number("started_from") or 0,
    )
    return RedirectResponse(f"/desserts/{dessert_id}/edit", status_code=303)


def throw_draft_away(request: Request, form: Form) -> Response:
    """POST /desserts/{id}/edit/drop-draft"""
    dessert_id = _id(request)
    drop_draft(workbench_of(request).library, dessert_id)
    return RedirectResponse(f"/desserts/{dessert_id}/edit", status_code=303)


def _id(request: Request) -> str:
    return str(request.path_params["id"])


def _subject(opened: Opened) -> Subject:
    edit = f"/desserts/{opened.id}/edit"
    return Subject(
        id=opened.id,
        thing="dessert",
        untouched=say_later("The dessert itself is as it was."),
        heading=shown(say("Edit: {name}", name=dessert_name(opened.id, opened.text))),
        lead=LEAD,
        label=say_later("Document"),
        action=edit,
        revisions=edit,
        back=f"/desserts/{opened.id}",
        back_words=say_later("Back to the dessert"),
    )
