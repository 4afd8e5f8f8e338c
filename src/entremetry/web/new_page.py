"""Write a new dessert: a mould, pasted lines or a page, and questions about what is unclear."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from entremetry.dessert.draft import Draft, DraftRequest
from entremetry.dessert.draft_question import Question
from entremetry.errors import DocumentError, EntremetryError, QuantityError
from entremetry.usecases.batch import moulds
from entremetry.usecases.drafting import chosen_mould, decoded, draft_text, page_text
from entremetry.usecases.library import add_dessert, kitchen_text
from entremetry.web.draft_answers import GivenAnswer, given_answers
from entremetry.web.forms import Form
from entremetry.web.mould_tiles import MouldGroup, mould_groups
from entremetry.web.rendering import rendered
from entremetry.web.upload import Upload
from entremetry.web.workbench import workbench_of
from entremetry.words import say

WEIGHED = "weighed"
USUAL_LIKE = "hemisphere-70"


@dataclass(frozen=True, slots=True, kw_only=True)
class NewPage:
    """Context of new.html; texts of fields are as they were typed."""

    template: ClassVar[str] = "new.html"
    name: str = ""
    pieces: str = "6"
    mould: str = ""
    holds: str = ""
    like: str = USUAL_LIKE
    text: str = ""
    troubles: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    questions: tuple[Question, ...] = ()
    given: tuple[GivenAnswer, ...] = ()
    groups: tuple[MouldGroup, ...] = ()


def show_new(request: Request) -> Response:
    """GET /new"""
    kitchen = kitchen_text(workbench_of(request).library)
    return rendered(request, NewPage(groups=mould_groups(kitchen)))


def write_new(request: Request, form: Form) -> Response:
    """POST /new: ask what is unclear, or keep the dessert and show its sheet."""
    library = workbench_of(request).library
    kitchen = kitchen_text(library)
    given = given_answers(form, text=form.text("text"), name=form.line("name"))
    try:
        drafted = draft_text(_request(form, given, kitchen))
        if drafted.complete and not form.text("forget"):
            kept = add_dessert(library, drafted.document)
            return RedirectResponse(f"/desserts/{kept.id}", status_code=303)
    except EntremetryError as error:
        return rendered(request, _page(form, given, kitchen, troubles=told(error)), status=422)
    return rendered(request, _page(form, given, kitchen, draft=drafted))


def read_page(request: Request, upload: Upload) -> Response:
    """POST /new/page: the lines of a saved page in the form, to be read and mended first."""
    kitchen = kitchen_text(workbench_of(request).library)
    try:
        content = decoded(upload.content, file=upload.name)
        page = page_text(content, file=upload.name)
    except EntremetryError as error:
        page_with_trouble = NewPage(groups=mould_groups(kitchen), troubles=told(error))
        return rendered(request, page_with_trouble, status=422)
    others = (
        (say("The page has other recipes: {names}.", names=", ".join(page.others)),)
        if page.others
        else ()
    )
    found = NewPage(
        name=page.name,
        pieces=str(page.pieces or ""),
        text=page.text,
        remarks=others,
        groups=mould_groups(kitchen),
    )
    return rendered(request, found)


def told(error: EntremetryError) -> tuple[str, ...]:
    """What an error says, one sentence for each fault."""
    if isinstance(error, DocumentError):
        return tuple(str(fault) for fault in error.faults)
    return (str(error),)


def _request(form: Form, given: tuple[GivenAnswer, ...], kitchen: str | None) -> DraftRequest:
    name, pieces = form.line("name"), form.whole_number("pieces")
    if not name:
        raise QuantityError(say("no name"), say("a name for the dessert"))
    if not pieces:
        found = say("'{number}' pieces", number=form.line("pieces")[:40])
        raise QuantityError(found, say("a whole number from 1"))
    return DraftRequest(
        name=name,
        pieces=pieces,
        mould=_mould(form, kitchen),
        text=form.text("text"),
        answers={each.key: each.answer for each in given},
    )


def _mould(form: Form, kitchen: str | None) -> str | dict[str, Any]:
    chosen = form.line("mould")
    if chosen == WEIGHED:
        holds = form.line("holds")
        with_unit = f"{holds} ml" if holds.replace(".", "", 1).isdigit() else holds
        return chosen_mould(None, with_unit, form.line("like") or USUAL_LIKE)
    if chosen in {mould.id for mould in moulds(kitchen)}:
        return chosen
    return chosen_mould(chosen or None, None, USUAL_LIKE)


def _page(
    form: Form,
    given: tuple[GivenAnswer, ...],
    kitchen: str | None,
    *,
    troubles: tuple[str, ...] = (),
    draft: Draft | None = None,
) -> NewPage:
    return NewPage(
        name=form.line("name"),
        pieces=form.line("pieces"),
        mould=form.line("mould"),
        holds=form.line("holds"),
        like=form.line("like") or USUAL_LIKE,
        text=form.text("text"),
        troubles=troubles,
        questions=draft.questions if draft else (),
        remarks=draft.remarks if draft else (),
        given=given,
        groups=mould_groups(kitchen),
    )
