"""Answers given so far while a new dessert is drafted, and which of them still hold."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from entremetry.dessert.draft_line import identifier
from entremetry.dessert.pasted_components import pasted_text
from entremetry.usecases.drafting import said_answer
from entremetry.web.forms import Form

CHOSEN = "answer:"
TYPED = "typed:"
ASKED = "asked:"
OF_A_LINE = re.compile(r"(.+-\d+)-(?:ingredient|amount)|(step\.\d+)\..+")


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenAnswer:
    """What was answered to a question; `words` is what a choice is called."""

    key: str
    asked: str
    answer: str

    @property
    def words(self) -> str:
        """The answer as a person reads it."""
        return said_answer(self.key, self.answer)


def given_answers(form: Form, *, text: str, name: str) -> tuple[GivenAnswer, ...]:
    """Answers in a form that still hold; one about a line that has changed is asked again."""
    forgotten = form.text("forget")
    then = lines_by_key(form.text("text_then"), form.line("name_then"))
    now = lines_by_key(text, name)
    return tuple(
        given
        for given in _all_given(form)
        if given.key != forgotten and _holds(given.key, then, now)
    )


def lines_by_key(text: str, name: str) -> Mapping[str, str]:
    """Lines and sentences of a pasted text by the key under which the draft asks about them."""
    pasted = pasted_text(text, name)
    lines = {
        f"{identifier(component.name)}-{number}": line.strip()
        for component in pasted.components
        for number, line in enumerate(component.lines, start=1)
    }
    steps = {f"step.{number}": step.text for number, step in enumerate(pasted.steps, start=1)}
    return lines | steps


def _all_given(form: Form) -> tuple[GivenAnswer, ...]:
    keys = dict.fromkeys(
        field.partition(":")[2] for field in form.fields if field.startswith((CHOSEN, TYPED))
    )
    given = (
        GivenAnswer(
            key=key,
            asked=form.line(ASKED + key),
            answer=form.line(TYPED + key) or form.line(CHOSEN + key),
        )
        for key in keys
    )
    return tuple(each for each in given if each.answer)


def _holds(key: str, then: Mapping[str, str], now: Mapping[str, str]) -> bool:
    about = OF_A_LINE.fullmatch(key)
    if about is None:
        return True
    line = about[1] or about[2]
    return then.get(line) == now.get(line)
