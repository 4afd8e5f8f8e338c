"""A plan arranged as it is read: days, sessions in them, steps in these."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime

from entremetry.agenda.agenda import Agenda, AgendaSession, AgendaTask, Served, State
from entremetry.agenda.local_time import clock, minutes_between
from entremetry.publish.agenda_wording import pieces
from entremetry.web.plan_words import clock_from, day, lasting, moved_words
from entremetry.words import say, say_as, say_count


@dataclass(frozen=True, slots=True, kw_only=True)
class StepShown:
    """One step; `hands` and `waits` are minutes in words, empty if there are none.

    `rest` is true where a later session only ends what an earlier one began.
    """

    task: str
    time: str
    what: str
    dessert: str
    text: str
    hands: str
    waits: str
    until: str
    rest: bool
    amounts: tuple[str, ...]
    uses: tuple[str, ...]
    because: str
    together: tuple[str, ...]
    state: State
    moved: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionShown:
    """A stretch of work, its steps, and what is left to itself when it ends."""

    id: str
    title: str
    effort: str
    steps: tuple[StepShown, ...]
    left: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DayShown:
    """A day with its sessions, with what goes on without hands, and with what is served."""

    name: str
    sessions: tuple[SessionShown, ...]
    alone: tuple[StepShown, ...]
    served: tuple[str, ...]


def days_shown(
    tasks: Iterable[AgendaTask],
    sessions: Iterable[AgendaSession],
    served: Iterable[Served],
) -> tuple[DayShown, ...]:
    """The days of a plan in their order."""
    named = {task.id: task for task in tasks}
    worked = tuple(sorted(sessions, key=lambda session: session.start))
    alone = [task for task in named.values() if not task.hands]
    plates = tuple(sorted(served, key=lambda each: each.at))
    dates = {
        moment.date(): moment
        for moment in (
            *(each.at for each in plates),
            *(task.start for task in alone),
            *(session.start for session in worked),
        )
    }
    return tuple(
        DayShown(
            name=day(dates[date]),
            sessions=tuple(_session(s, named) for s in worked if s.start.date() == date),
            alone=tuple(step(t, t.start, named) for t in alone if t.start.date() == date),
            served=tuple(served_words(each) for each in plates if each.at.date() == date),
        )
        for date in sorted(dates)
    )


def served_words(each: Served) -> str:
    """What is served at which hour."""
    return f"{clock(each.at)} {each.name}, {pieces(each.pieces)}"


def summary(agenda: Agenda) -> str:
    """When it is served, in how many sessions, with how much work."""
    hours = sorted({each.at for each in agenda.served})
    told = (say("{day}, {hour}", day=day(hour), hour=clock(hour)) for hour in hours)
    served = say_as("between two things", " and ").join(told)
    if not agenda.sessions:
        return say("For {served}", served=served)
    return say_count(
        "For {served}: {number} session, {work} hands-on",
        "For {served}: {number} sessions, {work} hands-on",
        len(agenda.sessions),
        served=served,
        work=lasting(sum(session.hands_on for session in agenda.sessions)),
    )


def _session(session: AgendaSession, named: Mapping[str, AgendaTask]) -> SessionShown:
    tasks = [named[task] for task in session.tasks if task in named]
    until = clock_from(session.end, session.start)
    return SessionShown(
        id=session.id,
        title=say("{first} to {last}", first=clock(session.start), last=until),
        effort=_effort(session),
        steps=tuple(step(task, session.start, named, session) for task in tasks),
        left=tuple(
            say("{what} until {hour}", what=_what(task), hour=clock_from(task.end, session.start))
            for task in tasks
            if task.waiting and task.end > session.end
        ),
    )


def _effort(session: AgendaSession) -> str:
    work = say("{time} hands-on", time=lasting(session.hands_on))
    if not session.idle:
        return work
    return say("{work}, {time} between", work=work, time=lasting(session.idle))


def step(
    task: AgendaTask,
    seen: datetime,
    named: Mapping[str, AgendaTask],
    session: AgendaSession | None = None,
) -> StepShown:
    """A step as it is read on the day of `seen`, with the hands that a session has in it."""
    hands = [
        one for one in task.hands if session is None or session.start <= one.start <= session.end
    ]
    minutes = sum(minutes_between(one.start, one.end) for one in hands)
    rest = bool(hands) and hands[0].start > task.hands[0].start
    others = [_what(named[other]) for other in task.together if other in named]
    return StepShown(
        task=task.id,
        time=clock_from(hands[0].start if hands else task.start, seen),
        what=_what(task),
        dessert=task.dessert_name,
        text=task.text,
        hands=lasting(minutes) if minutes else "",
        waits=lasting(task.waiting) if task.waiting and not rest else "",
        until=clock_from(task.end, seen),
        rest=rest,
        amounts=task.amounts,
        uses=task.uses,
        because=task.because,
        together=tuple(others),
        state=task.state,
        moved=moved_words(task.moved),
    )


def _what(task: AgendaTask) -> str:
    name = task.component_name or task.dessert_name
    if task.rounds <= 1:
        return name
    return say("{name}, round {number} of {all}", name=name, number=task.round, all=task.rounds)
