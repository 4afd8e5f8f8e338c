"""Questions to a dessert: a kind, things to choose from, the computed answer, and keeping it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, ClassVar

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from entremetry.errors import EntremetryError, QuantityError
from entremetry.store import StoredDocument
from entremetry.usecases.library import (
    add_dessert,
    dessert,
    dessert_at,
    dessert_name,
    desserts,
    kitchen_text,
)
from entremetry.web.comparing import ComparedLine, compared
from entremetry.web.forms import Form
from entremetry.web.question_fields import KINDS, Asking, Kind, asking
from entremetry.web.rendering import HTMX, rendered
from entremetry.web.speech import kept_by_language
from entremetry.web.workbench import workbench_of
from entremetry.words import say, say_as

if TYPE_CHECKING:
    from entremetry.questions.answer import Answer
    from entremetry.questions.choices import Choices
    from entremetry.store.library import Library

FIELDS = (
    "instead",
    "have",
    "bloom-rule",
    "mould",
    "shape",
    "size",
    "holds",
    "like",
    "cavities",
    "pieces",
    "wait",
    "for",
    "until",
    "where",
    "without",
    "symptom",
    "in",
    "contains",
)
LONGEST = 200  # characters that a field is read up to
LONGEST_NAME = 120


@dataclass(frozen=True, slots=True, kw_only=True)
class QuestionsPage:
    """Context of questions.html and questions_answer.html.

    `asking` are the fields of the chosen kind, `sent` those that were filled in, to be asked again
    when the adapted dessert is kept under `new_name`.
    """

    template: ClassVar[str] = "questions.html"
    id: str
    name: str
    started_from: int
    kinds: tuple[Kind, ...] = KINDS
    kind: str = ""
    asking: Asking | None = None
    answer: Answer | None = None
    comparison: tuple[ComparedLine, ...] = ()
    sent: tuple[tuple[str, str], ...] = ()
    new_name: str = ""
    trouble: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerPart(QuestionsPage):
    """The answer alone, put in place on the page."""

    template: ClassVar[str] = "questions_answer.html"


def show_questions(request: Request) -> Response:
    """GET /desserts/{id}/questions: the page, or the answer alone for a page that has it."""
    part = HTMX in request.headers
    page = _page(request, dict(request.query_params), AnswerPart if part else QuestionsPage)
    answer = rendered(request, page)
    answer.headers["Vary"] = HTMX
    return answer


def keep(request: Request, form: Form) -> Response:
    """POST /desserts/{id}/questions: asked once more, and kept as a dessert of its own."""
    from entremetry.usecases.questions import kept_as_new

    library = workbench_of(request).library
    dessert_id = str(request.path_params["id"])
    text = dessert_at(library, dessert_id, form.whole_number("started_from") or 0)
    answer = _answer(library, text, dessert_id, _told(form.fields))
    if not answer.document:
        raise QuantityError(
            say("a question without another document"), say("one that changes the dessert")
        )
    name = form.line("name")
    if not 0 < len(name) <= LONGEST_NAME or not name.isprintable():
        raise QuantityError(
            say("a name of {number} characters", number=len(name)),
            say("a name of 1 to {most} characters", most=LONGEST_NAME),
        )
    taken = tuple(each.id for each in desserts(library))
    saved = add_dessert(library, kept_as_new(answer.document, name, taken))
    return RedirectResponse(f"/desserts/{saved.id}", status_code=303)


def _page(request: Request, fields: Mapping[str, str], kind: type[QuestionsPage]) -> QuestionsPage:
    library = workbench_of(request).library
    stored = dessert(library, request.path_params["id"])
    page = kind(
        id=stored.id,
        name=dessert_name(stored.id, stored.text),
        started_from=stored.revision.number,
        kind=next((each.id for each in KINDS if each.id == fields.get("kind")), ""),
    )
    try:
        if page.kind:
            found = _choices(stored.text, stored.id, kitchen_text(library))
            moulds = _moulds(kitchen_text(library))
            page = replace(page, asking=asking(page.kind, found, moulds, fields))
        return _answered(library, stored, page, _told(fields)) if "ask" in fields else page
    except EntremetryError as error:
        return replace(page, trouble=str(error))


def _answered(
    library: Library, stored: StoredDocument, page: QuestionsPage, told: Mapping[str, str]
) -> QuestionsPage:
    answer = _answer(library, stored.text, stored.id, told)
    new = answer.document
    return replace(
        page,
        answer=answer,
        comparison=_compared(stored.text, new),
        sent=tuple(told.items()),
        new_name=_new_name(page.name, answer) if new else "",
    )


def _compared(before: str, now: str) -> tuple[ComparedLine, ...]:
    if not now:
        return ()
    words = say_as("comparison", "before"), say_as("comparison", "now")
    return compared(before, now, their_word=words[0], my_word=words[1])


def _answer(library: Library, text: str, dessert_id: str, told: Mapping[str, str]) -> Answer:
    from entremetry.questions.reading import read_question
    from entremetry.usecases.questions import ask_of_text, zone_of_text

    kitchen = kitchen_text(library)
    zone = zone_of_text(kitchen)
    question = read_question(told, now=library.clock().astimezone(zone), zone=zone)
    return ask_of_text(text, question, file=dessert_id, kitchen_text=kitchen)


def _told(fields: Mapping[str, str]) -> dict[str, str]:
    """Fields of a question that were filled in."""
    return {name: fields[name].strip()[:LONGEST] for name in FIELDS if fields.get(name, "").strip()}


def _new_name(before: str, answer: Answer) -> str:
    """A name to keep it under: the new document's own, or the old one told apart."""
    name = dessert_name("", answer.document)
    return (
        name
        if name != before or not answer.apart
        else say("{name}, {apart}", name=before, apart=answer.apart)[:LONGEST_NAME]
    )


@kept_by_language(32)
def _choices(text: str, file: str, kitchen: str | None) -> Choices:
    from entremetry.usecases.questions import choices_of_text

    return choices_of_text(text, file=file, kitchen_text=kitchen)


@kept_by_language(4)
def _moulds(kitchen: str | None) -> tuple[tuple[str, str], ...]:
    from entremetry.usecases.batch import moulds

    return tuple((each.id, each.name) for each in moulds(kitchen))
