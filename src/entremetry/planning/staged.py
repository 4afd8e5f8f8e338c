"""Makes a plan better for one goal after the other, each starting from the plan before it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from entremetry.planning.goals import Goals
from entremetry.planning.plan import Plan
from entremetry.planning.plan_model import PlanModel
from entremetry.planning.result import Goal, GoalReport
from entremetry.planning.search import Answer, Search

GAPS = {Goal.BENCH: 0.01, Goal.SPREAD: 0.01}
"""Where nobody sees the last hundredth, the search ends there."""


@dataclass(slots=True, kw_only=True)
class Staged:
    """The goals of one planning, and what was reached."""

    model: PlanModel
    search: Search
    goals: Goals
    plan: Plan
    answer: Answer
    reports: list[GoalReport] = field(default_factory=list)
    cancelled: bool = False

    def pursue(self, goals: Sequence[Goal]) -> None:
        """Work on each goal in order, within its share of the time that is left."""
        for index, goal in enumerate(goals):
            if self.cancelled or self.search.left <= 0:
                return
            self.stage(goal, self.search.left / share(len(goals) - index))

    def stage(self, goal: Goal, seconds: float) -> None:
        """Make one goal as small as time allows, and keep it so."""
        objective = self.goals.begin(goal)
        if isinstance(objective, int):
            report = GoalReport(goal=goal, value=objective, bound=objective, seconds=0.0)
            self.reports.append(report)
            return
        cp = self.model.cp
        cp.clear_hints()  # type: ignore[no-untyped-call]
        cp.minimize(objective)
        began = self.search.spent
        answer = self.search.run(cp, goal, seconds, gap=GAPS.get(goal, 0.0))
        cp.clear_objective()  # type: ignore[no-untyped-call]
        self.cancelled = answer.cancelled
        if answer.found:
            self.note(goal, answer, self.search.spent - began)
            cp.add(objective <= answer.value)

    def note(self, goal: Goal, answer: Answer, seconds: float) -> None:
        """Keep the plan that was found, with what is proved about it."""
        self.answer, self.plan = answer, self.model.plan(answer.solver)
        report = GoalReport(goal=goal, value=answer.value, bound=answer.bound, seconds=seconds)
        self.reports.append(report)


def share(stages: int) -> float:
    """Part of the time for the next goal: half of what is left, all of it for the last."""
    return 1.0 if stages == 1 else 2.0
