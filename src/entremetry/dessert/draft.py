"""A dessert document drafted from pasted lines; what is unclear becomes a question."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from entremetry.dessert.alteration import free_name
from entremetry.dessert.draft_line import drafted_line, identifier
from entremetry.dessert.draft_method import Line
from entremetry.dessert.draft_placement import Placing, choice_question
from entremetry.dessert.draft_question import Answers, Question, shortened
from entremetry.dessert.draft_sentences import Sentences
from entremetry.dessert.draft_whole import Whole
from entremetry.dessert.draft_words import kind_words, measure_words
from entremetry.dessert.pasted_components import PastedComponent, pasted_text
from entremetry.dessert.pasted_line import PastedLine, pasted_line
from entremetry.documents import written
from entremetry.errors import DocumentError, Fault, QuantityError
from entremetry.larder.larder import Larder
from entremetry.quantities import parse_density
from entremetry.words import decimal, say, say_count, say_later

KINDS = ("mousse", "insert", "base", "glaze", "soak", "crumble", "garnish")
MEASURES = ("us", "metric", "au", "uk")
USUAL_MOUSSE = "0.60 g/ml"
MOST_LINES = 60
MOST_ASKED = 199
MOST_COMPONENTS = 30


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftRequest:
    """What is known so far: the pasted text, the mould as a document writes it, the answers.

    Without `pieces` the text may say how many; without `mould` it is asked.
    `upright` if the mould is filled the way it is served: a glass, a frame.
    """

    name: str
    pieces: int | None
    mould: str | Mapping[str, Any] | None
    text: str
    measures: str | None = None
    answers: Mapping[str, str] = field(default_factory=dict)
    upright: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """The document as far as it goes, the questions still open, the answers nobody asked for.

    `remarks` are what the text says of itself that does not add up.
    """

    document: str
    questions: tuple[Question, ...]
    unasked: tuple[str, ...] = ()
    keys: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()

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
        If there is no line at all, or more than a document holds.
    """
    return _Drafting(request, larder, moulds).run()


