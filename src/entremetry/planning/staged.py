"""Makes a plan better for one goal after the other, each starting from the plan before it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from entremetry.planning.goals import Goals
from entremetry.planning.plan import Plan
from entremetry.planning.plan_model import PlanModel
from entremetry.planning.result import Goal, GoalReport
from entremetry.planning.search import Answer, Search

if TYPE_CHECKING:
    from entremetry.planning.linear import Linear

GAPS = {Goal.BENCH: 0.01, Goal.SPREAD: 0.01}
"""Where nobody sees the last hundredth, the search ends there, and later goals may use it."""


@dataclass(slots=True, kw_only=True)
class Reached:
    """A goal that was worked on: what it counts, and what is proved and spent."""

    goal: Goal
    objective: Linear
    bound: int
    seconds: float


@dataclass(slots=True, kw_only=True)
class Staged:
    """The goals of one planning, and what was reached."""

    model: PlanModel
    search: Search
    goals: Goals
    plan: Plan
    answer: Answer
    reached: list[Reached] = field(default_factory=list)
    floors: dict[Goal, int] = field(default_factory=dict)
    cancelled: bool = False

    def pursue(self, goals: Sequence[Goal]) -> None:
        """Work on each goal in order, within its share of the time that is left."""
        for index, goal in enumerate(goals):
            if self.cancelled or self.search.left <= 0:
                return
            if goal is Goal.BENCH and Goal.FRESHNESS in goals[index:]:
                self.probe(Goal.FRESHNESS, self.search.left / 4)
            self.stage(goal, self.search.left / share(len(goals) - index))

    @property
    def reports(self) -> tuple[GoalReport, ...]:
        """What the plan is worth for each goal."""
        return tuple(
            GoalReport(
                goal=one.goal,
                value=self.worth(one.objective),
                bound=one.bound,
                seconds=one.seconds,
            )
            for one in self.reached
        )

    def worth(self, objective: Linear) -> int:
        """Return the value of an objective in the best plan."""
        if isinstance(objective, int):
            return objective
        return round(self.answer.solver.value(objective))

    def probe(self, goal: Goal, seconds: float) -> None:
        """Find out how good a later goal can be at best; a bound is easier before than after."""
        objective = self.goals.begin(goal)
        if isinstance(objective, int) or self.cancelled:
            return
        answer = self.optimise(goal, objective, seconds, 0.0)
        if answer.found:
            self.floors[goal] = answer.bound
            self.model.cp.add(objective >= answer.bound)

    def stage(self, goal: Goal, seconds: float) -> None:
        """Make one goal as small as time allows, and keep it so."""
        objective = self.goals.begin(goal)
        if isinstance(objective, int):
            self.reached.append(
                Reached(goal=goal, objective=objective, bound=objective, seconds=0.0)
            )
            return
        began = self.search.spent
        answer = self.optimise(goal, objective, seconds, GAPS.get(goal, 0.0))
        if answer.found:
            bound = max(answer.bound, self.floors.get(goal, answer.bound))
            spent = self.search.spent - began
            self.reached.append(Reached(goal=goal, objective=objective, bound=bound, seconds=spent))
            room = 0 if bound >= answer.value else int(GAPS.get(goal, 0.0) * answer.value)
            self.model.cp.add(objective <= answer.value + room)
            if goal is Goal.SESSIONS:
                self.goals.most_used = answer.value

    def optimise(self, goal: Goal, objective: Linear, seconds: float, gap: float) -> Answer:
        """Run the solver for one goal, and keep the plan that it finds."""
        cp = self.model.cp
        cp.clear_hints()  # type: ignore[no-untyped-call]
        cp.minimize(objective)
        answer = self.search.run(cp, goal, seconds, gap=gap)
        cp.clear_objective()  # type: ignore[no-untyped-call]
        self.cancelled = answer.cancelled
        if answer.found:
            self.answer, self.plan = answer, self.model.plan(answer.solver)
        return answer


def share(stages: int) -> float:
    """Part of the time for the next goal: half of what is left, all of it for the last."""
    return 1.0 if stages == 1 else 2.0
