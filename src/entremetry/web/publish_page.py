"""Publish a dessert: the reader's page as it will be, and its files to take along."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from typing import TYPE_CHECKING, ClassVar, cast

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response

from entremetry.errors import EntremetryError
from entremetry.usecases.batch import batch_of_text
from entremetry.usecases.language import in_language
from entremetry.usecases.library import dessert, dessert_name, kitchen_text
from entremetry.usecases.publication_files import Form, Wishes, published_files
from entremetry.usecases.publishing import page_of
from entremetry.web.answers import answer
from entremetry.web.choosing import choices
from entremetry.web.forms import Form as Sent
from entremetry.web.page_policy import policy_of_document
from entremetry.web.publish_form import (
    CARRIED,
    FORM,
    PAPERS,
    Asked,
    FormChoice,
    asked_of,
    form_choices,
    form_of,
    language_choices,
    language_of,
    query,
)
from entremetry.web.publish_sending import sent, zipped
from entremetry.web.publish_work import Preparing, Publication, PublishWork
from entremetry.web.rendering import rendered
from entremetry.web.workbench import workbench_of
from entremetry.words import say, say_later

if TYPE_CHECKING:
    from entremetry.usecases.publishing import Prepared

AT_ONCE = 0.5  # s that a page waits for the publication before it is sent without
LISTENING = 1.0  # s that a page which asks again is kept waiting
PATIENCE = 300.0  # s that a download waits, while the page before it shows how far it is
FRAMED = "frame-ancestors 'self'; sandbox allow-scripts"
NO_FILE = say_later("This publication has no file of that name.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """How far a publication is: ready, on its way with points done, stopped, or in trouble."""

    ready: bool = False
    stopped: bool = False
    done: int = 0
    whole: int = 0
    trouble: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PublishPart:
    """Context of publish_part.html: the part that asks for itself again.

    `query` and `carried` bear the choice of pieces and mould; `to_page` leads on to the page.
    """

    template: ClassVar[str] = "publish_part.html"
    id: str
    name: str
    query: str
    carried: tuple[tuple[str, str], ...]
    progress: Progress
    to_page: bool = False
    live: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class RecipeWaiting(PublishPart):
    """Context of recipe_waiting.html: the recipe page before it is there."""

    template: ClassVar[str] = "recipe_waiting.html"


@dataclass(frozen=True, slots=True, kw_only=True)
class PublishPage(PublishPart):
    """Context of publish.html: the part, and the form beside it."""

    template: ClassVar[str] = "publish.html"
    forms: tuple[FormChoice, ...]
    papers: tuple[tuple[str, str], ...]
    languages: tuple[tuple[str, str], ...]
    asked: Asked
    file_query: str


def show_publish(request: Request) -> Response:
    """GET /desserts/{id}/publish"""
    return _page(request)


def show_progress(request: Request) -> Response:
    """GET /desserts/{id}/publish/progress: the part alone; to the page itself with `to=page`."""
    to_page = request.query_params.get("to") == "page"
    part = _part(PublishPart, request, LISTENING, to_page=to_page, live=True)
    found = rendered(request, part)
    if to_page and part.progress.ready:
        found.headers["HX-Redirect"] = f"{_base(request)}/page?{_query(request)}"
    return found


def show_preview(request: Request) -> Response:
    """GET /desserts/{id}/publish/preview: the page as a reader has it, shut in a frame."""
    ready = _ready(request, AT_ONCE)
    if ready is None:
        return RedirectResponse(f"{_base(request)}/publish?{_query(request)}", status_code=303)
    page = page_of(ready, date.today())
    policy = policy_of_document(page).replace("frame-ancestors 'none'", FRAMED)
    headers = {"Content-Security-Policy": policy, "X-Frame-Options": "SAMEORIGIN"}
    return HTMLResponse(page, headers=headers)


def show_recipe(request: Request) -> Response:
    """GET /desserts/{id}/page: the self-contained page, allowed its own style and script."""
    ready = _ready(request, AT_ONCE)
    if ready is None:
        return rendered(request, _part(RecipeWaiting, request, 0.0, to_page=True), status=202)
    page = page_of(ready, date.today())
    return HTMLResponse(page, headers={"Content-Security-Policy": policy_of_document(page)})


def send_all(request: Request) -> Response:
    """GET /desserts/{id}/publish/all.zip: everything that was asked for, in one file."""
    asked = asked_of(request.query_params)
    if asked.wishes is None:
        return _page(request)
    files = _files(request, asked.wishes)
    if files is None:
        return RedirectResponse(f"{_base(request)}/publish?{_query(request)}", status_code=303)
    return sent(zipped(files), f"{request.path_params['id']}.zip")


def send_file(request: Request) -> Response:
    """GET /desserts/{id}/publish/files/{name}: one file of the publication."""
    name = request.path_params["name"]
    language = language_of(request.query_params)
    form = form_of(request.path_params["id"], name, language)
    asked = asked_of({**request.query_params, **({FORM + form: "yes"} if form else {})})
    if form is None:
        raise HTTPException(404, say(NO_FILE))
    if asked.wishes is None:
        return _page(request)
    wishes = replace(asked.wishes, forms=(form,))
    files = _files(request, wishes)
    if files is None:
        return RedirectResponse(f"{_base(request)}/publish?{_query(request)}", status_code=303)
    return sent(files[name], name)


def stop(request: Request, form: Sent) -> Response:
    """POST /desserts/{id}/publish/stop: leave it; what is done is thrown away."""
    work_of(request).ask(_publication(request, form.fields)).stop()
    return _back(request, form)


def begin(request: Request, form: Sent) -> Response:
    """POST /desserts/{id}/publish/begin: once more after a stop."""
    work_of(request).again(_publication(request, form.fields))
    return _back(request, form)


def work_of(request: Request) -> PublishWork:
    """The thread that works publications out."""
    return cast(PublishWork, request.app.state.publications)


def _page(request: Request) -> Response:
    fields, dessert_id = request.query_params, request.path_params["id"]
    stored, asked = dessert(workbench_of(request).library, dessert_id), asked_of(fields)
    page = PublishPage(
        id=stored.id,
        name=dessert_name(stored.id, stored.text),
        query=_query(request),
        carried=_carried(request),
        forms=form_choices(stored.id, asked),
        papers=tuple((paper.value, say(words)) for paper, words in PAPERS.items()),
        languages=language_choices(),
        asked=asked,
        file_query=query(fields, *CARRIED, "paper", "limit"),
        progress=_progress(request, AT_ONCE),
    )
    return rendered(request, page)


def _part(
    kind: type[PublishPart],
    request: Request,
    seconds: float,
    *,
    to_page: bool = False,
    live: bool = False,
) -> PublishPart:
    stored = dessert(workbench_of(request).library, request.path_params["id"])
    return kind(
        id=stored.id,
        name=dessert_name(stored.id, stored.text),
        query=_query(request),
        carried=_carried(request),
        progress=_progress(request, seconds),
        to_page=to_page,
        live=live,
    )


def _progress(request: Request, seconds: float) -> Progress:
    try:
        preparing = _preparing(request)
        ready = preparing.result(seconds) is not None
    except EntremetryError as error:
        return Progress(trouble=f"{error}.")
    return Progress(
        ready=ready,
        stopped=preparing.stopped and not ready,
        done=preparing.done,
        whole=preparing.whole,
    )


def _ready(request: Request, seconds: float) -> Prepared | None:
    return _preparing(request).result(seconds)


def _preparing(request: Request) -> Preparing:
    return work_of(request).ask(_publication(request, request.query_params))


def _publication(request: Request, fields: Mapping[str, str]) -> Publication:
    """What is asked for; EntremetryError if no batch comes of it."""
    library = workbench_of(request).library
    stored, kitchen = dessert(library, request.path_params["id"]), kitchen_text(library)
    chosen = choices(fields)
    sheet = answer(stored.text, stored.id, chosen, kitchen).sheet
    return Publication(
        text=stored.text,
        file=stored.id,
        pieces=sheet.pieces,
        mould=chosen.mould,
        kitchen_text=kitchen,
        language=language_of(fields),
    )


def _files(request: Request, wishes: Wishes) -> dict[str, bytes] | None:
    """The files wished for; None if their page was stopped."""
    if Form.PAGE in wishes.forms:
        ready = _ready(request, PATIENCE)
        return None if ready is None else _written(request, wishes, ready)
    return _written(request, wishes, None)


def _written(request: Request, wishes: Wishes, ready: Prepared | None) -> dict[str, bytes]:
    with in_language(wishes.language):
        if ready is not None:
            return published_files(ready.sheet, date.today(), wishes, ready.told)
        asked = _publication(request, request.query_params)
        sheet = batch_of_text(
            asked.text,
            file=asked.file,
            pieces=asked.pieces,
            mould=asked.mould,
            kitchen_text=asked.kitchen_text,
        )
        return published_files(sheet, date.today(), wishes)


def _back(request: Request, form: Sent) -> Response:
    place = f"{_base(request)}/publish?{query(form.fields, *CARRIED)}"
    return RedirectResponse(place.removesuffix("?"), status_code=303)


def _base(request: Request) -> str:
    return f"/desserts/{request.path_params['id']}"


def _carried(request: Request) -> tuple[tuple[str, str], ...]:
    fields = request.query_params
    return tuple((name, fields[name]) for name in CARRIED if fields.get(name))


def _query(request: Request) -> str:
    return query(request.query_params, *CARRIED)
