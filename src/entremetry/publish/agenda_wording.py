"""Hours, days and steps of a plan as every view of it says them."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from entremetry.agenda.agenda import Agenda, AgendaSession, AgendaTask, Served
from entremetry.agenda.local_time import clock, day, minutes_between, said
from entremetry.publish import typography
from entremetry.publish.typography import NO_BREAK


def clock_from(moment: datetime, seen: datetime) -> str:
    """Hour and minute, after the short weekday where it is another day than `seen`."""
    if moment.date() == seen.date():
        return clock(moment)
    return f"{moment:%a}{NO_BREAK}{clock(moment)}"


def lasting(minutes: int) -> str:
    """Minutes as hours and minutes that stay on one line."""
    return typography.hours(60.0 * minutes).replace(" ", NO_BREAK)


def verb(task: AgendaTask) -> str:
    """What is done, in one word: 'Freeze' of a step that freezes until a temperature."""
    return task.kind.partition("-")[0].capitalize()


def what(task: AgendaTask) -> str:
    """What it is done to: the component, or the dessert where the step is about all of it."""
    name = task.component_name or task.dessert_name
    return f"{name}, {task.round}{NO_BREAK}of{NO_BREAK}{task.rounds}" if task.rounds > 1 else name


def title(*tasks: AgendaTask) -> str:
    """A step, or several done in one go, in a few words: 'Freeze · Vanilla mousse'."""
    verbs = " and ".join(dict.fromkeys(map(verb, tasks)))
    return f"{verbs} · {' + '.join(dict.fromkeys(map(what, tasks)))}"


def listed(texts: Sequence[str]) -> str:
    """Texts in a row: 'a, b and c'."""
    *most, last = texts
    return f"{', '.join(most)} and {last}" if most else last


def served(each: Served, seen: datetime | None = None) -> str:
    """A dessert with its pieces and its hour, with the day unless it is that of `seen`."""
    same_day = seen is not None and seen.date() == each.at.date()
    hour = clock(each.at) if same_day else said(each.at)
    return f"{each.name}, {counted(each.pieces, 'piece')}, {hour}"


def counted(number: int, thing: str) -> str:
    """A number of things: '1 piece', '8 pieces'."""
    return f"{number}{NO_BREAK}{thing}{'' if number == 1 else 's'}"


def goes_on(start: datetime, end: datetime) -> str:
    """How long something goes on by itself, and until when."""
    return f"{lasting(minutes_between(start, end))} by itself, to {clock_from(end, start)}"


def span(session: AgendaSession) -> str:
    """From when to when: '18:30 to 21:35'."""
    return f"{clock(session.start)} to {clock_from(session.end, session.start)}"


def effort(session: AgendaSession) -> str:
    """Work and time between the work: '2 h 10 min of work, 55 min between'."""
    work = f"{lasting(session.hands_on)} of work"
    return f"{work}, {lasting(session.idle)} between" if session.idle else work


def menu(agenda: Agenda) -> str:
    """The names of what is served."""
    return listed(tuple(dict.fromkeys(each.name for each in agenda.served)) or ("nothing",))


def summary(agenda: Agenda) -> str:
    """The whole plan in sentences, for whoever does not see the drawing."""
    sentences = [
        f"Session on {day(session.start)}, {span(session)}: {effort(session)}; "
        f"{'; '.join(_told(agenda, session))}."
        for session in agenda.sessions
    ]
    return " ".join([*sentences, *(f"Served: {served(each)}." for each in agenda.served)])


def _told(agenda: Agenda, session: AgendaSession) -> list[str]:
    named = {task.id: task for task in agenda.tasks}
    return [
        f"{clock_from(named[id_].start, session.start)} {title(named[id_])}"
        for id_ in session.tasks
        if id_ in named
    ]
