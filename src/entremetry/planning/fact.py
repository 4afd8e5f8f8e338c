"""Facts of a problem that a plan may collide with, and how far each would have to give."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class FactKind(StrEnum):
    """What sort of fact it is."""

    LASTS = "lasts"  # (task): takes at least `minutes`
    WAIT_MOST = "waits at most"  # (task): its wait is at most `minutes`
    AT_LEAST = "at least"  # (before, after): at least `minutes` between them
    AT_MOST = "at most"  # (before, after): at most `minutes` between them
    SERVICE = "service"  # (task): ends at minute `minutes`
    EARLIEST = "earliest"  # (task): starts not before minute `minutes`
    LATEST = "latest"  # (task): ends not after minute `minutes`
    HORIZON = "horizon"  # (): everything from `minutes` to `until`
    ABSENCE = "absence"  # (person): not free from `minutes` to `until`
    SESSION = "session"  # (person, session): free until `minutes`
    OFFERED = "offered"  # (person, session): a session that is not planned, from `minutes`
    CAPACITY = "capacity"  # (resource): only `minutes` of it
    HANDS_WANTED = "hands wanted"  # (tasks...): `minutes` of hands, all within one stretch
    HANDS_FREE = "hands free"  # (people...): `minutes` of free hands in that stretch
    USE_WANTED = "use wanted"  # (resource, tasks...): unit-minutes wanted in one stretch
    USE_FREE = "use free"  # (resource): unit-minutes there are in that stretch


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """One fact in terms of ids and minutes; `FactKind` says what they mean.

    `sides` tells two limits between the same tasks apart.
    """

    kind: FactKind
    subjects: tuple[str, ...] = ()
    minutes: int = 0
    until: int = 0
    sides: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Conflict:
    """Facts that cannot all hold; without any one of them the rest can, if it is `smallest`."""

    facts: tuple[Fact, ...]
    smallest: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """A fact that gives way by so many minutes, or units of a resource."""

    fact: Fact
    by: int
