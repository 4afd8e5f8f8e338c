"""Posts what a plan has to respect, one method for each family of constraints."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass, field
from itertools import combinations
from typing import TYPE_CHECKING

from entremetry.planning import wish
from entremetry.planning.plan_model import MOST_LATE, PlanModel
from entremetry.planning.problem import Problem
from entremetry.planning.resource import Resource
from entremetry.planning.task import Delay, Service, Side, Task
from entremetry.planning.uses import Use, lengthened, uses

if TYPE_CHECKING:
    from ortools.sat.python import cp_model

    from entremetry.planning.linear import Linear, Truth

HORIZON_WEIGHT = 2
EARLIEST_WEIGHT = 2
LATEST_WEIGHT = 2


@dataclass(frozen=True, slots=True)
class Constraints:
    """Adds all constraints but those of people's hours to a model."""

    model: PlanModel
    late: list[Linear] = field(default_factory=list)

    def post(self) -> None:
        """Post every family."""
        for delay in self.model.problem.delays:
            self.delay(delay)
        for task in self.model.problem.tasks:
            self.limits(task)
        for service in self.model.problem.services:
            self.service(service)
        self.horizon()
        for name, found in uses(self.model).items():
            resource = self.model.problem.resource(name)
            self.capacity(resource, found)
            self.states(resource, found)

    def add(self, claim: cp_model.BoundedLinearExpression | bool, when: list[Truth]) -> None:
        """Post one claim, for the case that some literals are true."""
        self.model.cp.add(claim).only_enforce_if(*when)

    def delay(self, delay: Delay) -> None:
        """Keep the shortest and the longest time between two tasks."""
        sooner = self.model.times[delay.before].at(delay.leaving)
        later = self.model.times[delay.after].at(delay.reaching)
        if isinstance(sooner, int) and isinstance(later, int):
            return
        if delay.least is not None:
            rest = self.model.leeway.needs(wish.at_least(delay)) if delay.least else []
            self.add(later >= sooner + delay.least, rest)
        if delay.most is not None:
            fact = wish.at_most(delay)
            late = 0 if delay.firm else MOST_LATE
            extra = self.model.leeway.extra(fact, late, delay.weight)
            self.add(later <= sooner + delay.most + extra, self.model.leeway.needs(fact))

    def limits(self, task: Task) -> None:
        """Keep the earliest start and the latest end of a task."""
        times = self.model.times[task.id]
        if task.earliest is not None and not isinstance(times.start, int):
            fact = wish.earliest(task)
            room = 0 if task.firm else task.earliest - self.model.problem.start
            early = self.model.leeway.extra(fact, room, EARLIEST_WEIGHT)
            self.add(times.start >= task.earliest - early, self.model.leeway.needs(fact))
        if task.latest is not None and not isinstance(times.end, int):
            fact = wish.latest(task)
            late = self.model.leeway.extra(fact, 0 if task.firm else MOST_LATE, LATEST_WEIGHT)
            self.add(times.end <= task.latest + late, self.model.leeway.needs(fact))

    def service(self, service: Service) -> None:
        """End a task exactly when it is served."""
        end = self.model.times[service.task].end
        if isinstance(end, int):
            return
        fact = wish.served(service)
        room = 0 if service.firm else MOST_LATE
        late = self.model.leeway.extra(fact, room, service.weight)
        self.late.append(late)
        self.add(end == service.at + late, self.model.leeway.needs(fact))

    def horizon(self) -> None:
        """End everything within the horizon, which moves with the services if there are any."""
        fact = wish.horizon(self.model.problem.start, self.model.problem.end)
        last = max(self.model.problem.end, self.model.now)
        late: Linear = sum(self.late)
        if not self.model.problem.services:
            late = self.model.leeway.extra(fact, MOST_LATE, HORIZON_WEIGHT)
        when = self.model.leeway.needs(fact)
        told = before_service(self.model.problem) if when else set()
        for times in self.model.times.values():
            if not isinstance(times.end, int) and times.task.id not in told:
                self.add(times.end <= last + late, when)

    def capacity(self, resource: Resource, found: list[Use]) -> None:
        """Use no more of a resource at once than there is, wash and set-up included."""
        fact = wish.capacity(resource)
        spare = self.model.leeway.extra(fact, resource.spare, resource.weight)
        when = self.model.leeway.needs(fact)
        intervals = [
            self.model.interval(lengthened(use.stretch, resource.turnover), use.present)
            for use in found
        ]
        plain = isinstance(spare, int) and not when
        if plain and resource.capacity == 1:
            self.model.cp.add_no_overlap(intervals)
            return
        amounts = [use.amount for use in found]
        limit = resource.capacity + spare
        if when:
            limit = limit + sum(amounts) * (1 - when[0])
        self.model.cp.add_cumulative(intervals, amounts, limit)

    def states(self, resource: Resource, found: list[Use]) -> None:
        """Keep uses in different states apart, with the changeover between them."""
        for one, other in combinations((use for use in found if use.state), 2):
            if one.state != other.state:
                pair = [
                    self.model.interval(lengthened(use.stretch, resource.changeover), use.present)
                    for use in (one, other)
                ]
                self.model.cp.add_no_overlap(pair)


def before_service(problem: Problem) -> set[str]:
    """Return the tasks that some served task has to wait for, which its minute bounds already."""
    waits_for: dict[str, list[str]] = defaultdict(list)
    for delay in problem.delays:
        if delay.least is not None and delay.leaving is Side.END:
            waits_for[delay.after].append(delay.before)
    found: set[str] = set()
    to_see = [service.task for service in problem.services]
    while to_see:
        task = to_see.pop()
        if task not in found:
            found.add(task)
            to_see.extend(waits_for[task])
    return found
