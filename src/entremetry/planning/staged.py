"""Makes a plan better for one goal after the other, each starting from the plan before it."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from entremetry.planning.goals import Goals
from entremetry.planning.plan import Plan
from entremetry.planning.plan_model import PlanModel
from entremetry.planning.result import Goal, GoalReport
from entremetry.planning.search import Answer, Search

if TYPE_CHECKING:
    from ortools.sat.python import cp_model

    from entremetry.planning.linear import Linear

GAPS = {Goal.BENCH: 0.01, Goal.SPREAD: 0.01}
"""Where nobody sees the last hundredth, the search ends there, and later goals may use it."""


@dataclass(slots=True, kw_only=True)
class Reached:
    """A goal that was worked on: what it counts, and what is proved."""

    goal: Goal
    objective: Linear
    bound: int


@dataclass(slots=True, kw_only=True)
class Staged:
    """The goals of one planning, and what was reached."""

    model: PlanModel
    search: Search
    goals: Goals
    plan: Plan
    answer: Answer
    reached: list[Reached] = field(default_factory=list)
    aimed: Goal | None = None
    floors: dict[Goal, int] = field(default_factory=dict)
    seconds: dict[Goal, float] = field(default_factory=dict)
    cancelled: bool = False

    @property
    def goes_on(self) -> bool:
        """Whether there is time left, and nobody has cancelled."""
        return not self.cancelled and self.search.left > 0

    @property
    def reports(self) -> tuple[GoalReport, ...]:
        """What the plan is worth for each goal."""
        return tuple(
            GoalReport(
                goal=one.goal,
                value=self.worth(one.objective),
                bound=one.bound,
                seconds=self.seconds.get(one.goal, 0.0),
            )
            for one in self.reached
        )

    def worth(self, objective: Linear, answer: Answer | None = None) -> int:
        """Return the value of an objective in the best plan, or in that of an answer."""
        if isinstance(objective, int):
            return objective
        return round((answer or self.answer).solver.value(objective))

    def bounded(self, goal: Goal, objective: Linear, answer: Answer) -> None:
        """Note a bound of a goal that holds whatever the goals before it reach."""
        if answer.found:
            self.floors[goal] = answer.bound
            self.model.cp.add(objective >= answer.bound)

    def stage(self, goal: Goal, seconds: float) -> None:
        """Make one goal as small as time allows, and keep it so."""
        ends = self.search.spent + seconds
        objective = self.goals.begin(goal)
        if isinstance(objective, int):
            self.reached.append(Reached(goal=goal, objective=objective, bound=objective))
            return
        gap, before = GAPS.get(goal, 0.0), self.answer
        answer = self.optimise(goal, objective, ends - self.search.spent, gap)
        if not answer.found:
            return
        bound = max(answer.bound, self.floors.get(goal, answer.bound))
        room = 0 if bound >= answer.value else int(gap * answer.value)
        if self.aimed is goal and self.worth(objective, before) <= answer.value + room:
            self.keep(before)
        self.reached.append(Reached(goal=goal, objective=objective, bound=bound))
        self.model.cp.add(objective <= answer.value + room)
        if goal is Goal.SESSIONS:
            self.goals.most_used = answer.value

    def optimise(
        self,
        goal: Goal,
        objective: Linear,
        seconds: float,
        gap: float,
        model: cp_model.CpModel | None = None,
        *,
        nearby: bool = False,
    ) -> Answer:
        """Run the solver for one goal, and keep the plan that it finds."""
        cp, began = model or self.model.cp, self.search.spent
        cp.clear_hints()  # type: ignore[no-untyped-call]
        cp.minimize(objective)
        answer = self.search.run(cp, goal, seconds, gap=gap, nearby=nearby)
        cp.clear_objective()  # type: ignore[no-untyped-call]
        self.spend(goal, began)
        self.keep(answer)
        return answer

    def spend(self, goal: Goal, began: float) -> None:
        """Note the seconds since some moment as spent on a goal."""
        self.seconds[goal] = self.seconds.get(goal, 0.0) + self.search.spent - began

    def keep(self, answer: Answer) -> None:
        """Keep the plan of an answer, if it has one."""
        self.cancelled = answer.cancelled
        if answer.found:
            self.answer, self.plan = answer, self.model.plan(answer.solver)
            self.search.best = answer.solution
