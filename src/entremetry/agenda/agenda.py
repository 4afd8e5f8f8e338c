"""A plan as a cook reads it: by the clock, in sentences, with the amounts of each step."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from entremetry.agenda.local_time import minutes_between


class State(StrEnum):
    """What has become of a task."""

    TO_COME = "to come"
    UNDER_WAY = "under way"
    DONE = "done"


@dataclass(frozen=True, slots=True, kw_only=True)
class Hands:
    """A stretch in which somebody works on a task; times carry their zone."""

    person: str
    start: datetime
    end: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class AgendaTask:
    """One step of one dessert at its place in the days. Durations in minutes.

    `text` is the step as a sentence with this batch's numbers and `amounts` what enters it, each a
    text such as '62 g cream'. `uses` names what it occupies. `because` says where its minutes
    come from. A step done in rounds (one mould, many pieces) is task `round` of `rounds`.
    `together` names the tasks that are done in one go with it. Times carry their zone.
    """

    id: str
    dessert: str
    dessert_name: str
    component: str
    component_name: str
    kind: str
    text: str
    start: datetime
    end: datetime
    hands: tuple[Hands, ...] = ()
    hands_on: int = 0
    waiting: int = 0
    uses: tuple[str, ...] = ()
    amounts: tuple[str, ...] = ()
    because: str = ""
    round: int = 1
    rounds: int = 1
    together: tuple[str, ...] = ()
    state: State = State.TO_COME
    moved: int = 0

    @property
    def minutes(self) -> int:
        """From start to end."""
        return minutes_between(self.start, self.end)


@dataclass(frozen=True, slots=True, kw_only=True)
class AgendaSession:
    """A stretch of work at the bench: from the first to the last hands of somebody in it.

    `tasks` are the ids of tasks with hands in it, in order of their first hands there.
    Durations in minutes; `idle` is the cook's time between the work.
    """

    id: str
    person: str
    start: datetime
    end: datetime
    tasks: tuple[str, ...]
    hands_on: int
    idle: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Served:
    """A dessert with its pieces and its hour."""

    dessert: str
    name: str
    pieces: int
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class GoalReached:
    """What was reached for one goal, in words, and whether nothing better exists."""

    name: str
    text: str
    proved: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class WayOut:
    """What would have to give for a plan to exist, in words, and that plan."""

    changes: tuple[str, ...]
    tasks: tuple[AgendaTask, ...]
    sessions: tuple[AgendaSession, ...]
    served: tuple[Served, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Agenda:
    """The answer to 'when do I do what': a plan, or why there is none and what would help.

    `changes` are facts that had to give when a plan was made anew (empty for a plan that keeps
    all); `conflicts` holds sets of facts, each set in conflict; `undecided` tells that time ran
    out before there was a plan or a proof that there is none.
    """

    zone: str
    begins: datetime
    served: tuple[Served, ...]
    feasible: bool
    proved_optimal: bool
    undecided: bool = False
    cancelled: bool = False
    tasks: tuple[AgendaTask, ...] = ()
    sessions: tuple[AgendaSession, ...] = ()
    goals: tuple[GoalReached, ...] = ()
    changes: tuple[str, ...] = ()
    conflicts: tuple[tuple[str, ...], ...] = ()
    ways_out: tuple[WayOut, ...] = ()
    assumptions: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
