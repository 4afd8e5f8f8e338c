"""Bench checks of a dessert: a calm panel, and what may lie behind something that went wrong."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar
from urllib.parse import urlencode

from starlette.requests import Request
from starlette.responses import HTMLResponse, Response

from entremetry.errors import EntremetryError
from entremetry.usecases.library import dessert, dessert_name, kitchen_text
from entremetry.web.rendering import HTMX, rendered
from entremetry.web.speech import kept_by_language
from entremetry.web.verdict_words import Said, Suspected, said_of, suspected
from entremetry.web.workbench import workbench_of
from entremetry.words import say

if TYPE_CHECKING:
    from entremetry.checks.symptom import Symptom
    from entremetry.usecases.checking import Checked

WITH_TIMES = "times"
FINE = "fine"


@dataclass(frozen=True, slots=True, kw_only=True)
class ChecksPage:
    """Context of checks.html and of checks_panel.html.

    `fine` are groups of a component's name and its verdicts, or `fine_at` is where they are to be
    had; `ask_again` is the address of the same with the times computed, empty if they are;
    `trouble` why there is nothing to check.
    """

    template: ClassVar[str] = "checks.html"
    id: str
    name: str
    fails: tuple[Said, ...] = ()
    cautions: tuple[Said, ...] = ()
    fine: tuple[tuple[str, tuple[Said, ...]], ...] = ()
    fine_count: int = 0
    fine_at: str = ""
    ask_again: str = ""
    trouble: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChecksPanel(ChecksPage):
    """The part that the page of a dessert loads by itself."""

    template: ClassVar[str] = "checks_panel.html"


@dataclass(frozen=True, slots=True, kw_only=True)
class ChecksFine(ChecksPage):
    """What is fine, for a panel in which it is opened."""

    template: ClassVar[str] = "checks_fine.html"


@dataclass(frozen=True, slots=True, kw_only=True)
class DiagnosisPage:
    """Context of diagnosis.html: symptoms to choose, and the suspects of the chosen one."""

    template: ClassVar[str] = "checks_diagnosis.html"
    id: str
    name: str
    symptoms: tuple[Symptom, ...]
    chosen: str = ""
    chosen_name: str = ""
    suspects: tuple[Suspected, ...] = ()
    trouble: str = ""


def show_checks(request: Request) -> Response:
    """GET /desserts/{id}/checks: the panel for the page of the dessert, else a page of its own."""
    is_part = HTMX in request.headers
    part = ChecksFine if FINE in request.query_params else ChecksPanel
    kind = part if is_part else ChecksPage
    answer = rendered(request, _page(request, kind, with_times=not is_part))
    answer.headers["Vary"] = HTMX
    return answer


def show_diagnosis(request: Request) -> HTMLResponse:
    """GET /desserts/{id}/diagnosis?symptom=ID"""
    from entremetry.checks.diagnosis import find_symptom
    from entremetry.usecases.diagnosing import diagnosed, symptoms

    library = workbench_of(request).library
    stored, kitchen = dessert(library, request.path_params["id"]), kitchen_text(library)
    name, asked = dessert_name(stored.id, stored.text), request.query_params.get("symptom", "")
    if not asked:
        return rendered(request, DiagnosisPage(id=stored.id, name=name, symptoms=symptoms()))
    chosen = find_symptom(asked)
    try:
        found = diagnosed(checked(stored.text, stored.id, kitchen, None, times=True), chosen)
        suspects, trouble = suspected(found.diagnosis), ""
    except EntremetryError as error:
        suspects, trouble = (), str(error)
    page = DiagnosisPage(
        id=stored.id,
        name=name,
        symptoms=symptoms(),
        chosen=chosen.id,
        chosen_name=say(chosen.name),
        suspects=suspects,
        trouble=trouble,
    )
    return rendered(request, page)


@kept_by_language(64)
def checked(
    text: str, file: str, kitchen: str | None, mould: str | None, *, times: bool
) -> Checked:
    """Verdicts on a text."""
    from entremetry.usecases.checking import checks_of_text

    return checks_of_text(text, file=file, kitchen_text=kitchen, mould=mould, times=times)


def _page(request: Request, kind: type[ChecksPage], *, with_times: bool) -> ChecksPage:
    library = workbench_of(request).library
    stored, kitchen = dessert(library, request.path_params["id"]), kitchen_text(library)
    mould = request.query_params.get("mould", "") or None
    times = with_times or WITH_TIMES in request.query_params
    name = dessert_name(stored.id, stored.text)
    try:
        found = checked(stored.text, stored.id, kitchen, mould, times=times)
    except EntremetryError as error:
        return kind(id=stored.id, name=name, trouble=str(error))
    chosen = {"mould": mould} if mould else {}
    timed = {WITH_TIMES: "yes"} if times else {}
    is_panel = kind is ChecksPanel
    return _told(
        found,
        kind,
        stored.id,
        ask_again="" if times else _address(stored.id, chosen | {WITH_TIMES: "yes"}),
        fine_at=_address(stored.id, chosen | timed | {FINE: "yes"}) if is_panel else "",
    )


def _address(dessert_id: str, asked: Mapping[str, str]) -> str:
    return f"/desserts/{dessert_id}/checks?{urlencode(asked)}"


def _told(
    found: Checked, kind: type[ChecksPage], dessert_id: str, *, ask_again: str, fine_at: str
) -> ChecksPage:
    from entremetry.checks.band import Outcome

    fine = found.of(Outcome.PASS)
    by_name: dict[str, list[Said]] = {}
    for verdict in () if fine_at else fine:
        by_name.setdefault(verdict.name, []).append(said_of(verdict))
    return kind(
        id=dessert_id,
        name=found.name,
        fails=tuple(said_of(verdict) for verdict in found.of(Outcome.FAIL)),
        cautions=tuple(said_of(verdict) for verdict in found.of(Outcome.CAUTION)),
        fine=tuple((name, tuple(said)) for name, said in by_name.items()),
        fine_count=len(fine),
        fine_at=fine_at,
        ask_again=ask_again,
    )
