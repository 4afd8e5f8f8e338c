"""Planning anew: what was told, what moves, and whether to take it."""

from __future__ import annotations

import secrets
from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from entremetry.agenda.agenda import Agenda, AgendaTask
from entremetry.agenda.local_time import clock
from entremetry.usecases.kept_plans import PlanAnew, keep_plan_anew, plan_anew
from entremetry.web.forms import Form
from entremetry.web.making_page import GONE, address_of, work_of
from entremetry.web.plan_page import asked_plan
from entremetry.web.plan_shown import DayShown, days_shown, summary
from entremetry.web.plan_telling import told_from_page
from entremetry.web.plan_words import clock_from, day, moved_words
from entremetry.web.plan_work import Made, Making
from entremetry.web.plans_page import NOT_DECIDED
from entremetry.web.rendering import rendered
from entremetry.web.workbench import workbench_of
from entremetry.words import say

if TYPE_CHECKING:
    from entremetry.planning import Limits


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """A step that moved: its new day and hour, and by how much."""

    what: str
    when: str
    by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AnewPage:
    """Context of plan_anew.html; `language` is the one that the plan is told in."""

    template: ClassVar[str] = "plan_anew.html"
    id: int
    key: str
    name: str
    summary: str
    trouble: str
    conflicts: tuple[tuple[str, ...], ...]
    changes: tuple[str, ...]
    moved: tuple[Moved, ...]
    days: tuple[DayShown, ...]
    language: str


def tell(request: Request, form: Form) -> Response:
    """POST /plans/{id}/tell: note what happened."""
    library, found = workbench_of(request).library, asked_plan(request)
    entry = told_from_page(form, found.told, found.made, library.clock())
    library.plans.note(found.kept.id, entry)
    return RedirectResponse(f"/plans/{found.kept.id}#told", status_code=303)


def begin_anew(request: Request, form: Form) -> Response:
    """POST /plans/{id}/anew: begin to plan the rest anew."""
    library, found = workbench_of(request).library, asked_plan(request)
    plan, key = found.kept.id, form.line("key")[:64] or secrets.token_hex(8)
    now = library.clock()

    def job(limits: Limits) -> Made:
        anew = plan_anew(library, plan, now=now, limits=limits)
        return Made(address=f"/plans/{plan}/anew/{key}", anew=anew)

    making = work_of(request).begin(Making(key, found.kept.name, f"/plans/{plan}"), job)
    return RedirectResponse(address_of(making), status_code=303)


def show_anew(request: Request) -> Response:
    """GET /plans/{id}/anew/{key}"""
    anew = _anew(request)
    agenda = anew.planned.agenda
    page = AnewPage(
        id=anew.kept.id,
        key=request.path_params["key"],
        name=anew.kept.name,
        summary=summary(agenda),
        trouble="" if agenda.tasks else _trouble(agenda),
        conflicts=agenda.conflicts,
        changes=agenda.changes,
        moved=tuple(_moved(task) for task in agenda.tasks if task.moved),
        days=days_shown(agenda.tasks, agenda.sessions, agenda.served),
        language=anew.planned.language,
    )
    return rendered(request, page)


def take(request: Request, form: Form) -> Response:
    """POST /plans/{id}/anew/{key}/take: put it in place of the plan before."""
    anew = _anew(request)
    keep_plan_anew(workbench_of(request).library, anew)
    return RedirectResponse(f"/plans/{anew.kept.id}", status_code=303)


def _anew(request: Request) -> PlanAnew:
    making = work_of(request).find(request.path_params["key"])
    made = making.result(0.0) if making else None
    if made is None or made.anew is None or made.anew.kept.id != request.path_params["id"]:
        raise HTTPException(410, say(GONE))
    return made.anew


def _trouble(agenda: Agenda) -> str:
    return say(NOT_DECIDED) if agenda.undecided else say("No plan is left.")


def _moved(task: AgendaTask) -> Moved:
    name = task.component_name or task.dessert_name
    ends = clock_from(task.end, task.start)
    return Moved(
        what=f"{name}: {task.text}",
        when=say(
            "{day}, {first} to {last}", day=day(task.start), first=clock(task.start), last=ends
        ),
        by=moved_words(task.moved),
    )
