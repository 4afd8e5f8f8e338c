"""A plan taken apart: each go at the bench, each wait, and which of them a session holds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Protocol

from entremetry.agenda.agenda import Agenda, AgendaSession, AgendaTask, State
from entremetry.agenda.local_time import minutes_between

AT_ONCE = 5
"""Work that begins so many minutes after a wait is what the wait was for."""


class Stretch(Protocol):
    """Anything with a start and an end."""

    @property
    def start(self) -> datetime:
        """When it begins."""

    @property
    def end(self) -> datetime:
        """When it is over."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """One person at one step without a break; several `tasks` where they are done in one go.

    `again` tells that the same step had hands before.
    """

    tasks: tuple[AgendaTask, ...]
    person: str
    start: datetime
    end: datetime
    again: bool = False

    @property
    def task(self) -> AgendaTask:
        """The first of its tasks."""
        return self.tasks[0]

    @property
    def minutes(self) -> int:
        """How long it lasts."""
        return minutes_between(self.start, self.end)


@dataclass(frozen=True, slots=True, kw_only=True)
class Wait:
    """A stretch in which a step goes on by itself; `then` is the step whose hands end it."""

    task: AgendaTask
    start: datetime
    end: datetime
    then: AgendaTask | None = None

    @property
    def minutes(self) -> int:
        """How long it lasts."""
        return minutes_between(self.start, self.end)


def works(agenda: Agenda) -> tuple[Work, ...]:
    """All goes at the bench in order of time."""
    found = [work for group in _groups(agenda.tasks) for work in _works(group)]
    return tuple(sorted(found, key=lambda work: (*order(work), work.task.id)))


def waits(agenda: Agenda) -> tuple[Wait, ...]:
    """All waits in order of time."""
    at_the_bench = works(agenda)
    found = [
        Wait(task=task, start=start, end=end, then=_then(task, end, at_the_bench))
        for task in agenda.tasks
        if not past(task)
        for start, end in _gaps(task)
    ]
    return tuple(sorted(found, key=lambda wait: (*order(wait), wait.task.id)))


def past(task: AgendaTask) -> bool:
    """Whether a task is over and its hands are no longer known: neither work nor wait is left."""
    return task.state is State.DONE and not task.hands


def within(session: AgendaSession, all_works: Sequence[Work]) -> tuple[Work, ...]:
    """The goes of one session."""
    return tuple(
        work for work in all_works if work.person == session.person and overlap(work, session)
    )


def outside(agenda: Agenda) -> tuple[Work, ...]:
    """The goes that lie in no session."""
    every = works(agenda)
    held = {id(work) for session in agenda.sessions for work in within(session, every)}
    return tuple(work for work in every if id(work) not in held)


def meanwhile(stretch: Stretch, all_waits: Sequence[Wait]) -> tuple[Wait, ...]:
    """The waits that run at some time of a stretch."""
    return tuple(wait for wait in all_waits if overlap(wait, stretch))


def next_to(work: Work, all_waits: Sequence[Wait]) -> tuple[Wait, ...]:
    """The wait that begins when hands leave a step, if one does."""
    begun = [
        wait
        for wait in all_waits
        if wait.task in work.tasks and minutes_between(work.end, wait.start) == 0
    ]
    return tuple(begun[:1])


def order(stretch: Stretch) -> tuple[float, float]:
    """What sorts stretches by time, also where the clocks are set back between them."""
    return stretch.start.timestamp(), stretch.end.timestamp()


def lasts(stretch: Stretch) -> bool:
    """Whether a stretch is a minute or longer."""
    return minutes_between(stretch.start, stretch.end) > 0


def overlap(one: Stretch, two: Stretch) -> bool:
    """Whether two stretches share some time."""
    (start, end), (other_start, other_end) = order(one), order(two)
    return start < other_end and other_start < end


def _groups(tasks: Sequence[AgendaTask]) -> list[tuple[AgendaTask, ...]]:
    """Tasks that are done in one go stand together, at the place of the first."""
    groups: dict[frozenset[str], list[AgendaTask]] = {}
    for task in tasks:
        groups.setdefault(frozenset((task.id, *task.together)), []).append(task)
    return [tuple(group) for group in groups.values()]


def _works(group: tuple[AgendaTask, ...]) -> list[Work]:
    """Stretches at a group of tasks, those of one person joined where they meet."""
    every = {(h.person, *order(h)): h for task in group for h in task.hands if lasts(h)}
    joined: list[Work] = []
    for _, hands in sorted(every.items()):
        last = joined[-1] if joined else None
        if last and last.person == hands.person and minutes_between(last.end, hands.start) <= 0:
            joined[-1] = replace(last, end=max(last.end, hands.end, key=datetime.timestamp))
        else:
            joined.append(Work(tasks=group, person=hands.person, start=hands.start, end=hands.end))
    first = min((order(work)[0] for work in joined), default=0.0)
    return [replace(work, again=order(work)[0] > first) for work in joined]


def _gaps(task: AgendaTask) -> list[tuple[datetime, datetime]]:
    """Stretches of a task in which nobody works on it."""
    gaps, here = [], task.start
    for hands in sorted(task.hands, key=order):
        if minutes_between(here, hands.start) > 0:
            gaps.append((here, hands.start))
        here = max(here, hands.end, key=datetime.timestamp)
    return [*gaps, (here, task.end)] if minutes_between(here, task.end) > 0 else gaps


def _then(task: AgendaTask, end: datetime, at_the_bench: Sequence[Work]) -> AgendaTask | None:
    """The step that takes up what has waited: itself, else one of its component, else dessert."""
    following = [
        each
        for work in at_the_bench
        if 0 <= minutes_between(end, work.start) <= AT_ONCE
        for each in work.tasks
        if each.dessert == task.dessert
    ]
    own = [each for each in following if each.id == task.id]
    near = [each for each in following if each.component == task.component]
    return next(iter((*own, *near, *following)), None)
