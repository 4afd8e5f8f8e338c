"""The constraint model of a problem: its variables, and where they stand in a solution."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from entremetry.planning.history import History
from entremetry.planning.leeway import Leeway
from entremetry.planning.plan import Placed, Plan, Stretch
from entremetry.planning.problem import Problem
from entremetry.planning.task import Part, Task
from entremetry.planning.task_times import Hand, TaskTimes

if TYPE_CHECKING:
    from ortools.sat.python import cp_model

    from entremetry.planning.linear import Interval, Truth

MOST_LATE = 3 * 1440
"""The most by which a time gives in a plan that bends, in minutes."""


@dataclass(slots=True, kw_only=True)
class PlanModel:
    """Variables of every task, hands and session, in a model that constraints are added to."""

    problem: Problem
    cp: cp_model.CpModel
    leeway: Leeway
    history: History | None = None
    times: dict[str, TaskTimes] = field(default_factory=dict)
    hands: list[Hand] = field(default_factory=list)
    merged: dict[str, Truth] = field(default_factory=dict)

    @property
    def now(self) -> int:
        """First minute that can still be planned."""
        start = self.problem.start
        return start if self.history is None else max(start, self.history.now)

    @property
    def end(self) -> int:
        """Last minute of all, further off if facts may give or be left out."""
        late = max(self.problem.end, self.now)
        loose = self.leeway.bends or self.leeway.optional
        return late + MOST_LATE if loose else late

    def interval(self, stretch: Interval, present: Truth | None) -> cp_model.IntervalVar:
        """Return an interval that is there only if its task is."""
        start, size, end = stretch
        if present is None:
            return self.cp.new_interval_var(start, size, end, "")
        return self.cp.new_optional_interval_var(start, size, end, present, "")

    def plan(self, solver: cp_model.CpSolver) -> Plan:
        """Read the plan out of a solution."""
        hands: dict[str, list[Stretch]] = {}
        for hand in self.hands:
            if stretch := stretch_of(hand, solver):
                hands.setdefault(hand.task, []).append(stretch)
        within = {
            name: merge.together.id
            for merge in self.problem.merges
            if self.is_merged(merge.together.id, solver)
            for name in merge.tasks
        }
        idle = {m.together.id for m in self.problem.merges} - set(within.values())
        placed = [
            placed_task(self.times[task.id], solver, hands.get(task.id, []), within)
            for task in self.problem.all_tasks
            if task.id not in idle
        ]
        return Plan(placed=tuple(sorted(placed, key=lambda p: (p.start, p.end, p.task))))

    def is_merged(self, together: str, solver: cp_model.CpSolver) -> bool:
        """Tell whether a merged task takes place."""
        if together in self.merged:
            return solver.boolean_value(self.merged[together])
        return not self.times[together].absent


def stretch_of(hand: Hand, solver: cp_model.CpSolver) -> Stretch | None:
    """Return whose hands do it and when, or nothing if nobody has to."""
    if hand.present is not None and not solver.boolean_value(hand.present):
        return None
    start = solver.value(hand.start)
    person = next(
        name
        for name, chosen in hand.people.items()
        if chosen is None or solver.boolean_value(chosen)
    )
    return Stretch(person=person, part=hand.part, start=start, end=start + hand.minutes)


def placed_task(
    times: TaskTimes, solver: cp_model.CpSolver, hands: list[Stretch], within: dict[str, str]
) -> Placed:
    """Return where a task stands in a solution."""
    return Placed(
        task=times.task.id,
        start=solver.value(times.start),
        end=solver.value(times.end),
        hands=tuple(hands),
        within=within.get(times.task.id, ""),
    )


def hand_parts(task: Task) -> list[tuple[Part, int]]:
    """Return the parts of a task that need hands, with their minutes."""
    parts = [(Part.OPENING, task.hands_on), (Part.CLOSING, task.closing)]
    return [(part, minutes) for part, minutes in parts if minutes]
