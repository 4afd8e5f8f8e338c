"""A plan for a calendar program: iCalendar after RFC 5545 (rfc_5545).

Every time is written in universal time: an event is one moment of the world, never repeats, and so
needs no table of daylight saving that could be wrong. Ends are written as ends, not as durations,
which readers add up by the clock on the wall.
"""

from __future__ import annotations

from collections import Counter
from datetime import UTC, datetime, timedelta
from typing import TYPE_CHECKING
from uuid import UUID, uuid5

from entremetry.agenda.agenda import Agenda, AgendaSession
from entremetry.agenda.local_time import clock, minutes_between
from entremetry.publish.agenda_days import (
    Stretch,
    Wait,
    Work,
    meanwhile,
    next_to,
    order,
    outside,
    overlap,
    waits,
    within,
    works,
)
from entremetry.publish.agenda_wording import (
    clock_from,
    goes_on,
    lasting,
    listed,
    menu,
    served,
    title,
)
from entremetry.publish.markup import plain
from entremetry.words import current, say

if TYPE_CHECKING:
    from icalendar import Alarm, Calendar, Event

PRODUCT = "-//Entremetry//Plan//{code}"
NAMESPACE = UUID("5f0c8c0e-6a53-5d0e-9a8a-2d0f3b6e7c41")
BEFORE_A_SESSION = 15
"""Minutes from the reminder to the session."""


def calendar(agenda: Agenda, *, stamp: datetime) -> bytes:
    """A calendar of one plan, made at `stamp`.

    One event for each session with its steps and amounts, one for each go at the bench outside
    them. A wait that outlasts a session, or runs outside all, is shown as free time; shorter ones
    stand in the session. A reminder comes before each session and where a wait ends that needs
    hands. The same step keeps its event when a plan is made anew and read in again, since
    the number of the revision grows with the stamp.
    """
    from icalendar import Calendar

    made = Calendar()
    made.add("prodid", PRODUCT.format(code=current().code.upper()))
    made.add("version", "2.0")
    made.add("calscale", "GREGORIAN")
    made.add("x-wr-calname", text(menu(agenda)))
    all_works, all_waits = works(agenda), waits(agenda)
    for session in agenda.sessions:
        there = within(session, all_works)
        made.add_component(_session(agenda, session, there, all_waits, stamp))
    for work in outside(agenda):
        made.add_component(_moment(agenda, work, stamp))
    counts: Counter[str] = Counter()
    for wait in all_waits:
        counts[wait.task.id] += 1
        if shown(wait, agenda):
            made.add_component(_wait(agenda, wait, counts[wait.task.id], stamp))
    return _written(made)


def _written(made: Calendar) -> bytes:
    return bytes(made.to_ical())


def shown(wait: Wait, agenda: Agenda) -> bool:
    """Whether a wait has an event of its own: it is not over within a session it began in."""
    return not any(
        minutes_between(session.start, wait.start) >= 0
        and minutes_between(wait.end, session.end) >= 0
        for session in agenda.sessions
    )


def text(words: str) -> str:
    """Text that a calendar may hold: no control characters, one kind of line end."""
    return plain(words).replace("\r\n", "\n").replace("\r", "\n").strip()


def _session(
    agenda: Agenda,
    session: AgendaSession,
    there: tuple[Work, ...],
    all_waits: tuple[Wait, ...],
    stamp: datetime,
) -> Event:
    what = listed(desserts(there)) if there else menu(agenda)
    summary = say("At the bench: {what}", what=what)
    running = [wait for wait in meanwhile(session, all_waits) if order(wait) < order(session)]
    lines = [
        *(line for work in there for line in told(work, all_waits)),
        *(say("Meanwhile: {step}, {lasting}", **going(wait)) for wait in running),
        *(say("Served: {what}", what=served(each)) for each in agenda.served),
    ]
    event = _event(agenda, f"session {session.id}", session, summary, "\n".join(lines), stamp)
    before = timedelta(minutes=-BEFORE_A_SESSION)
    event.add_component(_alarm(before, f"{summary}, {clock(session.start)}"))
    for wait in all_waits:
        if wait.then is not None and not shown(wait, agenda) and overlap(wait, session):
            into = timedelta(minutes=minutes_between(session.start, wait.end))
            event.add_component(_alarm(into, over(wait)))
    return event


