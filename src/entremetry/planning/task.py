"""What has to be done: tasks in whole minutes, what they use, and how they follow one another."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Part(StrEnum):
    """Stretches of a task: hands first, then waiting, then hands that close it."""

    WHOLE = "whole"
    OPENING = "opening"
    WAITING = "waiting"
    CLOSING = "closing"


class Side(StrEnum):
    """Either end of a task."""

    START = "start"
    END = "end"


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """How much of a resource one part of a task takes up, and in what state it must be.

    `lasting` counts from the start of that part and replaces its length: a freezer that may take
    so many litres of warm things a day counts each for 1440 minutes.
    """

    resource: str
    amount: int = 1
    part: Part = Part.WHOLE
    state: str = ""
    lasting: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """A piece of work: hands for `hands_on` minutes, then waiting, then hands for `closing`.

    The wait takes `waiting` minutes, or anything up to `waiting_most`. `by` names who may do it
    (anybody if empty); `freshness` weighs how much each minute of age at the end matters. The
    longest wait and the latest end of a `firm` task never give in a plan that bends.
    """

    id: str
    hands_on: int = 0
    waiting: int = 0
    waiting_most: int | None = None
    closing: int = 0
    needs: tuple[Need, ...] = ()
    by: tuple[str, ...] = ()
    earliest: int | None = None
    latest: int | None = None
    freshness: int = 0
    firm: bool = False

    @property
    def longest_wait(self) -> int:
        """The longest the wait may last."""
        return self.waiting if self.waiting_most is None else self.waiting_most

    @property
    def elastic(self) -> bool:
        """Whether the wait may be shorter or longer."""
        return self.longest_wait > self.waiting

    @property
    def least(self) -> int:
        """Minutes from start to end at the shortest."""
        return self.hands_on + self.waiting + self.closing

    @property
    def most(self) -> int:
        """Minutes from start to end at the longest."""
        return self.hands_on + self.longest_wait + self.closing


@dataclass(frozen=True, slots=True, kw_only=True)
class Delay:
    """Minutes from one task to another: at least `least`, at most `most`; None is no limit.

    A `firm` limit is never given up in a plan that bends (food safety); `weight` says how much
    it hurts to exceed the others.
    """

    before: str
    after: str
    least: int | None = 0
    most: int | None = None
    leaving: Side = Side.END
    reaching: Side = Side.START
    firm: bool = False
    weight: int = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A resource taken up from one task to another, as a mould from filling to unmoulding."""

    id: str
    resource: str
    first: str
    last: str
    amount: int = 1
    leaving: Side = Side.START
    reaching: Side = Side.END


@dataclass(frozen=True, slots=True, kw_only=True)
class Merge:
    """Tasks that may be done as one: `together` then stands for all of `tasks`."""

    tasks: tuple[str, ...]
    together: Task


@dataclass(frozen=True, slots=True, kw_only=True)
class Service:
    """The task that ends exactly at this minute."""

    task: str
    at: int
    firm: bool = False
    weight: int = 2
