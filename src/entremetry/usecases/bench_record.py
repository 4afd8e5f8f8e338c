"""From what was told at the bench to the record that planning anew starts from."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from entremetry.agenda.agenda import Agenda, AgendaTask, State
from entremetry.agenda.record import Entry, Record
from entremetry.store import BenchEntry, Happening


@dataclass(slots=True)
class _Told:
    """What is known of one task so far."""

    started: datetime | None = None
    ended: datetime | None = None
    lasts: int | None = None
    again: bool = False


def record(agenda: Agenda, told: Sequence[BenchEntry], *, heard: int, now: datetime) -> Record:
    """What is done and under way at a moment.

    Entries up to the number `heard` were heard when this plan was made: its own states and times
    tell of them, but how long a task lasts is said once for all plans. Later entries count in the
    order of their times. Entries about tasks that the plan does not hold are left out. A wait that
    nobody has to end is done when its minutes are over.
    """
    tasks = {task.id: task for task in agenda.tasks}
    of_tasks = {task.id: _so_far(task) for task in agenda.tasks}
    ours = sorted(
        (entry for entry in told if entry.task in tasks),
        key=lambda entry: (entry.number > heard, entry.at, entry.number),
    )
    for entry in ours:
        if entry.number <= heard:
            _hear_length(of_tasks[entry.task], entry)
        else:
            _hear(of_tasks[entry.task], entry, tasks[entry.task])
    for task in agenda.tasks:
        _end_by_itself(of_tasks[task.id], task, now)
    holds = [entry.until for entry in told if entry.what is Happening.HELD and entry.until > now]
    return Record(
        now=now,
        entries=tuple(
            Entry(task=task, started=known.started, ended=known.ended)
            for task, known in of_tasks.items()
            if known.started is not None
        ),
        lasts=tuple(
            (task, known.lasts) for task, known in of_tasks.items() if known.lasts is not None
        ),
        again=tuple(task for task, known in of_tasks.items() if known.again),
        not_before=max(holds, default=None),
    )


def _so_far(task: AgendaTask) -> _Told:
    if task.state is State.TO_COME:
        return _Told()
    return _Told(started=task.start, ended=task.end if task.state is State.DONE else None)


def _hear_length(known: _Told, entry: BenchEntry) -> None:
    if entry.what is Happening.TAKES:
        known.lasts = entry.minutes
    elif entry.what is Happening.AGAIN:
        known.lasts = None


def _hear(known: _Told, entry: BenchEntry, task: AgendaTask) -> None:
    _hear_length(known, entry)
    if entry.what is Happening.BEGUN:
        known.started, known.ended = entry.at, None
    elif entry.what is Happening.LEFT:
        known.started = known.started or entry.at - timedelta(minutes=_hands_first(task))
        known.lasts = _minutes(known.started, entry.at) + task.minutes - _hands_first(task)
    elif entry.what is Happening.DONE:
        known.started = known.started or entry.at - timedelta(minutes=task.minutes)
        known.ended = max(entry.at, known.started)
    elif entry.what in (Happening.NOT_YET, Happening.AGAIN):
        known.started = known.ended = None
    if entry.what is not Happening.TAKES:
        known.again = entry.what is Happening.AGAIN


def _end_by_itself(known: _Told, task: AgendaTask, now: datetime) -> None:
    """End a wait that nobody has to end and whose minutes are over."""
    if known.started is None or known.ended is not None or not task.waiting:
        return
    end = known.started + timedelta(minutes=known.lasts or task.minutes)
    if len(task.hands) < 2 and end <= now:
        known.ended = end


def _hands_first(task: AgendaTask) -> int:
    return _minutes(task.hands[0].start, task.hands[0].end) if task.hands else 0


def _minutes(start: datetime, end: datetime) -> int:
    return round((end.timestamp() - start.timestamp()) / 60.0)
