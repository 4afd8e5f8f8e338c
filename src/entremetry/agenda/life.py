"""What has happened at the bench, as history and as what a plan made anew has to respect."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from entremetry.agenda.draft import WEIGHTS
from entremetry.agenda.keeping import Limit
from entremetry.agenda.local_time import Clock
from entremetry.agenda.moulding import AT_ONCE
from entremetry.agenda.record import Record
from entremetry.errors import ProblemError, did_you_mean, nearest_names
from entremetry.planning import Done, History, Person, Problem, Running, Task, Window
from entremetry.words import say

LASTS_AT_MOST = 30 * 1440
"""Minutes of the longest task that can be told of."""


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
    the freezer is still there. What else was made of that in time is good and stays.
    """
    told = {entry.task for entry in record.entries}
    done_as = {
        task: merge.together.id
        for merge in problem.merges
        if merge.together.id in told
        for task in merge.tasks
    }
    onward: dict[str, set[str]] = {}
    back: dict[str, set[str]] = {}
    for delay in problem.delays:
        before, after = (done_as.get(name, name) for name in (delay.before, delay.after))
        onward.setdefault(before, set()).add(after)
        if delay.most is not None and delay.most < AT_ONCE:
            back.setdefault(after, set()).add(before)
    failed = reached({done_as.get(name, name) for name in record.again}, onward, told)
    return reached(failed, back, told)


def reached(tasks: Iterable[str], steps: Mapping[str, set[str]], among: set[str]) -> frozenset[str]:
    """Tasks, and all that one comes to from them by steps to some others."""
    found, left = set(tasks), list(tasks)
    while left:
        for near in steps.get(left.pop(), ()):
            if near in among and near not in found:
                found.add(near)
                left.append(near)
    return frozenset(found)


def require_known(problem: Problem, record: Record) -> None:
    """Refuse a record of tasks that are not in the problem, or of lengths that cannot be.

    Raises
    ------
    ProblemError
        With all faults at once.
    """
    known = {task.id for task in problem.all_tasks}
    lengths = dict(record.lasts)
    told = dict.fromkeys([*(e.task for e in record.entries), *record.again, *lengths])
    faults = [
        say("no task is called '{name}'", name=name) + did_you_mean(nearest_names(name, known))
        for name in told
        if name not in known
    ]
    faults += [
        say(
            "task '{name}' lasts {minutes} minutes; accepted: 0 to {most}",
            name=name,
            minutes=minutes,
            most=LASTS_AT_MOST,
        )
        for name, minutes in lengths.items()
        if not 0 <= minutes <= LASTS_AT_MOST
    ]
    if faults:
        raise ProblemError(faults)


def yielding(problem: Problem) -> Problem:
    """A problem in which limits of craft may give: what is done cannot be undone."""
    safety = WEIGHTS[Limit.SAFETY]
    delays = tuple(replace(d, firm=d.firm and d.weight >= safety) for d in problem.delays)
    return replace(problem, delays=delays)


def with_lengths(problem: Problem, lasts: Iterable[tuple[str, int]]) -> Problem:
    """A problem in which some tasks last as long as they turn out to."""
    lengths = dict(lasts)

    def changed(task: Task) -> Task:
        return lasting(task, lengths[task.id]) if task.id in lengths else task

    return replace(
        problem,
        tasks=tuple(changed(task) for task in problem.tasks),
        merges=tuple(replace(m, together=changed(m.together)) for m in problem.merges),
    )


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
