"""A dessert document drafted from pasted lines; what is unclear becomes a question."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from entremetry.dessert.draft_line import DraftedLine, drafted_line, identifier
from entremetry.dessert.draft_question import Question
from entremetry.dessert.pasted_line import pasted_line
from entremetry.dessert.pasted_words import is_blank
from entremetry.dessert.placing_answer import SIZES, PlacingAnswer, placing_answer
from entremetry.documents import written
from entremetry.errors import DocumentError, Fault
from entremetry.larder.larder import Larder

KINDS = ("mousse", "insert", "base", "glaze", "soak", "crumble", "garnish")
MEASURES = (
    ("us", "US: cup 237 ml, tablespoon 14.8 ml"),
    ("metric", "Metric: cup 250 ml, tablespoon 15 ml"),
    ("au", "Australian: cup 250 ml, tablespoon 20 ml"),
    ("uk", "British: tablespoon 15 ml, pint 568 ml"),
)
PLACES = (
    ("filling", "It fills what is left in the mould"),
    ("layer", "A level layer"),
    ("insert", "A frozen insert inside"),
    ("base", "A base cut from a sheet"),
    ("coating", "A coating over the piece"),
    ("garnish", "On top, outside the mould"),
    ("used", "It goes into another component"),
)
USUAL_MOUSSE = "0.60 g/ml"


@dataclass(frozen=True, slots=True, kw_only=True)
class PastedComponent:
    """A heading and the lines under it."""

    name: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftRequest:
    """What is known so far: the pasted text, the mould as a document writes it, the answers."""

    name: str
    pieces: int
    mould: str | Mapping[str, Any]
    text: str
    measures: str | None = None
    answers: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """The document as far as it goes, and the questions still open."""

    document: str
    questions: tuple[Question, ...]

    @property
    def complete(self) -> bool:
        """Whether nothing is left to ask."""
        return not self.questions


def draft(request: DraftRequest, larder: Larder, moulds: Mapping[str, Mapping[str, Any]]) -> Draft:
    """Draft a document; `moulds` are the shapes of the shelf by id, for inserts.

    A heading is a line that ends in a colon; without any, all lines are one component.

    Raises
    ------
    DocumentError
        If there is no line at all.
    """
    return _Drafting(request, larder, moulds).run()


def pasted_components(text: str, name: str) -> tuple[PastedComponent, ...]:
    """Split a pasted text at its headings."""
    found: list[tuple[str, list[str]]] = [(name, [])]
    for line in text.splitlines():
        bare = line.strip().strip("*#").strip()
        if bare.endswith(":") and len(bare) > 1:
            found.append((bare[:-1].strip(), []))
        elif not is_blank(line):
            found[-1][1].append(line)
    return tuple(PastedComponent(name=n, lines=tuple(lines)) for n, lines in found if lines)


class _Drafting:
    """Gathers questions while the document grows; used once."""

    def __init__(
        self, request: DraftRequest, larder: Larder, moulds: Mapping[str, Mapping[str, Any]]
    ) -> None:
        self.request = request
        self.larder = larder
        self.moulds = moulds
        self.questions: list[Question] = []
        self.measures = request.measures or self._answer("measures")

    def run(self) -> Draft:
        pasted = pasted_components(self.request.text, self.request.name)
        if not pasted:
            accepted = "lines such as '240 g blackcurrant purée', one ingredient a line"
            raise DocumentError([Fault(field="pasted text", found="nothing", accepted=accepted)])
        components: dict[str, Any] = {}
        placement: list[dict[str, Any]] = []
        for component in pasted:
            component_id = _unused(identifier(component.name), components)
            components[component_id] = self._component(component_id, component)
            placed = self._placed(component_id, component.name, alone=len(pasted) == 1)
            placement += [placed] if placed else []
        document = self._document(components, placement)
        return Draft(document=written(document), questions=tuple(self.questions))

    def _document(
        self, components: dict[str, Any], placement: list[dict[str, Any]]
    ) -> dict[str, Any]:
        document: dict[str, Any] = {
            "entremetry": 1,
            "id": identifier(self.request.name),
            "name": self.request.name,
        }
        if self.measures:
            document["measures"] = self.measures
        document |= {"pieces": self.request.pieces, "mould": self.request.mould}
        document |= {"components": components, "placement": placement}
        open_questions = [question.text for question in self.questions]
        return document | ({"ask": open_questions} if open_questions else {})

    def _answer(self, key: str) -> str | None:
        answer = self.request.answers.get(key, "").strip()
        return answer or None

    def _ask(self, question: Question) -> None:
        if question.key not in {asked.key for asked in self.questions}:
            self.questions.append(question)

    def _component(self, component_id: str, pasted: PastedComponent) -> dict[str, Any]:
        kind = self._kind(component_id, pasted.name)
        component: dict[str, Any] = {"name": pasted.name, "kind": kind or "mousse"}
        formula: dict[str, Any] = {}
        for number, text in enumerate(pasted.lines, start=1):
            line = self._line(f"{component_id}-{number}", text)
            formula[_unused(line.key, formula)] = line.value
        component["formula"] = formula
        density = self._density(component_id, pasted.name) if kind == "mousse" else None
        return component | ({"density": density} if density else {})

    def _kind(self, component_id: str, name: str) -> str | None:
        key = f"{component_id}-kind"
        said = [kind for kind in KINDS if kind in name.casefold().split()]
        kind = self._answer(key) or (said[0] if len(said) == 1 else None)
        if kind in KINDS:
            return kind
        choices = tuple((k, k.capitalize()) for k in KINDS)
        self._ask(Question(key=key, about=name, text=f"What is '{name}'?", choices=choices))
        return None

    def _density(self, component_id: str, name: str) -> str | None:
        key = f"{component_id}-density"
        answer = self._answer(key)
        if answer is None:
            self._ask(
                Question(
                    key=key,
                    about=name,
                    text=f"What does a millilitre of the finished '{name}' weigh? "
                    "Fill a known cup, weigh it, divide.",
                    choices=((USUAL_MOUSSE, f"I do not know yet: take {USUAL_MOUSSE}"),),
                    example="0.62 g/ml",
                )
            )
        return answer

    def _line(self, key: str, text: str) -> DraftedLine:
        pasted = pasted_line(text)
        if pasted.needs_country and self.measures is None:
            self._ask(
                Question(
                    key="measures",
                    about=pasted.written,
                    text=f"Whose cups and spoons are meant ('{pasted.unit}')?",
                    choices=MEASURES,
                )
            )
        answers = {
            topic: answer
            for topic in ("ingredient", "amount")
            if (answer := self._answer(f"{key}-{topic}"))
        }
        line, questions = drafted_line(pasted, key, answers, self.larder, self.measures)
        for question in questions:
            self._ask(question)
        return line

    def _placed(self, component_id: str, name: str, *, alone: bool) -> dict[str, Any] | None:
        key = f"{component_id}-place"
        place = "filling" if alone else self._answer(key)
        if place not in dict(PLACES):
            text = f"Where does '{name}' sit?"
            self._ask(Question(key=key, about=name, text=text, choices=PLACES))
            return None
        if place == "used":
            return None
        size = self._answer(f"{component_id}-size")
        answer = placing_answer(component_id, place, size, self.moulds)
        if isinstance(answer, PlacingAnswer):
            return dict(answer.entry)
        self._ask(
            Question(
                key=f"{component_id}-size",
                about=name,
                text=f"{name}: {answer}",
                example=SIZES[place].example,
            )
        )
        return None


def _unused(wanted: str, taken: Mapping[str, Any] | Sequence[str]) -> str:
    name, number = wanted, 2
    while name in taken:
        name, number = f"{wanted}-{number}", number + 1
    return name
