"""What a problem is made of, before anybody has checked it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Self

from entremetry.planning.resource import Person, Resource
from entremetry.planning.task import Delay, Merge, Service, Span, Task


@dataclass(frozen=True, slots=True, kw_only=True)
class ProblemData:
    """Tasks, delays, spans, services, resources, people and merges, between two minutes."""

    end: int
    start: int = 0
    tasks: tuple[Task, ...] = ()
    delays: tuple[Delay, ...] = ()
    spans: tuple[Span, ...] = ()
    services: tuple[Service, ...] = ()
    resources: tuple[Resource, ...] = ()
    people: tuple[Person, ...] = ()
    merges: tuple[Merge, ...] = ()

    @property
    def all_tasks(self) -> tuple[Task, ...]:
        """The tasks, and those that could stand for several of them."""
        return self.tasks + tuple(merge.together for merge in self.merges)

    def task(self, name: str) -> Task:
        """Return the task with this id."""
        return next(task for task in self.all_tasks if task.id == name)

    def person(self, name: str) -> Person:
        """Return the person with this id."""
        return next(person for person in self.people if person.id == name)

    def resource(self, name: str) -> Resource:
        """Return the resource with this id."""
        return next(resource for resource in self.resources if resource.id == name)

    def hands_for(self, task: Task) -> tuple[Person, ...]:
        """Return the people who may do a task."""
        return tuple(one for one in self.people if not task.by or one.id in task.by)

    @property
    def choices(self) -> int:
        """Pairs of tasks and sessions: how much there is to write of a model with both."""
        sessions = {person.id: len(person.sessions) for person in self.people}
        return sum(sessions[one.id] for task in self.all_tasks for one in self.hands_for(task))

    def with_tasks(self, *changed: Task) -> Self:
        """Return the same problem with some tasks replaced by others of the same id."""
        new = {task.id: task for task in changed}
        return replace(self, tasks=tuple(new.get(task.id, task) for task in self.tasks))

    def with_people(self, *changed: Person) -> Self:
        """Return the same problem with the hours of some people replaced."""
        new = {person.id: person for person in changed}
        return replace(self, people=tuple(new.get(one.id, one) for one in self.people))
