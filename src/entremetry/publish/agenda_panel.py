"""One day of a plan on a drawing: its lanes, its words and where each moment stands."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from entremetry.agenda.agenda import Agenda, AgendaSession, AgendaTask, Served
from entremetry.agenda.local_time import minutes_between
from entremetry.publish.agenda_axis import Axis, axis
from entremetry.publish.agenda_days import Wait, Work, order, outside, past, waits, works
from entremetry.publish.agenda_rows import Lane, Row, all_rows, done_row, lane_of, stacked

CLOCK = 40.0  # width of the column of hours
HEAD = 40.0  # height of the name of a day
SESSION_HEAD = 40.0
SESSION_FOOT = 8.0
WIDEST_LANE, NARROWEST_LANE = 24.0, 7.0
NIGHT = (time(22), time(6))


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """Everything of one day in its place; lanes hold their middles across."""

    day: date
    left: float
    width: float
    words_at: float
    lanes: Mapping[Lane, float]
    lane_width: float
    axis: Axis
    start: datetime
    end: datetime
    rows: tuple[Row, ...]
    works: tuple[Work, ...]
    waits: tuple[Wait, ...]
    past: tuple[AgendaTask, ...]
    sessions: tuple[AgendaSession, ...]
    served: tuple[Served, ...]
    nights: tuple[tuple[datetime, datetime], ...]

    @property
    def bottom(self) -> float:
        """Height of its foot."""
        return self.axis.bottom


def days(agenda: Agenda) -> tuple[date, ...]:
    """Each day from the first step to the last service."""
    starts = [task.start for task in agenda.tasks]
    ends = [*(task.end for task in agenda.tasks), *(each.at for each in agenda.served)]
    if not starts:
        return ()
    first, last = min(starts, key=datetime.timestamp).date(), max(ends, key=datetime.timestamp)
    count = (last.date() - first).days + 1
    return tuple(first + timedelta(days=k) for k in range(count))


def panel(
    agenda: Agenda, day: date, *, left: float, top: float, width: float, brief: bool = False
) -> Panel:
    """One day between two edges of a drawing, its name at the top.

    A `brief` one has words only where a component is begun, and away from the bench.
    """
    start, end = bounds(agenda, day)
    todays = tuple(each for each in works(agenda) if start <= each.start < end)
    waiting = tuple(each for each in waits(agenda) if each.start < end and each.end > start)
    lanes, lane_width = laid_out(agenda, start, end, left, width)
    words_at = left + CLOCK + lane_width * len(lanes) + 10.0
    sessions = tuple(each for each in agenda.sessions if start <= each.start < end)
    served = tuple(each for each in agenda.served if start <= each.at <= end)
    column = left + width - words_at - 6.0
    told = begun(agenda, todays) if brief else todays
    over = tuple(each for each in agenda.tasks if past(each) and start <= each.start < end)
    rows = stacked(
        [*all_rows(agenda, told, waiting, served, (start, end), column), *done_row(over)]
    )
    nights = dark(day, start, end, ZoneInfo(agenda.zone))
    return Panel(
        day=day,
        left=left,
        width=width,
        words_at=words_at,
        lanes=lanes,
        lane_width=lane_width,
        axis=axis_of(rows, sessions, nights, (start, end), top + HEAD),
        start=start,
        end=end,
        rows=rows,
        works=todays,
        waits=waiting,
        past=over,
        sessions=sessions,
        served=served,
        nights=nights,
    )


def begun(agenda: Agenda, todays: Sequence[Work]) -> tuple[Work, ...]:
    """The goes with which a component is begun, and those that lie in no session."""
    first: dict[Lane, Work] = {}
    for work in works(agenda):
        for task in work.tasks:
            first.setdefault(lane_of(task), work)
    kept = (*first.values(), *outside(agenda))
    return tuple(work for work in todays if work in kept)


def bounds(agenda: Agenda, day: date) -> tuple[datetime, datetime]:
    """From when to when a day is drawn: midnights, but for the first start and the last end."""
    zone = ZoneInfo(agenda.zone)
    midnight = datetime.combine(day, time(), zone)
    next_ = datetime.combine(day + timedelta(days=1), time(), zone)
    every = days(agenda)
    if day == every[0]:
        midnight = min((task.start for task in agenda.tasks), key=datetime.timestamp)
    if day == every[-1]:
        ends = [*(task.end for task in agenda.tasks), *(each.at for each in agenda.served)]
        next_ = max(ends, key=datetime.timestamp)
    return midnight, next_


def laid_out(
    agenda: Agenda, start: datetime, end: datetime, left: float, width: float
) -> tuple[dict[Lane, float], float]:
    """Middle of the lane of each component at work that day, by dessert, and how wide one is."""
    there = [task for task in agenda.tasks if task.start < end and task.end > start]
    desserts = list(dict.fromkeys(task.dessert for task in agenda.tasks))
    there.sort(key=lambda task: (desserts.index(task.dessert), task.start.timestamp()))
    lanes = list(dict.fromkeys(lane_of(task) for task in there))
    wide = min(max(0.32 * (width - CLOCK) / max(len(lanes), 1), NARROWEST_LANE), WIDEST_LANE)
    return {lane: left + CLOCK + wide * (k + 0.5) for k, lane in enumerate(lanes)}, wide


def axis_of(
    rows: Sequence[Row],
    sessions: Sequence[AgendaSession],
    nights: Sequence[tuple[datetime, datetime]],
    bounds_: tuple[datetime, datetime],
    top: float,
) -> Axis:
    """Axis with room for the words of every row and the head of every session."""
    below: dict[float, float] = {}
    above: dict[float, float] = {}
    for row in rows:
        time_ = row.at.timestamp()
        below[time_] = below.get(time_, 0.0) + row.height
    for session in sessions:
        start, end = order(session)
        above[start] = above.get(start, 0.0) + SESSION_HEAD
        below[end] = below.get(end, 0.0) + SESSION_FOOT
    knots = [*bounds_, *(row.at for row in rows), *(m for night in nights for m in night)]
    knots += [moment for session in sessions for moment in (session.start, session.end)]
    low, high = (moment.timestamp() for moment in bounds_)
    return axis(
        [knot for knot in knots if low <= knot.timestamp() <= high],
        top=top,
        below=below,
        above=above,
        busy=map(order, sessions),
    )


def dark(
    day: date, start: datetime, end: datetime, zone: ZoneInfo
) -> tuple[tuple[datetime, datetime], ...]:
    """The parts of a day that are night."""
    evening, morning = NIGHT
    parts = (
        (start, min(datetime.combine(day, morning, zone), end)),
        (max(datetime.combine(day, evening, zone), start), end),
    )
    return tuple((a, b) for a, b in parts if minutes_between(a, b) > 0)