def desserts(there: tuple[Work, ...]) -> tuple[str, ...]:
    """Names of the desserts that are worked on."""
    return tuple(dict.fromkeys(task.dessert_name for work in there for task in work.tasks))


def told(work: Work, all_waits: tuple[Wait, ...]) -> list[str]:
    """One go in a line, with its sentences and amounts below."""
    step = title(*work.tasks)
    step = say("{step} (again)", step=step) if work.again else step
    head = f"{clock(work.start)} {step}, {lasting(work.minutes)}"
    for wait in next_to(work, all_waits):
        head = say("{step}, then {lasting}", step=head, lasting=goes_on(wait.start, wait.end))
    lines = [head]
    for task in () if work.again else work.tasks:
        lines.append(f"  {task.text}")
        lines += [f"  - {amount}" for amount in task.amounts]
    return lines


def going(wait: Wait) -> dict[str, str]:
    """What goes on, and how long."""
    return {"step": title(wait.task), "lasting": goes_on(wait.start, wait.end)}


def over(wait: Wait) -> str:
    """What a reminder at the end of a wait says."""
    if wait.then is None or wait.then == wait.task:
        return say("Over: {step}", step=title(wait.task))
    return say("Over: {step}; now {next}", step=title(wait.task), next=title(wait.then))


def _moment(agenda: Agenda, work: Work, stamp: datetime) -> Event:
    key = f"hands {work.task.id} {work.person} {minutes_between(work.task.start, work.start)}"
    summary = title(*work.tasks)
    event = _event(agenda, key, work, summary, "\n".join(told(work, waits(agenda))), stamp)
    event.add_component(_alarm(timedelta(0), summary))
    return event


def _wait(agenda: Agenda, wait: Wait, number: int, stamp: datetime) -> Event:
    until = clock_from(wait.end, wait.start)
    alone = say("It goes on by itself to {hour}.", hour=until)
    words = f"{wait.task.text}\n{alone}"
    places = f" ({', '.join(wait.task.uses)})" if wait.task.uses else ""
    key = f"wait {number} {wait.task.id}"
    event = _event(agenda, key, wait, f"{title(wait.task)}{places}", words, stamp, free=True)
    if wait.then is not None:
        event.add_component(_alarm(timedelta(0), over(wait), at_end=True))
    return event


def _event(
    agenda: Agenda,
    key: str,
    stretch: Stretch,
    summary: str,
    description: str,
    stamp: datetime,
    *,
    free: bool = False,
) -> Event:
    from icalendar import Event

    event = Event()
    event.add("uid", uid(agenda, key))
    event.add("dtstamp", stamp.astimezone(UTC))
    event.add("sequence", int(stamp.timestamp() // 60))
    event.add("dtstart", stretch.start.astimezone(UTC))
    event.add("dtend", stretch.end.astimezone(UTC))
    event.add("summary", text(summary))
    event.add("description", text(description))
    event.add("transp", "TRANSPARENT" if free else "OPAQUE")
    return event


def uid(agenda: Agenda, key: str) -> str:
    """Name of an event in the whole world: the same for the same step of the same occasion."""
    occasion = [f"{each.dessert} {each.at.date().isoformat()}" for each in agenda.served]
    return str(uuid5(NAMESPACE, "\n".join([*occasion, key])))


def _alarm(after: timedelta, words: str, *, at_end: bool = False) -> Alarm:
    """A reminder so long after the start, or after the end, of its event."""
    from icalendar import Alarm

    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("description", text(words))
    alarm.add("trigger", after, parameters={"RELATED": "END" if at_end else "START"})
    return alarm
