"""Free hours of people as sessions of a plan."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from entremetry.agenda.local_time import Clock
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.kitchen.kitchen_document import Person as Cook
from entremetry.planning import Person, Session, Window
from entremetry.words import say

WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
ALONE = "the cook"
USUAL = ("08:00", "22:00")
WAKING = ("07:00", "23:00")
"""Hours in which one could work who has not planned to."""
Hours = tuple[str, str]

BREAK = 45
"""Minutes: free hours that lie closer together make one session."""
WORTH_OFFERING = 60


def people(kitchen: KitchenDocument | None, clock: Clock, end: int) -> tuple[Person, ...]:
    """Everybody with the sessions that lie between minute 0 and the end."""
    cooks = [cook for cook in kitchen.people if cook.free] if kitchen else []
    days = tuple(_days(clock, end))
    if not cooks:
        return (_person(ALONE, clock, end, [(day, [USUAL]) for day in days], frozenset()),)
    return tuple(
        _person(cook.name, clock, end, [(day, hours(cook, day)) for day in days], _away(cook))
        for cook in cooks
    )


def assumed(kitchen: KitchenDocument | None) -> str:
    """What is taken for granted about hours, if anything."""
    if kitchen is not None and any(cook.free for cook in kitchen.people):
        return ""
    return say(
        "Nobody's free hours are told: one cook is free from {first} to {last} each day.",
        first=USUAL[0],
        last=USUAL[1],
    )


def hours(cook: Cook, day: date) -> list[Hours]:
    """Free hours of somebody on a day, in order."""
    if day in _away(cook):
        return []
    dated = [each for each in cook.free if each.date and date.fromisoformat(each.date) == day]
    weekly = [each for each in cook.free if each.day == WEEKDAYS[day.weekday()]]
    return sorted((each.start, each.end) for each in (*dated, *weekly))


def _days(clock: Clock, end: int) -> Iterator[date]:
    day, last = clock.moment(0).date(), clock.moment(end).date()
    while day <= last:
        yield day
        day += timedelta(days=1)


def _away(cook: Cook) -> frozenset[date]:
    return frozenset(date.fromisoformat(day) for day in cook.away)


def _person(
    name: str,
    clock: Clock,
    end: int,
    days: list[tuple[date, list[Hours]]],
    away: frozenset[date],
) -> Person:
    sessions: list[Session] = []
    for day, free in days:
        windows = _clipped([_window(clock, day, each) for each in free], end)
        planned = _joined(windows)
        sessions.extend(_session(clock, group) for group in planned)
        waking = [] if day in away else _clipped([_window(clock, day, WAKING)], end)
        for gap in _gaps(waking, windows):
            if gap.end - gap.start >= WORTH_OFFERING:
                sessions.append(_session(clock, [gap], offered=True))
    return Person(id=name, sessions=tuple(sorted(sessions, key=lambda each: each.start)))


def _window(clock: Clock, day: date, free: Hours) -> Window:
    return Window(start=clock.at(day, free[0]), end=clock.at(day, free[1]))


def _clipped(windows: list[Window], end: int) -> list[Window]:
    """Windows between minute 0 and the end, those that overlap as one."""
    found: list[Window] = []
    for window in windows:
        start, stop = max(0, window.start), min(end, window.end)
        if found and start <= found[-1].end:
            found[-1] = Window(start=found[-1].start, end=max(found[-1].end, stop))
        elif stop > start:
            found.append(Window(start=start, end=stop))
    return found


def _joined(windows: list[Window]) -> list[list[Window]]:
    """Windows with short breaks between them, together."""
    groups: list[list[Window]] = []
    for window in windows:
        if groups and window.start - groups[-1][-1].end <= BREAK:
            groups[-1].append(window)
        else:
            groups.append([window])
    return groups


def _gaps(waking: list[Window], taken: list[Window]) -> Iterator[Window]:
    """What is left of the waking hours."""
    for whole in waking:
        start = whole.start
        for window in taken:
            if start < min(window.start, whole.end):
                yield Window(start=start, end=min(window.start, whole.end))
            start = max(start, window.end)
        if start < whole.end:
            yield Window(start=start, end=whole.end)


def _session(clock: Clock, windows: list[Window], *, offered: bool = False) -> Session:
    return Session(id=clock.said(windows[0].start), windows=tuple(windows), offered=offered)
