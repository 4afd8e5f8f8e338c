"""A plan while it is being made: the best so far, and a way to stop there."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, cast

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from entremetry.errors import EntremetryError
from entremetry.web.forms import Form
from entremetry.web.plan_words import FIRST, progress_rows
from entremetry.web.plan_work import Making, PlanWork
from entremetry.web.rendering import rendered
from entremetry.words import say, say_later

AT_ONCE = 0.5  # s that a page waits for a plan before it is sent without
LISTENING = 1.0  # s that a page which asks again is kept waiting
GONE = say_later(
    "This plan was being made when the workbench stopped, or long ago. "
    "Go back, and ask for it again."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class MakingPage:
    """Context of plan_making.html; `rows` are goals with what was reached so far."""

    template: ClassVar[str] = "plan_making.html"
    title: str
    address: str
    back: str
    rows: tuple[tuple[str, str], ...]
    words: str
    stopping: bool
    trouble: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MakingPart(MakingPage):
    """The part that asks for itself again."""

    template: ClassVar[str] = "plan_making_part.html"


def show_making(request: Request) -> Response:
    """GET /plans/making/{key}: to the plan, once it is there."""
    making = _making(request)
    try:
        made = making.result(AT_ONCE)
    except EntremetryError as error:
        return rendered(request, _page(MakingPage, making, f"{error}"), status=422)
    if made is not None:
        return RedirectResponse(made.address, status_code=303)
    return rendered(request, _page(MakingPage, making))


def show_progress(request: Request) -> Response:
    """GET /plans/making/{key}/progress: the part alone; it leads on when the plan is there."""
    making = _making(request)
    try:
        made = making.result(LISTENING)
    except EntremetryError as error:
        return rendered(request, _page(MakingPart, making, f"{error}"))
    answer = rendered(request, _page(MakingPart, making))
    if made is not None:
        answer.headers["HX-Redirect"] = made.address
    return answer


def stop(request: Request, form: Form) -> Response:
    """POST /plans/making/{key}/stop: end with the best plan so far."""
    making = _making(request)
    making.stop()
    return RedirectResponse(address_of(making), status_code=303)


def work_of(request: Request) -> PlanWork:
    """The thread that makes plans."""
    return cast(PlanWork, request.app.state.plans)


def address_of(making: Making) -> str:
    """Where a making is followed."""
    return f"/plans/making/{making.key}"


def _making(request: Request) -> Making:
    found = work_of(request).find(request.path_params["key"])
    if found is None:
        raise HTTPException(410, say(GONE))
    return found


def _page(kind: type[MakingPage], making: Making, trouble: str = "") -> MakingPage:
    return kind(
        title=making.title,
        address=address_of(making),
        back=making.back,
        rows=progress_rows(making.best),
        words="" if making.best else say(FIRST),
        stopping=making.stopped,
        trouble=trouble,
    )
