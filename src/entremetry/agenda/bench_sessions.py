"""The stretches of a plan in which somebody works."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from entremetry.agenda.agenda import AgendaSession
from entremetry.agenda.local_time import Clock
from entremetry.planning import Person, Plan, Problem, Session

Work = tuple[int, int, str]
"""First minute, last minute and task of a stretch of hands."""


def sessions(problem: Problem, plan: Plan, clock: Clock) -> tuple[AgendaSession, ...]:
    """Sessions in which somebody works, in order."""
    found = [each for person in problem.people for each in _of_person(person, plan, clock)]
    return tuple(sorted(found, key=lambda each: each.start))


def _of_person(person: Person, plan: Plan, clock: Clock) -> Iterator[AgendaSession]:
    work = sorted(
        (hand.start, hand.end, placed.task)
        for placed in plan.placed
        for hand in placed.hands
        if hand.person == person.id and not placed.within
    )
    for session, group in groupby(work, key=lambda each: session_at(person, each[0])):
        yield _session(person, session, list(group), clock)


def session_at(person: Person, minute: int) -> Session:
    """The session that somebody works in: the last that began; overtime belongs to it."""
    return [session for session in person.sessions if session.start <= minute][-1]


def _session(person: Person, session: Session, work: list[Work], clock: Clock) -> AgendaSession:
    """One session with work in it, in order of the work."""
    start, end = work[0][0], max(stop for _, stop, _ in work)
    hands_on = sum(stop - begin for begin, stop, _ in work)
    return AgendaSession(
        id=f"{session.id}, {person.id}",
        person=person.id,
        start=clock.moment(start),
        end=clock.moment(end),
        tasks=tuple(dict.fromkeys(task for _, _, task in work)),
        hands_on=hands_on,
        idle=end - start - hands_on,
    )
