"""What the options of `replan` tell of the bench."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from entremetry.agenda.agenda import Agenda, AgendaTask, State
from entremetry.agenda.local_time import clock, day, local_time
from entremetry.agenda.record import Entry, Record
from entremetry.cli.plan_asking import whole_number
from entremetry.errors import EntremetryError, QuantityError, UnknownName
from entremetry.publish.agenda_wording import clock_from, title

HOUR = re.compile(r"\d\d:\d\d")


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What has happened, as it is written: 'ID' or 'ID=WHEN' or 'ID=MINUTES'.

    `as_planned` is what holds for tasks planned before now of which nothing is told: done as
    planned, or not begun; None asks.
    """

    now: str | None = None
    done: Sequence[str] = ()
    begun: Sequence[str] = ()
    left: Sequence[str] = ()
    takes: Sequence[str] = ()
    again: Sequence[str] = ()
    not_before: str | None = None
    as_planned: bool | None = None


def record_of(agenda: Agenda, told: Told) -> Record:
    """What is told of a plan, as a record of it.

    What a former record holds stays so unless it is told otherwise. Tasks that are done in one go
    are told of together.

    Raises
    ------
    EntremetryError
        If a task is not in the plan, an hour cannot be read or has yet to come, a task is told
        of twice, or nothing is told of a task that was planned to begin before now.
    """
    zone = ZoneInfo(agenda.zone)
    now = datetime.now(zone) if told.now is None else local_time(told.now, zone)
    tasks = {task.id: task for task in agenda.tasks}
    entries = _told_entries(told, tasks, now, zone)
    again = tuple(_known(name, tasks).id for name in told.again)
    for task in agenda.tasks:
        if task.id not in entries and task.state is not State.TO_COME:
            ended = task.end if task.state is State.DONE else None
            entries[task.id] = Entry(task=task.id, started=task.start, ended=ended)
    untold = [
        task
        for task in agenda.tasks
        if task.id not in entries and task.id not in again and _before(task.start, now)
    ]
    if untold and told.as_planned is None:
        raise EntremetryError(_question(untold, now))
    if told.as_planned:
        entries |= {task.id: _as_planned(task, now) for task in untold}
    return Record(
        now=now,
        entries=tuple(entry for entry in entries.values() if entry is not None),
        lasts=tuple(_lasting(text, tasks) for text in told.takes),
        again=again,
        not_before=None if told.not_before is None else local_time(told.not_before, zone),
    )


def _told_entries(
    told: Told, tasks: Mapping[str, AgendaTask], now: datetime, zone: ZoneInfo
) -> dict[str, Entry | None]:
    """Entries of what is said in so many words; None for what is not begun."""
    entries: dict[str, Entry | None] = {}
    named: set[str] = set()
    for make, texts in ((_done, told.done), (_begun, told.begun), (_left, told.left)):
        for text in texts:
            name, equals, hour = (part.strip() for part in text.partition("="))
            task = _known(name, tasks)
            if name in named:
                raise QuantityError(f"'{name}' told of twice", "one of --done, --begun, --left")
            named.add(name)
            when = _past(hour, now, zone) if equals else None
            entries |= {
                each: make(tasks[each], when, now)
                for each in (name, *(other for other in task.together if other in tasks))
                if each == name or each not in named
            }
    return entries


def _done(task: AgendaTask, when: datetime | None, now: datetime) -> Entry:
    ended = when or min(task.end, now, key=datetime.timestamp)
    lasted = timedelta(seconds=task.end.timestamp() - task.start.timestamp())
    latest = (ended.astimezone(UTC) - lasted).astimezone(ended.tzinfo)
    started = task.start if _before(task.start, ended) else latest
    return Entry(task=task.id, started=started, ended=ended)


def _begun(task: AgendaTask, when: datetime | None, now: datetime) -> Entry:
    return Entry(task=task.id, started=when or min(task.start, now, key=datetime.timestamp))


def _left(task: AgendaTask, when: datetime | None, now: datetime) -> None:
    """A task that is not begun has no entry."""
    if when is not None:
        raise QuantityError(f"'{task.id}' not begun at an hour", "--left ID alone")


def _as_planned(task: AgendaTask, now: datetime) -> Entry:
    over = not _before(now, task.end)
    return Entry(task=task.id, started=task.start, ended=task.end if over else None)


def _before(one: datetime, other: datetime) -> bool:
    return one.timestamp() < other.timestamp()


def _known(name: str, tasks: Mapping[str, AgendaTask]) -> AgendaTask:
    if name not in tasks:
        raise UnknownName("task of this plan", name, tasks)
    return tasks[name]


def _past(text: str, now: datetime, zone: ZoneInfo) -> datetime:
    """A moment that is not after now; an hour alone is the last time that it was that hour."""
    for day_ in (now.date(), now.date() - timedelta(days=1)):
        when = local_time(f"{day_} {text}" if HOUR.fullmatch(text) else text, zone)
        if not _before(now, when):
            return when
    raise QuantityError(f"'{text}', which is yet to come", "a moment that is past")


def _lasting(text: str, tasks: Mapping[str, AgendaTask]) -> tuple[str, int]:
    name, _, minutes = (part.strip() for part in text.partition("="))
    return _known(name, tasks).id, whole_number(minutes.removesuffix("min").strip())


def _question(untold: Sequence[AgendaTask], now: datetime) -> str:
    """What to say of tasks that should have begun."""
    lines = [
        f"  {task.id}  {title(task)}, {clock_from(task.start, now)} to {clock_from(task.end, now)}"
        for task in untold
    ]
    return "\n".join(
        [
            f"It is {day(now)}, {clock(now)}, and nothing is told of what was to begin before:",
            *lines,
            "Say for each: --done ID or --begun ID (or ID=WHEN), --left ID if it is not begun, "
            "--again ID if it failed; or for all others: --as-planned or --not-begun.",
        ]
    )
