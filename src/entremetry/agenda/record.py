"""What has happened at the bench since a plan was made."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """When a task really began and ended, as far as it has; times carry their zone."""

    task: str
    started: datetime
    ended: datetime | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """What is done or under way at a moment.

    `lasts` gives tasks that turn out longer or shorter, in minutes from start to end ('the
    freezer was slow'); `again` names tasks that failed and are made anew with all that led to them
    (the mousse split); `not_before` holds the cook back ('I start an hour late').
    """

    now: datetime
    entries: tuple[Entry, ...] = ()
    lasts: tuple[tuple[str, int], ...] = ()
    again: tuple[str, ...] = ()
    not_before: datetime | None = None
