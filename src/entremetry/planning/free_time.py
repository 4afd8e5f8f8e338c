"""Where the first minute of some hands-on work may lie, given the hours of a person."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise

from entremetry.planning.resource import Person, Session, Window

Stretches = list[list[int]]
"""First and last minute of each stretch, both included."""


def starts_in(windows: Iterable[Window], minutes: int) -> Stretches:
    """Starts of work of that length that lies wholly in one of the windows."""
    found = ([w.start, w.end - minutes] for w in windows if w.end - minutes >= w.start)
    return sorted(found)


def planned_windows(person: Person) -> list[Window]:
    """Free windows of a person; work never reaches from one into the next."""
    return [window for session in person.planned for window in session.windows]


def outside(allowed: Stretches, start: int, end: int) -> Stretches:
    """Minutes from start to end, both included, that lie in none of the stretches."""
    edges = [start - 1, *(edge for stretch in allowed for edge in stretch), end + 1]
    gaps = zip(edges[::2], edges[1::2], strict=True)
    return [[before + 1, after - 1] for before, after in gaps if after - before > 1]


def absences(person: Person, start: int, end: int) -> list[Window]:
    """Stretches of the horizon without a planned window; of no length where two touch."""
    windows = planned_windows(person)
    edges = [Window(start=start, end=start), *windows, Window(start=end, end=end)]
    gaps = [(one.end, other.start) for one, other in pairwise(edges)]
    return [Window(start=a, end=b) for a, b in gaps if b >= a]


def with_overtime(sessions: Sequence[Session]) -> dict[str, int]:
    """How long each session could last more: its overtime, or up to the next session."""
    room: dict[str, int] = {}
    for index, session in enumerate(sessions):
        later = sessions[index + 1].start if index + 1 < len(sessions) else None
        room[session.id] = (
            session.overtime if later is None else min(session.overtime, later - session.end)
        )
    return room
