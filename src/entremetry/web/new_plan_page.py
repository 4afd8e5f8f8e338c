"""Ask for a plan: desserts of the library, pieces, hours of service."""

from __future__ import annotations

import secrets
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar
from urllib.parse import urlencode

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from entremetry.store import StoredDocument
from entremetry.usecases.kept_plans import keep_plan
from entremetry.usecases.library import desserts, kitchen_text
from entremetry.web.forms import Form
from entremetry.web.library_page import DRAWN, Card, card, looked_for, named_like
from entremetry.web.making_page import address_of, work_of
from entremetry.web.menu_form import menu, usual_hour
from entremetry.web.plan_work import Made, Making
from entremetry.web.rendering import rendered
from entremetry.web.workbench import workbench_of
from entremetry.words import current, say

if TYPE_CHECKING:
    from entremetry.planning import Limits

KEPT_OUT = frozenset({"token", "key"})


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseField:
    """A dessert to choose; texts of fields are as they were typed."""

    card: Card
    chosen: bool
    pieces: str
    serve: str
    pieces_fault: str = ""
    serve_fault: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class NewPlanPage:
    """Context of plan_new.html."""

    template: ClassVar[str] = "plan_new.html"
    key: str
    courses: tuple[CourseField, ...]
    find: str
    more: int
    all: int
    serve: str
    begin: str
    has_kitchen: bool
    faults: Mapping[str, str]


def show_new(request: Request) -> Response:
    """GET /plans/new?find=WORDS, with the fields of an earlier form if they are in the address."""
    asked = dict(request.query_params)
    library = workbench_of(request).library
    asked.setdefault("serve", usual_hour(library.clock().astimezone()))
    return rendered(request, _page(request, asked, {}))


def make_new(request: Request, form: Form) -> Response:
    """POST /plans/new: begin to make the plan, or say what is wrong beside the field."""
    library = workbench_of(request).library
    asked = menu(form, desserts(library))
    if asked.faults:
        return rendered(request, _page(request, form.fields, asked.faults), status=422)
    kitchen, now, language = kitchen_text(library), library.clock(), current().code
    fields = {name: text for name, text in form.fields.items() if name not in KEPT_OUT}
    making = Making(
        form.line("key")[:64] or secrets.token_hex(8),
        say("Your plan"),
        f"/plans/new?{urlencode(fields)}",
    )

    def job(limits: Limits) -> Made:
        from entremetry.usecases.plans import plan_menu

        planned = plan_menu(
            asked.courses,
            serve=asked.serve,
            kitchen_text=kitchen,
            begin=asked.begin,
            now=now,
            limits=limits,
            language=language,
        )
        return Made(address=f"/plans/{keep_plan(library, planned).id}")

    return RedirectResponse(address_of(work_of(request).begin(making, job)), status_code=303)


def _page(request: Request, asked: Mapping[str, str], faults: Mapping[str, str]) -> NewPlanPage:
    library = workbench_of(request).library
    kitchen, every, find = kitchen_text(library), desserts(library), looked_for(asked)
    chosen = [each for each in named_like(every, "") if f"chosen:{each.id}" in asked]
    found = [each for each in named_like(every, find) if each not in chosen]
    fields = (
        _field(card(each, kitchen), each, asked, faults) for each in (*chosen, *found[:DRAWN])
    )
    return NewPlanPage(
        key=secrets.token_hex(16),
        courses=tuple(fields),
        find=find,
        more=len(found[DRAWN:]),
        all=len(every),
        serve=asked.get("serve", ""),
        begin=asked.get("begin", ""),
        has_kitchen=kitchen is not None,
        faults=faults,
    )


def _field(
    shown: Card, stored: StoredDocument, asked: Mapping[str, str], faults: Mapping[str, str]
) -> CourseField:
    pieces, serve = f"pieces:{stored.id}", f"serve:{stored.id}"
    return CourseField(
        card=shown,
        chosen=f"chosen:{stored.id}" in asked,
        pieces=asked.get(pieces, str(shown.pieces or "")),
        serve=asked.get(serve, ""),
        pieces_fault=faults.get(pieces, ""),
        serve_fault=faults.get(serve, ""),
    )
