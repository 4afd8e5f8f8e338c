"""The method of a component drafted from sentences: what enters at which step, in which bowl."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from entremetry.dessert.draft_step import NOTE_ONLY, StepDraft
from entremetry.dessert.method_trouble import trouble
from entremetry.dessert.named_lines import Named, named_lines
from entremetry.dessert.step_words import ADDING
from entremetry.method.work import MAIN
from entremetry.words import say

ON_ITS_OWN = ("soak", "whip", "melt", "cook-to", "simmer")
JOINING = ("mix", "fold", "pour")
NEEDS_LINES = ("soak", "fold")
NONE = "none"
MIXED = "mixed"
AS_NOTES = "as-notes"
STAND_IN = "mix"  # kind of a step that is still asked about; the document is refused meanwhile


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line of the formula: its key there, its name as pasted, its number among the pasted."""

    key: str
    name: str
    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftedMethod:
    """Steps as a document writes them, and the sentences that are no step."""

    steps: tuple[dict[str, Any], ...] = ()
    notes: tuple[str, ...] = ()


@dataclass(slots=True, kw_only=True)
class Method:
    """Follows the lines from sentence to sentence; used once."""

    lines: Sequence[Line]
    sentences: Sequence[StepDraft]
    steps: list[dict[str, Any]] = field(default_factory=list)
    written: list[StepDraft] = field(default_factory=list)  # the sentence of each step
    notes: list[str] = field(default_factory=list)
    holds: dict[str, set[int]] = field(default_factory=dict)  # places of lines by open bowl
    begun: dict[str, int] = field(default_factory=dict)  # step at which a bowl was begun
    used: set[int] = field(default_factory=set)

    def drafted(self) -> DraftedMethod:
        """The method; what is unclear about it has been asked."""
        for sentence in self.sentences:
            self._take(sentence)
        if self.steps:
            self._ask_what_joins()
            self._ask_what_enters()
        if all(s.settled for s in self.sentences) and self.steps and self._leads_nowhere():
            notes = (sentence.note for sentence in self.sentences)
            return DraftedMethod(notes=tuple(notes))
        return DraftedMethod(steps=tuple(self.steps), notes=tuple(self.notes))

    def _take(self, sentence: StepDraft) -> None:
        kind = sentence.kind()
        if kind == NOTE_ONLY:
            self.notes.append(sentence.note)
            return
        step: dict[str, Any] = {"step": kind or STAND_IN}
        fields = sentence.fields(kind) if kind else {}
        entering = self._entering(sentence, kind or STAND_IN)
        bowl, bowls = self._bowls(sentence, kind or STAND_IN, entering)
        what = [self.lines[i].key for i in sorted(entering)] + bowls
        if kind in NEEDS_LINES and not what:
            folded = self._folded(sentence, bowl)
            what, step["step"] = ([folded], kind) if folded else ([], STAND_IN)
        step |= {"what": what} if what else {}
        step |= {"bowl": bowl} if bowl != MAIN else {}
        whole = sentence.settled
        self.steps.append({**step, **fields} if whole else {**step, "step": STAND_IN})
        self.steps[-1]["note"] = sentence.note
        self.written.append(sentence)

    def _entering(self, sentence: StepDraft, kind: str) -> set[int]:
        named = self._named(sentence)
        unused = set(range(len(self.lines))) - self.used
        answer = sentence.answer("lines")
        if answer is not None:
            return self._answered_lines(sentence, answer, unused)
        if named.everything:
            return self._enter(unused)
        asked = tuple(i for i in named.possible if i in unused)
        fresh = {i for i in named.certain if i in unused}
        if asked or (named.part and fresh):
            self._ask_lines(sentence, tuple(sorted({*asked, *fresh})), part=named.part)
        return self._enter(fresh)

    def _enter(self, places: set[int]) -> set[int]:
        self.used |= places
        return places

    def _named(self, sentence: StepDraft) -> Named:
        return named_lines(sentence.text, [line.name for line in self.lines])

    def _folded(self, sentence: StepDraft, target: str) -> str:
        """The bowl that is meant by 'it'; nothing where all is in one bowl already."""
        others = [bowl for bowl in self.holds if bowl != target]
        answer = sentence.answer("it")
        if answer == MIXED:
            return ""
        if answer in others:
            self._pour(answer, target)
            return answer
        choices = [
            (bowl, say("What is in the bowl with {lines}", lines=self._contents(bowl)))
            for bowl in others
        ]
        choices.append((MIXED, say("All of it is in one bowl already: it is mixed there")))
        sentence.question("it", say("What goes in here?"), tuple(choices), refused=answer or "")
        return ""

    def _ask_lines(
        self,
        sentence: StepDraft,
        places: tuple[int, ...],
        *,
        part: bool = False,
        refused: str = "",
    ) -> None:
        numbers = [(str(self.lines[i].number), self.lines[i].name) for i in places]
        every = ", ".join(number for number, _ in numbers)
        more = ((every, say("All of these")),) if 1 < len(numbers) <= 12 else ()
        text = say("Which lines enter at this step? Numbers of lines, with commas.")
        if part:
            text = f"{say('A line enters whole, not in part.')} {text}"
        sentence.question(
            "lines",
            text,
            (*numbers, *more, (NONE, say("None of them enters here"))),
            example="1, 2",
            refused=refused,
        )

    def _answered_lines(self, sentence: StepDraft, answer: str, unused: set[int]) -> set[int]:
        if answer.strip() == NONE:
            return set()
        by_number = {str(line.number): place for place, line in enumerate(self.lines)}
        said = [part.strip() for part in answer.split(",") if part.strip()]
        if not said or any(by_number.get(part) not in unused for part in said):
            self._ask_lines(sentence, tuple(sorted(unused)), refused=answer)
            return set()
        return self._enter({by_number[part] for part in said})

    def _bowls(self, sentence: StepDraft, kind: str, entering: set[int]) -> tuple[str, list[str]]:
        """The bowl in which the step happens, and the bowls that are poured into it."""
        named = self._named(sentence)
        said = {*named.certain, *named.possible}
        met = [bowl for bowl, held in self.holds.items() if held & said]
        target = self._target(sentence, kind, entering, met)
        self.holds.setdefault(target, set())
        joins = [bowl for bowl in met if bowl != target]
        for bowl in joins:
            self._pour(bowl, target)
        self.holds[target] |= entering
        return target, joins

    def _target(
        self, sentence: StepDraft, kind: str, entering: set[int], met: Sequence[str]
    ) -> str:
        """The bowl in which a step happens, if the words tell; else it is asked."""
        waiting = [bowl for bowl in self.holds if bowl not in self._soaking()]
        if entering and not met and (kind == "soak" or waiting):
            return self._of_new(sentence, kind, entering, waiting)
        worked = [bowl for bowl in waiting if bowl in met]
        others = [bowl for bowl in waiting if bowl not in met]
        if MAIN in worked or not waiting:
            return MAIN
        if len(worked) == 1 and not entering and kind not in JOINING:
            return worked[0]
        if worked and entering and others:
            return self._where(sentence, entering)
        choices = others or worked
        return choices[0] if len(choices) == 1 else self._where(sentence, entering)

    def _of_new(
        self, sentence: StepDraft, kind: str, entering: set[int], waiting: Sequence[str]
    ) -> str:
        """The bowl of lines that come in while other bowls are open and none is named."""
        adds = _adds(sentence)
        if kind == "soak" or (kind in ON_ITS_OWN and not adds):
            return self._own(entering)
        if adds and len(waiting) == 1:
            return waiting[0]
        return self._where(sentence, entering)

    def _soaking(self) -> set[str]:
        return {b for b, at in self.begun.items() if self.steps[at]["step"] == "soak"}

    def _own(self, entering: set[int]) -> str:
        bowl = self.lines[min(entering)].key
        self.begun.setdefault(bowl, len(self.steps))
        return bowl

    def _pour(self, bowl: str, target: str) -> None:
        self.holds[target] |= self.holds.pop(bowl)
        self.begun.pop(bowl, None)

    def _where(self, sentence: StepDraft, entering: set[int]) -> str:
        """The bowl, from the answer; it is asked if there is none."""
        open_bowls = list(self.holds)
        own = self.lines[min(entering)].key if entering else ""
        answer = sentence.answer("bowl")
        if answer == "own" and own and own not in open_bowls:
            return self._own(entering)
        if answer in open_bowls:
            return answer
        labels = [
            (bowl, say("In the bowl with {lines}", lines=self._contents(bowl)))
            for bowl in open_bowls
        ]
        labels += [("own", say("In a bowl of its own"))] if own else []
        sentence.question("bowl", say("In which bowl?"), tuple(labels), refused=answer or "")
        return open_bowls[0]

    def _contents(self, bowl: str) -> str:
        return ", ".join(self.lines[i].name for i in sorted(self.holds[bowl])) or say("nothing yet")

    def _ask_what_joins(self) -> None:
        """Of every bowl that no sentence empties: at which later step it joins the others."""
        last = MAIN if self.holds.get(MAIN) else next(reversed(self.holds), MAIN)
        for bowl in [b for b in self.holds if b != last]:
            sentence = self.written[self.begun.get(bowl, 0)]
            later = range(self.begun.get(bowl, 0) + 1, len(self.steps))
            fitting = [at for at in later if self.steps[at].get("bowl", MAIN) == last]
            text = say(
                "At which step does what is in it ({lines}) join the rest?",
                lines=self._contents(bowl),
            )
            at = self._step_answered(sentence, "joins", text, fitting)
            if at is not None:
                self.steps[at]["what"] = [*self.steps[at].get("what", []), bowl]
                self._pour(bowl, last)

    def _step_answered(
        self, sentence: StepDraft, topic: str, text: str, fitting: Sequence[int]
    ) -> int | None:
        """Place of the step that the answer names; it is asked if there is none."""
        by_number = {self.written[at].number: at for at in fitting}
        answer = sentence.answer(topic)
        if answer in by_number or not fitting:
            return by_number.get(answer or "")
        choices = tuple((number, self.written[at].note) for number, at in by_number.items())
        sentence.question(topic, text, choices, refused=answer or "")
        return None

    def _ask_what_enters(self) -> None:
        """Of every line that no sentence names: at which step it enters."""
        if len(self.steps) == 1:
            return
        for place, line in enumerate(self.lines):
            if place in self.used:
                continue
            text = say("No step names {line}. At which step does it enter?", line=line.name)
            every = range(len(self.steps))
            at = self._step_answered(self.written[0], f"line-{line.number}", text, every)
            if at is not None:
                self.steps[at]["what"] = [line.key, *self.steps[at].get("what", [])]

    def _leads_nowhere(self) -> bool:
        """Tell whether a settled method is refused, and the author lets it be notes."""
        why = trouble([line.key for line in self.lines], self.steps)
        if why is None:
            return False
        first = self.written[0]
        answer = first.answer("method")
        if answer == AS_NOTES:
            return True
        text = say("These steps do not lead every line into one bowl: {why}.", why=why[:160])
        choices = ((AS_NOTES, say("Keep the sentences as notes, without steps")),)
        first.question("method", text, choices, refused=answer or "")
        return False


def _adds(sentence: StepDraft) -> bool:
    return ADDING.search(sentence.text) is not None
