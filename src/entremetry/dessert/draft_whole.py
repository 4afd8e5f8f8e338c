"""How many pieces, which mould, and whether the times of a text add up."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from entremetry.dessert.document import MAX_PIECES
from entremetry.dessert.draft_placement import choice_question
from entremetry.dessert.draft_question import Answers, Question
from entremetry.dessert.pasted_facts import Fact
from entremetry.quantities import format_duration
from entremetry.words import say, say_count

MOST_SERVED = 1000
_COUNT = re.compile(r"(\d{1,5})(?:\s*(?:pieces?)?\s+for\s+(\d{1,4}))?")
SLACK = 1.1  # a text rounds its total; a tenth more is no contradiction: common_practice


@dataclass(slots=True, kw_only=True)
class Whole:
    """What concerns the whole dessert; `request_pieces` wins over what the text says."""

    request_pieces: int | None
    facts: Sequence[Fact]
    answers: Answers
    ask: Callable[[Question], None]
    moulds: Mapping[str, Mapping[str, Any]]

    def count(self) -> dict[str, int]:
        """Pieces, and how many each serves, as a document writes them."""
        if self.request_pieces is not None:
            return {"pieces": self.request_pieces}
        answer = self.answers.to("pieces")
        found = _counted(answer) if answer else self._said()
        if found:
            return found
        said = "; ".join(fact.said for fact in self._yields())
        asked = (
            say("'{answer}' is no such number.", answer=answer[:60]) if answer else "",
            say("The text says: {words}.", words=said[:120]) if said else "",
            say("How many pieces, and for how many people is each?"),
        )
        self.ask(
            Question(
                key="pieces",
                about=said[:120] or say("the whole"),
                text=" ".join(filter(None, asked)),
                choices=self._choices(),
                example="6",
                refused=answer or "",
            )
        )
        return {"pieces": 1}

    def mould(self) -> str:
        """The id of the mould; it is asked, and the first of the shelf stands in."""
        answer = self.answers.to("mould")
        if answer in self.moulds:
            return str(answer)
        choices = {mould: mould for mould in self.moulds}
        self.ask(
            choice_question("mould", say("the mould"), say("In which mould?"), choices, answer)
        )
        return next(iter(self.moulds))

    def remarks(self, seconds: float) -> tuple[str, ...]:
        """Times that contradict one another; `seconds` are the times of all steps together."""
        times = {fact.about: fact.seconds for fact in self.facts if fact.seconds}
        total = times.get("total")
        if total is None:
            return ()
        told = []
        parts = (times.get("preparation") or 0.0) + (times.get("cooking") or 0.0)
        if parts > total * SLACK:
            told.append(
                say(
                    "The text says {total} in all; preparation and cooking add up to {sum}.",
                    total=format_duration(total),
                    sum=format_duration(parts),
                )
            )
        if seconds > total * SLACK:
            told.append(
                say(
                    "The text says {total} in all; the times of its steps add up to {sum}.",
                    total=format_duration(total),
                    sum=format_duration(seconds),
                )
            )
        return tuple(told)

    def _yields(self) -> list[Fact]:
        return [fact for fact in self.facts if fact.about == "yield"]

    def _said(self) -> dict[str, int] | None:
        pieces = {fact.pieces for fact in self._yields()}
        only = pieces.pop() if len(pieces) == 1 else None
        return {"pieces": only} if only and 1 <= only <= MAX_PIECES else None

    def _choices(self) -> tuple[tuple[str, str], ...]:
        numbers = dict.fromkeys(fact.number for fact in self._yields() if fact.number)
        return tuple(
            choice
            for number in numbers
            for choice in (
                (
                    number,
                    say_count(
                        "{pieces} piece, one for each",
                        "{pieces} pieces, one for each",
                        int(number),
                        pieces=number,
                    ),
                ),
                (f"1 for {number}", say("One piece that serves {number}", number=number)),
            )
        )


def _counted(answer: str) -> dict[str, int] | None:
    found = _COUNT.fullmatch(answer.strip())
    if found is None:
        return None
    pieces, serves = int(found[1]), int(found[2] or 1)
    if not (1 <= pieces <= MAX_PIECES and 1 <= serves <= MOST_SERVED):
        return None
    return {"pieces": pieces, "serves": serves} if serves > 1 else {"pieces": pieces}
