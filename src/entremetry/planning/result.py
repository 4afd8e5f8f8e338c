"""What comes out of planning: a plan with how good it is proved to be, or why there is none."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from entremetry.planning.fact import Change, Conflict
from entremetry.planning.plan import Plan
from entremetry.planning.problem import Problem


class Goal(StrEnum):
    """What a plan is made good at, one after the other."""

    SESSIONS = "sessions"  # fewest working sessions
    BENCH = "bench"  # fewest minutes at the bench: hands-on and idle waiting in each session
    FRESHNESS = "freshness"  # least age at the horizon, weighted by task
    SPREAD = "spread"  # least hands-on work in the busiest session
    FINISH = "finish"  # earliest end of all
    MOVES = "moves"  # fewest minutes by which hands-on work moves from the plan before


COOK = (Goal.SESSIONS, Goal.BENCH, Goal.FRESHNESS, Goal.SPREAD)


class Status(StrEnum):
    """How planning ended."""

    PLANNED = "planned"
    BENT = "bent"  # a plan that gives up the facts in `changes`
    IMPOSSIBLE = "impossible"
    UNDECIDED = "undecided"  # neither a plan nor a proof that there is none, in the time given


@dataclass(frozen=True, slots=True, kw_only=True)
class GoalReport:
    """What was reached for one goal, and what surely cannot be beaten."""

    goal: Goal
    value: int
    bound: int
    seconds: float

    @property
    def proved(self) -> bool:
        """Whether nothing better exists, given what was reached for the goals before."""
        return self.bound >= self.value

    @property
    def gap(self) -> float:
        """How far the value is from the bound, as a part of the value."""
        return 0.0 if self.proved else (self.value - self.bound) / self.value


@dataclass(frozen=True, slots=True, kw_only=True)
class Alternative:
    """What would have to give for a plan to exist, the problem with that, and its plan."""

    changes: tuple[Change, ...]
    problem: Problem
    plan: Plan


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """The answer to a problem.

    `goals` reports the goals that were begun; `asked` names all. `first_plan` and `seconds` are
    the times until there was some plan, and in all.
    """

    status: Status
    problem: Problem
    asked: tuple[Goal, ...] = ()
    plan: Plan | None = None
    goals: tuple[GoalReport, ...] = ()
    conflicts: tuple[Conflict, ...] = ()
    alternatives: tuple[Alternative, ...] = ()
    changes: tuple[Change, ...] = ()
    cancelled: bool = False
    first_plan: float = 0.0
    seconds: float = 0.0

    @property
    def feasible(self) -> bool:
        """Whether every fact holds in the plan."""
        return self.status is Status.PLANNED

    @property
    def proved_optimal(self) -> bool:
        """Whether every goal that was asked for is proved, in its order."""
        reached = tuple(report.goal for report in self.goals if report.proved)
        return self.feasible and reached == self.asked
