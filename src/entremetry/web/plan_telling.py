"""What a person tells of a plan: read from a form, kept once, and said back."""

from __future__ import annotations

import hashlib
import secrets
from collections.abc import Sequence
from datetime import datetime

from entremetry.agenda.agenda import Agenda, AgendaTask
from entremetry.agenda.local_time import clock
from entremetry.errors import QuantityError, UnknownName
from entremetry.publish.agenda_wording import verb
from entremetry.store import BenchEntry, Happening
from entremetry.web.forms import Form
from entremetry.web.plan_words import lasting
from entremetry.words import say, say_later

LONGEST = 14 * 24 * 60  # min
WITHOUT_TASK = frozenset({Happening.HELD})
SAID = {
    Happening.BEGUN: say_later("begun"),
    Happening.LEFT: say_later("left to itself"),
    Happening.DONE: say_later("done"),
    Happening.NOT_YET: say_later("not yet, after all"),
    Happening.AGAIN: say_later("failed, to be made again"),
}


def key_of_a_page() -> str:
    """Name for a page that is sent out, so that what is told from it counts once."""
    return secrets.token_hex(16)


def told_from_page(
    form: Form, told: Sequence[BenchEntry], agenda: Agenda, at: datetime
) -> BenchEntry:
    """What the page of a plan tells; `longer` minutes are added to what a task takes by now.

    Raises
    ------
    EntremetryError
        If it is nothing that can be told, or tells of a task that the plan lacks.
    """
    what, minutes = _happening(form), _minutes(form, "minutes")
    task = "" if what in WITHOUT_TASK else _task(form, agenda).id
    if what is Happening.TAKES:
        minutes += _takes_by_now(_task(form, agenda), told)
    return BenchEntry(
        key=_own_key(form.line("key"), what, task), what=what, task=task, at=at, minutes=minutes
    )


def told_from_bench(form: Form) -> BenchEntry:
    """What the bench tells, with its own key, its own time, and minutes in all.

    Raises
    ------
    QuantityError
        If it is nothing that can be told.
    """
    key, at = form.line("key"), _moment(form.line("at"))
    if not key or len(key) > 64:
        raise QuantityError(f"'{key[:80]}' as a key", "1 to 64 characters")
    return BenchEntry(
        key=key,
        what=_happening(form),
        task=form.line("task")[:200],
        at=at,
        minutes=_minutes(form, "minutes"),
    )


def told_words(entry: BenchEntry, agenda: Agenda) -> str:
    """An entry as a sentence, by the clock of the kitchen."""
    zone = agenda.begins.tzinfo
    when = clock(entry.at.astimezone(zone))
    if entry.what is Happening.HELD:
        until = clock(entry.until.astimezone(zone))
        return say("{hour}: nobody at the bench until {until}", hour=when, until=until)
    named = next((_named(task) for task in agenda.tasks if task.id == entry.task), entry.task)
    if entry.what is Happening.TAKES:
        time = lasting(entry.minutes)
        return say("{hour}: {step} takes {time} in all", hour=when, step=named, time=time)
    return say("{hour}: {step}: {state}", hour=when, step=named, state=say(SAID[entry.what]))


def _named(task: AgendaTask) -> str:
    name = task.component_name or task.dessert_name
    return f"{name} ({verb(task).lower()})"


def _happening(form: Form) -> Happening:
    try:
        return Happening(form.line("what"))
    except ValueError:
        accepted = ", ".join(Happening)
        raise QuantityError(f"'{form.line('what')[:40]}'", accepted) from None


def _minutes(form: Form, name: str) -> int:
    minutes = form.whole_number(name) or 0
    if minutes > LONGEST:
        raise QuantityError(f"{minutes} minutes", f"at most {LONGEST}")
    return minutes


def _moment(text: str) -> datetime:
    try:
        found = datetime.fromisoformat(text)
    except ValueError:
        found = datetime.min
    if found.tzinfo is None:
        raise QuantityError(f"'{text[:40]}'", "a time with its zone, such as 2026-11-28T19:00Z")
    return found


def _task(form: Form, agenda: Agenda) -> AgendaTask:
    named = {task.id: task for task in agenda.tasks}
    task = form.line("task")
    if task not in named:
        raise UnknownName("step of the plan", task[:200], named)
    return named[task]


def _takes_by_now(task: AgendaTask, told: Sequence[BenchEntry]) -> int:
    words = [e.minutes for e in told if e.task == task.id and e.what is Happening.TAKES]
    return words[-1] if words else task.minutes


def _own_key(page: str, what: Happening, task: str) -> str:
    return hashlib.sha256(f"{page} {what} {task}".encode()).hexdigest()[:40]
