"""Days, hours and progress as the pages of plans say them."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime

from entremetry.agenda.local_time import clock
from entremetry.planning import Goal, Progress
from entremetry.publish.typography import NO_BREAK, hours
from entremetry.web.wording import counted

FIRST = "Working out how long each step takes, then looking for a first plan."
NAMES: Mapping[Goal, str] = {
    Goal.SESSIONS: "Sessions",
    Goal.BENCH: "At the bench",
    Goal.FRESHNESS: "Fresh when served",
    Goal.SPREAD: "Busiest session",
    Goal.FINISH: "Last step ends",
    Goal.MOVES: "Moved in all",
}
IN_MINUTES = frozenset({Goal.BENCH, Goal.SPREAD, Goal.MOVES})


def day(moment: datetime) -> str:
    """Weekday, day and month."""
    return f"{moment:%A} {moment.day}{NO_BREAK}{moment:%B}"


def clock_from(moment: datetime, seen: datetime) -> str:
    """Hour and minute, with the weekday if it is another day."""
    return clock(moment) if moment.date() == seen.date() else f"{moment:%A} {clock(moment)}"


def lasting(minutes: int) -> str:
    """Minutes as hours and minutes."""
    return hours(60.0 * minutes)


def moved_words(minutes: int) -> str:
    """By how much something moved, in words; empty if it did not."""
    if not minutes:
        return ""
    return f"{lasting(abs(minutes))} {'later' if minutes > 0 else 'earlier'}"


def progress_rows(best: Mapping[Goal | None, Progress]) -> tuple[tuple[str, str], ...]:
    """The best so far for each goal: its name, and what was reached."""
    return tuple(
        (NAMES[goal], _reached(goal, found)) for goal, found in best.items() if goal is not None
    )


def _reached(goal: Goal, found: Progress) -> str:
    proved = found.bound >= found.value
    if goal is Goal.SESSIONS:
        best = counted(found.value, "session", "sessions")
        return f"{best}, fewer cannot be" if proved else f"{best} so far"
    if goal in IN_MINUTES:
        best = lasting(found.value)
        return f"{best}, less cannot be" if proved else f"{best} so far"
    return "as good as can be" if proved else "being improved"