class _Drafting:
    """Gathers questions while the document grows; used once."""

    def __init__(
        self, request: DraftRequest, larder: Larder, moulds: Mapping[str, Mapping[str, Any]]
    ) -> None:
        self.request = request
        self.larder = larder
        self.moulds = moulds
        self.questions: list[Question] = []
        self.on_lines: set[str] = set()
        self.lines: list[list[Line]] = []
        self.answers = Answers(request.answers)
        self.measures = request.measures or self._answered_measures()

    def run(self) -> Draft:
        text = pasted_text(self.request.text, self.request.name)
        pasted = text.components
        _require_lines(pasted)
        self.whole = Whole(
            request_pieces=self.request.pieces,
            facts=text.facts,
            answers=self.answers,
            ask=self._ask,
            moulds=self.moulds,
        )
        components, names = self._components(pasted)
        told = Sentences(
            steps=text.steps, lines=self.lines, names=names, answers=self.answers, ask=self._ask
        )
        notes = told.write(components)
        placing = Placing(names=names, answers=self.answers, moulds=self.moulds, ask=self._ask)
        for component in names:
            placing.place(component)
        for component, (into, mass) in placing.used.items():
            formula = components[into]["formula"]
            formula[free_name(component, formula)] = {"component": component, "amount": mass}
        placement = placing.in_order(upright=self.request.upright)
        return Draft(
            document=written(self._document(components, placement, told.assembly, notes)),
            questions=tuple(self.questions),
            unasked=self.answers.unused,
            keys=tuple(question.key for question in self.questions),
            remarks=self.whole.remarks(told.seconds),
        )

    def _components(
        self, pasted: tuple[PastedComponent, ...]
    ) -> tuple[dict[str, Any], dict[str, str]]:
        components: dict[str, Any] = {}
        names: dict[str, str] = {}
        for each in pasted:
            component = free_name(identifier(each.name), names)
            names[component] = each.name
            components[component] = self._component(component, each)
        return components, names

    def _document(
        self,
        components: dict[str, Any],
        placement: list[dict[str, Any]],
        assembly: list[dict[str, Any]],
        notes: list[str],
    ) -> dict[str, Any]:
        document: dict[str, Any] = {
            "entremetry": 1,
            "id": identifier(self.request.name),
            "name": self.request.name,
        }
        if self.measures:
            document["measures"] = self.measures
        document |= self.whole.count() | {"mould": self._mould()}
        document |= {"components": components, "placement": placement}
        document |= {"assembly": assembly} if assembly else {}
        document |= {"note": " ".join(notes)} if notes else {}
        texts = [q.text for q in self.questions if q.key not in self.on_lines]
        open_questions = [shortened(text) for text in texts[:MOST_ASKED]]
        if len(texts) > MOST_ASKED:
            more = len(texts) - MOST_ASKED
            open_questions.append(
                say_count(
                    "{number} more question is open.", "{number} more questions are open.", more
                )
            )
        return document | ({"ask": open_questions} if open_questions else {})

    def _mould(self) -> str | dict[str, Any]:
        """The mould; of one weighed with water it is asked how many cavities there are."""
        mould = self.request.mould or self.whole.mould()
        if isinstance(mould, str):
            return mould
        if "cavities" in mould:
            return dict(mould)
        cavities = self._cavities()
        return {**mould, "cavities": cavities} if cavities else dict(mould)

    def _cavities(self) -> int | None:
        answer = self.answers.to("cavities")
        if answer is not None and answer.isdecimal() and 1 <= int(answer[:6]) <= 500:
            return int(answer)
        text = say("How many cavities does the mould have?")
        refusal = say("'{answer}' is no whole number from 1 to 500.", answer=answer)
        self._ask(
            Question(
                key="cavities",
                about=say("the mould that was weighed"),
                text=f"{refusal} {text}" if answer else text,
                choices=(("1", say("One")), ("6", say("Six")), ("8", say("Eight"))),
                example="15",
                refused=answer or "",
            )
        )
        return None

    def _ask(self, question: Question) -> None:
        if question.key not in {asked.key for asked in self.questions}:
            self.questions.append(question)

    def _component(self, component: str, pasted: PastedComponent) -> dict[str, Any]:
        kind = self._kind(component, pasted.name)
        drafted: dict[str, Any] = {"name": pasted.name, "kind": kind or "mousse"}
        drafted["formula"] = self._formula(component, pasted.lines)
        density = self._density(component, pasted.name) if kind == "mousse" else None
        return drafted | ({"density": density} if density else {})

    def _formula(self, component: str, lines: tuple[str, ...]) -> dict[str, Any]:
        formula: dict[str, Any] = {}
        kept: list[Line] = []
        for position, text in enumerate(lines, start=1):
            pasted = pasted_line(text)
            self._ask_whose_spoons(pasted)
            line, question = drafted_line(
                pasted, f"{component}-{position}", self.answers, self.larder, self.measures
            )
            if question is not None:
                self._ask(question)
                self.on_lines.add(question.key)
            if line is not None:
                key = free_name(line.key, formula)
                formula[key] = line.written(again=line.key in formula)
                kept.append(Line(key=key, name=pasted.name or text.strip(), number=position))
        self.lines.append(kept)
        return formula

    def _kind(self, component: str, name: str) -> str | None:
        key = f"{component}-kind"
        answer = self.answers.to(key)
        said = [kind for kind in KINDS if kind in name.casefold().split()]
        kind = answer or (said[0] if len(said) == 1 else None)
        if kind in KINDS:
            return kind
        text = say("What is '{name}'?", name=name)
        self._ask(choice_question(key, name, text, kind_words(), answer))
        return None

    def _density(self, component: str, name: str) -> str | None:
        answer = self.answers.to(f"{component}-density")
        if answer is not None and _is_density(answer):
            return answer
        refusal = say("'{answer}' is no density.", answer=answer)
        text = say(
            "What does a millilitre of the finished '{name}' weigh? "
            "Fill a known cup, weigh it, divide.",
            name=name,
        )
        unknown = say("I do not know yet: take {density}", density=decimal(USUAL_MOUSSE))
        self._ask(
            Question(
                key=f"{component}-density",
                about=name,
                text=f"{refusal} {text}" if answer else text,
                choices=((USUAL_MOUSSE, unknown),),
                example="0.62 g/ml",
                refused=answer or "",
            )
        )
        return None

    def _answered_measures(self) -> str | None:
        answer = self.answers.to("measures")
        if answer is not None and answer not in MEASURES:
            self._ask(choice_question("measures", answer, say(WHOSE), measure_words(), answer))
            return None
        return answer

    def _ask_whose_spoons(self, pasted: PastedLine) -> None:
        if pasted.needs_country and self.measures is None:
            text = say("Whose cups and spoons are meant? ('{unit}')", unit=pasted.unit)
            self._ask(choice_question("measures", pasted.written, text, measure_words(), None))


WHOSE = say_later("Whose cups and spoons are meant?")


def _require_lines(pasted: tuple[PastedComponent, ...]) -> None:
    field = say("pasted text")
    accepted = say("lines such as '240 g blackcurrant purée', one ingredient a line")
    if not pasted:
        raise DocumentError([Fault(field=field, found=say("nothing"), accepted=accepted)])
    most = max(len(component.lines) for component in pasted)
    if most > MOST_LINES or len(pasted) > MOST_COMPONENTS:
        found = say(
            "{number} headings, with up to {most} lines under one", number=len(pasted), most=most
        )
        accepted = say(
            "up to {number} headings with up to {most} lines each",
            number=MOST_COMPONENTS,
            most=MOST_LINES,
        )
        raise DocumentError([Fault(field=field, found=found, accepted=accepted)])


def _is_density(text: str) -> bool:
    try:
        parse_density(text)
    except QuantityError:
        return False
    return True
