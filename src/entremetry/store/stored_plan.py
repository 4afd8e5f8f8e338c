"""Kept plans and what was told from the bench, as the store gives them back."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum


class Happening(StrEnum):
    """What can be told of a task at the bench."""

    BEGUN = "begun"
    LEFT = "left"  # the hands are off it, from here on it waits
    DONE = "done"
    NOT_YET = "not yet"  # what was told of it before was a slip
    TAKES = "takes"  # so many minutes from start to end
    AGAIN = "again"  # it failed and is made again
    HELD = "held"  # nobody is at the bench for so many minutes; of no task


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptPlan:
    """A plan as text; bench entries up to the number `heard` are part of it already."""

    id: int
    made_at: datetime
    name: str
    text: str
    heard: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchEntry:
    """One thing told from the bench; `key` is the teller's own, so that it counts once.

    `at` is when it happened, `number` its place in the order in which entries came in.
    """

    key: str
    what: Happening
    at: datetime
    task: str = ""
    minutes: int = 0
    number: int = 0

    @property
    def until(self) -> datetime:
        """End of the minutes, counted from when it was told."""
        return self.at + timedelta(minutes=self.minutes)
