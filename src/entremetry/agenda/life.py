"""What has happened at the bench, as history and as what a plan made anew has to respect."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from entremetry.agenda.draft import WEIGHTS
from entremetry.agenda.keeping import Limit
from entremetry.agenda.local_time import Clock
from entremetry.agenda.moulding import AT_ONCE
from entremetry.agenda.record import Record
from entremetry.planning import Done, History, Person, Problem, Running, Task, Window


def history(record: Record, clock: Clock, *, failed: frozenset[str] = frozenset()) -> History:
    """What is done or under way, without what failed."""
    now = clock.minute(record.now)
    told = [entry for entry in record.entries if entry.task not in failed]
    return History(
        now=now,
        done=tuple(
            Done(task=e.task, start=clock.minute(e.started), end=clock.minute(e.ended))
            for e in told
            if e.ended is not None
        ),
        running=tuple(
            Running(task=e.task, start=clock.minute(e.started)) for e in told if e.ended is None
        ),
    )


def to_make_again(problem: Problem, record: Record) -> frozenset[str]:
    """Tasks that must be done once more: what failed, what it was made of, what was made of it.

    What went before counts as far as the work could not stop in between: an insert that waited in
    the freezer is still there.
    """
    told = {entry.task for entry in record.entries}
    found, left = set(record.again), list(record.again)
    while left:
        task = left.pop()
        for delay in problem.delays:
            bound = delay.most is not None and delay.most < AT_ONCE
            near = delay.before if delay.after == task and bound else None
            near = delay.after if delay.before == task else near
            if near is not None and near in told and near not in found:
                found.add(near)
                left.append(near)
    return frozenset(found)


def yielding(problem: Problem) -> Problem:
    """A problem in which limits of craft may give: what is done cannot be undone."""
    safety = WEIGHTS[Limit.SAFETY]
    delays = tuple(replace(d, firm=d.firm and d.weight >= safety) for d in problem.delays)
    return replace(problem, delays=delays)


def with_lengths(problem: Problem, lasts: Iterable[tuple[str, int]]) -> Problem:
    """A problem in which some tasks last as long as they turn out to."""
    changed = tuple(lasting(problem.task(task), minutes) for task, minutes in lasts)
    return problem.with_tasks(*changed)


def lasting(task: Task, minutes: int) -> Task:
    """A task that lasts so many minutes from start to end: its wait gives, else its hands."""
    wait = minutes - task.hands_on - task.closing
    if wait >= 0:
        longest = None if task.waiting_most is None else max(task.waiting_most, wait)
        return replace(task, waiting=wait, waiting_most=longest)
    return replace(task, hands_on=max(0, minutes - task.closing), waiting=0)


def held_back(problem: Problem, minute: int) -> Problem:
    """A problem in which nobody works before a minute."""
    return problem.with_people(*(_later(person, minute) for person in problem.people))


def _later(person: Person, minute: int) -> Person:
    sessions = []
    for session in person.sessions:
        windows = tuple(
            Window(start=max(window.start, minute), end=window.end)
            for window in session.windows
            if window.end > minute
        )
        if windows:
            sessions.append(replace(session, windows=windows))
    return Person(id=person.id, sessions=tuple(sessions))
