"""Plans written by hand in place of the solver's: the same calls, at once, and no surprises."""

from __future__ import annotations

import json
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from types import ModuleType
from typing import Any

from agendas import AGENDA, IMPOSSIBLE, begun
from entremetry.agenda.agenda import Agenda, AgendaTask, State
from entremetry.agenda.record import Record
from entremetry.errors import QuantityError
from entremetry.planning import Goal, Limits, Progress

AGENDAS = {"made": AGENDA, "impossible": IMPOSSIBLE, "begun": begun()}
TOO_MANY = 5000


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """One dessert of the menu."""

    text: str
    file: str = "document"
    pieces: int | None = None
    serve: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """A plan, which of those by hand it is, and what was changed when it was made anew."""

    agenda: Agenda
    menu: str
    plan: dict[str, Any]
    language: str = "en"


ASKED: list[tuple[Sequence[Course], dict[str, Any]]] = []


def plan_menu(courses: Sequence[Course], **others: Any) -> Planned:
    """The plan by hand; none for Sunday, a refusal for too many, a long search for Monday."""
    ASKED.append((courses, others))
    if any((course.pieces or 0) >= TOO_MANY for course in courses):
        raise QuantityError("5000 pieces", "what the moulds hold")
    limits = others.get("limits") or Limits()
    limits.progress(Progress(goal=Goal.SESSIONS, value=2, bound=1, seconds=0.1))
    weekday = datetime.fromisoformat(others["serve"]).weekday()
    while weekday == 0 and not limits.cancelled():
        time.sleep(0.02)
    return planned("impossible" if weekday == 6 else "made", cancelled=limits.cancelled())


def planned(menu: str, *, cancelled: bool = False) -> Planned:
    """One of the plans by hand, by its name."""
    agenda = replace(AGENDAS[menu], cancelled=cancelled)
    return Planned(agenda=agenda, menu=menu, plan={"cancelled": cancelled})


def planned_text(plan: Planned) -> str:
    """What rebuilds it."""
    return json.dumps({"menu": plan.menu, "plan": plan.plan})


def planned_from(text: str) -> Planned:
    """The plan of a text."""
    kept = json.loads(text)
    made = planned(kept["menu"], cancelled=kept["plan"]["cancelled"])
    agenda = made.agenda
    if "moved" in kept["plan"]:
        states = kept["plan"]["states"]
        agenda = with_states(agenda, {task: State(state) for task, state in states.items()})
        agenda = moved(agenda, kept["plan"]["moved"])
    return replace(made, agenda=agenda, plan=kept["plan"])


def planned_anew(plan: Planned, record: Record, *, limits: Limits | None = None) -> Planned:
    """What is not begun moves by half an hour."""
    agenda = agenda_with(plan, record)
    states = {task.id: task.state for task in agenda.tasks if task.state is not State.TO_COME}
    kept = {**plan.plan, "moved": 30, "states": states}
    return replace(plan, agenda=moved(agenda, 30), plan=kept)


def agenda_with(plan: Planned, record: Record) -> Agenda:
    """The plan with states."""
    states = {
        entry.task: State.DONE if entry.ended else State.UNDER_WAY for entry in record.entries
    }
    return with_states(plan.agenda, states)


def with_states(agenda: Agenda, states: dict[str, State]) -> Agenda:
    """The agenda with the states of some tasks."""
    return changed(agenda, lambda task: replace(task, state=states.get(task.id, task.state)))


def changed(agenda: Agenda, change: Callable[[AgendaTask], AgendaTask]) -> Agenda:
    """The agenda with each task changed."""
    return replace(agenda, tasks=tuple(change(task) for task in agenda.tasks))


def moved(agenda: Agenda, minutes: int) -> Agenda:
    """The agenda with what is to come later by so much, and a fact that gave."""

    def later(task: AgendaTask) -> AgendaTask:
        if task.state is not State.TO_COME:
            return task
        return replace(_at(task, minutes), moved=minutes)

    return replace(
        changed(agenda, later), changes=("the first session ends at 22:05 instead of 21:35",)
    )


def _at(task: AgendaTask, minutes: int) -> AgendaTask:
    by = timedelta(minutes=minutes)
    hands = tuple(replace(one, start=one.start + by, end=one.end + by) for one in task.hands)
    return replace(task, start=task.start + by, end=task.end + by, hands=hands)


HERE = (Course, Planned, plan_menu, planned_text, planned_from, planned_anew, agenda_with)


def modules() -> dict[str, ModuleType]:
    """The module of plans, to be found in place of the real one."""
    made = ModuleType("entremetry.usecases.plans")
    for thing in HERE:
        setattr(made, thing.__name__, thing)
    return {made.__name__: made}
