"""A plan: its days, its sessions and steps, and what was told of it since it was made."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar
from urllib.parse import urlencode

from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response

from entremetry.agenda.agenda import Agenda, GoalReached, WayOut
from entremetry.usecases.kept_plans import PlanAtBench, plan_at_bench
from entremetry.web.page_policy import policy_of_document
from entremetry.web.plan_files import calendar_file, drawings, json_file, sheet_file
from entremetry.web.plan_shown import DayShown, days_shown, summary
from entremetry.web.plan_telling import key_of_a_page, told_words
from entremetry.web.plans_page import NOT_DECIDED
from entremetry.web.rendering import rendered
from entremetry.web.workbench import workbench_of
from entremetry.words import say, speaking


@dataclass(frozen=True, slots=True, kw_only=True)
class WayShown:
    """What would have to give, and the days of the plan that there would be."""

    changes: tuple[str, ...]
    days: tuple[DayShown, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanPage:
    """Context of plan.html.

    `key` names what is told from this page, so that it counts once; `language` is the one that the
    plan was made in and is told in.
    """

    template: ClassVar[str] = "plan.html"
    id: int
    name: str
    key: str
    language: str
    summary: str
    feasible: bool
    undecided: str
    cancelled: bool
    wide: Markup
    narrow: Markup
    days: tuple[DayShown, ...]
    goals: tuple[GoalReached, ...]
    changes: tuple[str, ...]
    conflicts: tuple[tuple[str, ...], ...]
    ways_out: tuple[WayShown, ...]
    assumptions: tuple[str, ...]
    cautions: tuple[str, ...]
    told: tuple[str, ...]
    ask_again: str


def show_plan(request: Request) -> Response:
    """GET /plans/{id}"""
    found = asked_plan(request)
    return rendered(
        request, plan_page(found, key_of_a_page(), workbench_of(request).library.clock())
    )


def show_sheet(request: Request) -> Response:
    """GET /plans/{id}/sheet: the self-contained page for paper."""
    found = asked_plan(request)
    with speaking(found.language):
        sheet = sheet_file(found.agenda)
    return HTMLResponse(sheet, headers={"Content-Security-Policy": policy_of_document(sheet)})


def send_calendar(request: Request) -> Response:
    """GET /plans/{id}/calendar.ics"""
    found = asked_plan(request)
    with speaking(found.language):
        content = calendar_file(found.agenda, found.kept.made_at)
    return _file(content, "text/calendar; charset=utf-8", f"plan-{found.kept.id}.ics")


def send_json(request: Request) -> Response:
    """GET /plans/{id}/plan.json"""
    found = asked_plan(request)
    content = json_file(found.agenda).encode()
    return _file(content, "application/json", f"plan-{found.kept.id}.json")


def asked_plan(request: Request) -> PlanAtBench:
    """The plan of an address as it stands now."""
    library = workbench_of(request).library
    return plan_at_bench(library, request.path_params["id"], now=library.clock())


def plan_page(found: PlanAtBench, key: str, now: datetime) -> PlanPage:
    """A plan as its page shows it."""
    agenda, name = found.agenda, found.kept.name
    wide, narrow = drawings(agenda, name) if agenda.tasks else (Markup(), Markup())
    return PlanPage(
        id=found.kept.id,
        name=name,
        key=key,
        language=found.language,
        summary=summary(agenda),
        feasible=agenda.feasible,
        undecided=say(NOT_DECIDED) if agenda.undecided else "",
        cancelled=agenda.cancelled,
        wide=wide,
        narrow=narrow,
        days=days_shown(agenda.tasks, agenda.sessions, agenda.served if agenda.tasks else ()),
        goals=agenda.goals,
        changes=agenda.changes,
        conflicts=agenda.conflicts,
        ways_out=tuple(_way(way) for way in agenda.ways_out),
        assumptions=agenda.assumptions,
        cautions=agenda.cautions,
        told=tuple(told_words(entry, found.made) for entry in found.told),
        ask_again=f"/plans/new?{urlencode(_asked(agenda, now))}",
    )


def _way(way: WayOut) -> WayShown:
    return WayShown(changes=way.changes, days=days_shown(way.tasks, way.sessions, way.served))


def _asked(agenda: Agenda, now: datetime) -> dict[str, str]:
    """Fields of the form that a plan came from; a beginning that is over is left open."""
    asked = {"begin": f"{agenda.begins:%Y-%m-%dT%H:%M}"} if agenda.begins > now else {}
    for each in agenda.served:
        hour = f"{each.at:%Y-%m-%dT%H:%M}"
        asked.setdefault("serve", hour)
        asked[f"chosen:{each.dessert}"] = "yes"
        asked[f"pieces:{each.dessert}"] = str(each.pieces)
        if hour != asked["serve"]:
            asked[f"serve:{each.dessert}"] = hour
    return asked


def _file(content: bytes, media_type: str, name: str) -> Response:
    headers = {"Content-Disposition": f'attachment; filename="{name}"'}
    return Response(content, media_type=media_type, headers=headers)
