"""Days, hours and progress as the pages of plans say them."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime

from entremetry.agenda.goals import best_so_far, goal_name
from entremetry.agenda.local_time import clock
from entremetry.agenda.local_time import day as full_day
from entremetry.planning import Goal, Progress
from entremetry.publish.typography import NO_BREAK, hours
from entremetry.words import say, say_later, weekday

FIRST = say_later("Working out how long each step takes, then looking for a first plan.")


def day(moment: datetime) -> str:
    """Weekday, day and month, the last two kept together."""
    before, _, month = full_day(moment).rpartition(" ")
    return f"{before}{NO_BREAK}{month}"


def clock_from(moment: datetime, seen: datetime) -> str:
    """Hour and minute, with the weekday if it is another day."""
    if moment.date() == seen.date():
        return clock(moment)
    return f"{weekday(moment.date())} {clock(moment)}"


def lasting(minutes: int) -> str:
    """Minutes as hours and minutes."""
    return hours(60.0 * minutes)


def moved_words(minutes: int) -> str:
    """By how much something moved, in words; empty if it did not."""
    if not minutes:
        return ""
    time = lasting(abs(minutes))
    return say("{time} later", time=time) if minutes > 0 else say("{time} earlier", time=time)


def progress_rows(best: Mapping[Goal | None, Progress]) -> tuple[tuple[str, str], ...]:
    """The best so far for each goal: its name, and what was reached."""
    return tuple(
        (goal_name(goal), best_so_far(goal, found))
        for goal, found in best.items()
        if goal is not None
    )
