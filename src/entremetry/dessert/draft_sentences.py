"""The sentences of a pasted text shared out among the components and the assembly."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from entremetry.dessert.draft_method import Line, Method
from entremetry.dessert.draft_question import Answers, Question
from entremetry.dessert.draft_step import NOTE_ONLY, StepDraft
from entremetry.dessert.named_lines import named_lines
from entremetry.dessert.pasted_components import ASSEMBLY, PastedStep
from entremetry.dessert.step_words import kinds_said
from entremetry.errors import DocumentError, Fault
from entremetry.quantities import parse_duration
from entremetry.words import say

MOST_STEPS = 100
AFTER_FILLING = ("unmould", "glaze-at", "thaw-until", "serve", "freeze-until")
STAND_IN = "rest"


@dataclass(slots=True, kw_only=True)
class Sentences:
    """Gives each sentence to its component; `lines` are those of each component in order."""

    steps: Sequence[PastedStep]
    lines: Sequence[Sequence[Line]]
    names: Mapping[str, str]
    answers: Answers
    ask: Callable[[Question], None]
    assembly: list[dict[str, Any]] = field(default_factory=list)
    seconds: float = 0.0

    def write(self, components: dict[str, Any]) -> list[str]:
        """Write the methods into the components; the notes that belong to none are returned.

        Raises
        ------
        DocumentError
            If there are more steps than a method holds.
        """
        if len(self.steps) > MOST_STEPS:
            found = say("{number} steps", number=len(self.steps))
            accepted = say("up to {number} steps", number=MOST_STEPS)
            field = say("pasted text")
            raise DocumentError([Fault(field=field, found=found, accepted=accepted)])
        shared: dict[str, list[StepDraft]] = {owner: [] for owner in (*self.names, ASSEMBLY, "")}
        for number, step in enumerate(self.steps, start=1):
            sentence = self._sentence(number, step)
            owner = self._owner(sentence, step)
            sentence.assembly = owner == ASSEMBLY
            shared[owner].append(sentence)
        for place, component in enumerate(self.names):
            self._method(components[component], self.lines[place], shared[component])
        notes = [sentence.note for sentence in shared[""]]
        return notes + self._assembled(shared[ASSEMBLY])

    def _sentence(self, number: int, step: PastedStep) -> StepDraft:
        key = f"step.{number}"
        return StepDraft(text=step.text, key=key, answers=self.answers, ask=self.ask)

    def _owner(self, sentence: StepDraft, step: PastedStep) -> str:
        ids = list(self.names)
        alone = len(ids) == 1
        if step.owner is None or (alone and step.owner == 0):
            if alone:
                after = kinds_said(sentence.text) and kinds_said(sentence.text)[0] in AFTER_FILLING
                return ASSEMBLY if after else ids[0]
            return self._owner_by_lines(sentence, ids)
        return step.owner if isinstance(step.owner, str) else ids[step.owner]

    def _owner_by_lines(self, sentence: StepDraft, ids: Sequence[str]) -> str:
        """The only component of which a line is named; else it is asked."""
        named = [
            component
            for component, lines in zip(ids, self.lines, strict=True)
            if _names_one(sentence.text, lines)
        ]
        answer = sentence.answer("of")
        if answer in (*ids, ASSEMBLY):
            return str(answer)
        if answer == NOTE_ONLY:
            return ""
        if answer is None and len(named) == 1:
            return named[0]
        choices = [(component, self.names[component]) for component in ids]
        choices += [(ASSEMBLY, say("Putting together")), (NOTE_ONLY, say("A note, no step"))]
        text = say("Which component is this a step of?")
        sentence.question("of", text, tuple(choices), refused=answer or "")
        return ""

    def _method(
        self, component: dict[str, Any], lines: Sequence[Line], sentences: Sequence[StepDraft]
    ) -> None:
        if not sentences or not lines:
            return
        drafted = Method(lines=lines, sentences=sentences).drafted()
        if drafted.steps:
            component["method"] = list(drafted.steps)
        if drafted.notes:
            component["note"] = " ".join(drafted.notes)
        self._count(drafted.steps)

    def _assembled(self, sentences: Sequence[StepDraft]) -> list[str]:
        """Write the assembly; sentences that are no step come back."""
        notes = []
        for sentence in sentences:
            kind = sentence.kind()
            if kind == NOTE_ONLY:
                notes.append(sentence.note)
                continue
            fields = sentence.fields(kind) if kind else {}
            whole = {"step": kind, **fields} if sentence.settled else {"step": STAND_IN}
            self.assembly.append(whole | {"note": sentence.note})
        self._count(self.assembly)
        return notes

    def _count(self, steps: Sequence[Mapping[str, Any]]) -> None:
        self.seconds += sum(parse_duration(step["time"]) for step in steps if "time" in step)


def _names_one(text: str, lines: Sequence[Line]) -> bool:
    named = named_lines(text, [line.name for line in lines])
    return bool(named.certain or named.possible)
