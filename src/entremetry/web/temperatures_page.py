"""How long a step takes and how warm the piece is meanwhile."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar, cast
from urllib.parse import quote

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from entremetry.errors import EntremetryError, UnknownName
from entremetry.publish.agenda_wording import verb_of
from entremetry.publish.temperature_table import TableRow, table
from entremetry.publish.temperature_wording import (
    celsius,
    fact_value,
    headline,
    interval,
    roughly,
    spoken,
)
from entremetry.store import StoredDocument
from entremetry.usecases.library import dessert, dessert_name, kitchen_text
from entremetry.web.rendering import rendered
from entremetry.web.speech import kept_by_language
from entremetry.web.temperature_work import Frame, Question, Shown, TemperatureWork
from entremetry.web.workbench import workbench_of
from entremetry.words import current, say, say_later

if TYPE_CHECKING:
    from entremetry.timings.timed_step import TimedStep

AT_ONCE = 0.5  # s that a page waits for its answer before it is sent without
LISTENING = 2.0  # s that a page which asks again is kept waiting
ASSEMBLY = "assembly-"
AT = "glaze-at"
"""A step whose temperature is the one it is done at, not the one it ends at."""
WARMING = say_later(
    "The heat solver is being made ready. That happens once after the start; then it is quick."
)
WORKING = say_later("Working it out, for this dessert, this mould and this kitchen.")
NOTHING = say_later("No step of this dessert can be timed: none freezes, thaws, cools or glazes.")


@dataclass(frozen=True, slots=True, kw_only=True)
class StepLink:
    """A step to choose: what is done to what, and where its answer stands."""

    id: str
    verb: str
    name: str
    target: str
    address: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Moment:
    """Something that happens on the way."""

    time: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Number:
    """One more number that the step is about."""

    name: str
    value: str
    because: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """An answer in words, numbers and drawings."""

    headline: str
    interval: str
    reason: str
    target: str
    written: str
    because: str
    sources: tuple[str, ...]
    assumptions: tuple[str, ...]
    moments: tuple[Moment, ...]
    numbers: tuple[Number, ...]
    points: tuple[str, ...]
    rows: tuple[TableRow, ...]
    shown: Shown
    start: int


@dataclass(frozen=True, slots=True, kw_only=True)
class TemperaturesPage:
    """Context of temperatures.html and of temperatures_answer.html.

    `told` is the answer, `trouble` why there is none, `waiting` that it is being computed.
    """

    template: ClassVar[str] = "temperatures.html"
    id: str
    name: str
    steps: tuple[StepLink, ...]
    step: str
    sentence: str
    ask_again: str
    told: Told | None = None
    trouble: str = ""
    waiting: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class TemperaturesAnswer(TemperaturesPage):
    """The part of the page that is asked for again until the answer is there."""

    template: ClassVar[str] = "temperatures_answer.html"


def show_first(request: Request) -> Response:
    """GET /desserts/{id}/temperatures: to the first step of the assembly, or the first of all."""
    stored, kitchen = _asked(request)
    steps = timed(stored.text, stored.id, kitchen)
    if not steps:
        page = TemperaturesPage(
            id=stored.id,
            name=dessert_name(stored.id, stored.text),
            steps=(),
            step="",
            sentence="",
            ask_again="",
            trouble=say(NOTHING),
        )
        return rendered(request, page)
    first = next((each for each in steps if each.id.startswith(ASSEMBLY)), steps[0])
    return RedirectResponse(_address(stored.id, first.id), status_code=303)


def show_step(request: Request) -> Response:
    """GET /desserts/{id}/temperatures/{step}"""
    return rendered(request, _page(request, TemperaturesPage, AT_ONCE))


def show_answer(request: Request) -> Response:
    """GET /desserts/{id}/temperature-answers/{step}: the answer alone, once it is there."""
    return rendered(request, _page(request, TemperaturesAnswer, LISTENING))


def show_curves(request: Request) -> Response:
    """GET /desserts/{id}/temperature-curves/{step}: the curves as a file of their own."""
    from entremetry.publish.temperature_curves import curves_svg

    stored, kitchen = _asked(request)
    question = _question(stored, kitchen, request.path_params["step"])
    result = work_of(request).ask(question).result().result
    drawing = curves_svg(result, title=f"{result.name}: {result.sentence}", standalone=True)
    return Response(drawing, media_type="image/svg+xml; charset=utf-8")


def work_of(request: Request) -> TemperatureWork:
    """The thread that computes temperatures."""
    return cast(TemperatureWork, request.app.state.temperatures)


@kept_by_language(64)
def timed(text: str, file: str, kitchen: str | None) -> tuple[TimedStep, ...]:
    """Steps of a text that can be timed."""
    from entremetry.usecases.temperatures import timed_steps_of_text

    return timed_steps_of_text(text, file=file, kitchen_text=kitchen)


def _page(request: Request, kind: type[TemperaturesPage], seconds: float) -> TemperaturesPage:
    stored, kitchen = _asked(request)
    steps = timed(stored.text, stored.id, kitchen)
    chosen = _chosen(steps, request.path_params["step"])
    told, trouble, waiting = _answered(
        work_of(request), _question(stored, kitchen, chosen.id), seconds
    )
    return kind(
        id=stored.id,
        name=dessert_name(stored.id, stored.text),
        steps=tuple(_link(stored.id, each) for each in steps),
        step=chosen.id,
        sentence=chosen.sentence,
        ask_again=f"/desserts/{stored.id}/temperature-answers/{quote(chosen.id)}",
        told=told,
        trouble=trouble,
        waiting=waiting,
    )


def _answered(
    work: TemperatureWork, question: Question, seconds: float
) -> tuple[Told | None, str, str]:
    """The answer, or why there is none, or why it takes a while."""
    try:
        found = work.answer(question, seconds)
    except EntremetryError as error:
        return None, say("{error}.", error=error), ""
    if found is None:
        return None, "", say(WARMING if work.warming else WORKING)
    return _told(found), "", ""


def _told(shown: Shown) -> Told:
    result = shown.result
    return Told(
        headline=headline(result),
        interval=interval(result),
        reason=result.reason,
        target="" if result.target is None else celsius(result.target),
        written=written_words(result.written_time, result.low, result.high),
        because=result.because,
        sources=result.sources,
        assumptions=result.assumptions,
        moments=tuple(
            Moment(time=roughly(mark.time), text=mark.text)
            for mark in sorted(result.marks, key=lambda mark: mark.time)
        ),
        numbers=tuple(
            Number(name=fact.name, value=fact_value(fact), because=fact.because)
            for fact in result.facts
        ),
        points=tuple(curve.name for curve in result.curves),
        rows=table(result),
        shown=shown,
        start=_middle(shown.frames),
    )


def written_words(written: float | None, low: float | None, high: float | None) -> str:
    """How the time that the document writes compares with the interval."""
    if written is None:
        return ""
    return say(_comparison(written, low, high), time=spoken(written))


def _comparison(written: float, low: float | None, high: float | None) -> str:
    if low is not None and written < low:
        return say_later("The document says {time}: less than the shortest time we find.")
    if low is None or high is None:
        return say_later("The document says {time}.")
    if written > high:
        return say_later("The document says {time}: more than the longest time we find.")
    return say_later("The document says {time}, which is within that range.")


def _middle(frames: tuple[Frame, ...]) -> int:
    """Number of the frame that is shown first."""
    return len(frames) // 2


def _asked(request: Request) -> tuple[StoredDocument, str | None]:
    library = workbench_of(request).library
    return dessert(library, request.path_params["id"]), kitchen_text(library)


def _question(stored: StoredDocument, kitchen: str | None, step: str) -> Question:
    return Question(
        text=stored.text,
        file=stored.id,
        step=step,
        kitchen_text=kitchen,
        language=current().code,
    )


def _chosen(steps: tuple[TimedStep, ...], step_id: str) -> TimedStep:
    for step in steps:
        if step.id == step_id:
            return step
    raise UnknownName("dessert step that can be timed", step_id, [step.id for step in steps])


def _link(dessert_id: str, step: TimedStep) -> StepLink:
    target = getattr(step.step, "temperature", None)
    return StepLink(
        id=step.id,
        verb=verb_of(step.kind),
        name=step.name,
        target="" if target is None else _target(step.kind, target),
        address=_address(dessert_id, step.id),
    )


def _target(kind: str, temperature: float) -> str:
    """The temperature that a step is done at, or that it ends at."""
    said = celsius(temperature)
    return (
        say("at {temperature}", temperature=said)
        if kind == AT
        else say("to {temperature}", temperature=said)
    )


def _address(dessert_id: str, step_id: str) -> str:
    return f"/desserts/{dessert_id}/temperatures/{quote(step_id)}"
