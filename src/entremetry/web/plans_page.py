"""The plans that are kept."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from starlette.requests import Request
from starlette.responses import Response

from entremetry.errors import EntremetryError
from entremetry.store import KeptPlan
from entremetry.usecases.kept_plans import plan_at_bench
from entremetry.web.plan_shown import summary
from entremetry.web.rendering import rendered
from entremetry.web.wording import when
from entremetry.web.workbench import workbench_of
from entremetry.words import say, say_later

NO_PLAN = say_later("No plan works as asked; see why, and what would help.")
NOT_DECIDED = say_later("Neither a plan nor a proof that there is none, in the time given.")


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanCard:
    """One plan at a glance."""

    id: int
    name: str
    words: str
    made: str
    feasible: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PlansPage:
    """Context of plans.html."""

    template: ClassVar[str] = "plans.html"
    cards: tuple[PlanCard, ...]


def show_plans(request: Request) -> Response:
    """GET /plans"""
    plans = workbench_of(request).library.plans.all()
    return rendered(request, PlansPage(cards=tuple(_card(request, kept) for kept in plans)))


def _card(request: Request, kept: KeptPlan) -> PlanCard:
    words, feasible = _words(request, kept)
    return PlanCard(
        id=kept.id, name=kept.name, words=words, made=when(kept.made_at), feasible=feasible
    )


def _words(request: Request, kept: KeptPlan) -> tuple[str, bool]:
    library = workbench_of(request).library
    try:
        agenda = plan_at_bench(library, kept.id, now=library.clock()).agenda
    except EntremetryError as error:
        return str(error), False
    if agenda.tasks:
        return summary(agenda), True
    return say(NOT_DECIDED if agenda.undecided else NO_PLAN), False
