"""The problem that is left when some facts give way."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from entremetry.planning import wish
from entremetry.planning.fact import Change, Fact, FactKind
from entremetry.planning.problem import Problem
from entremetry.planning.resource import Person, Resource, Session, Window
from entremetry.planning.task import Delay, Service, Task

Given = Mapping[Fact, int]
"""By how much each fact gives."""


def amended(problem: Problem, changes: Iterable[Change]) -> Problem:
    """Return a problem with each changed fact as far out of the way as its change says."""
    by = {change.fact: change.by for change in changes}
    ends = {FactKind.HORIZON, FactKind.SERVICE}
    late = sum(minutes for fact, minutes in by.items() if fact.kind in ends)
    return replace(
        problem,
        end=problem.end + late,
        tasks=tuple(task_with(task, by) for task in problem.tasks),
        delays=tuple(delay_with(delay, by) for delay in problem.delays),
        services=tuple(service_with(service, by) for service in problem.services),
        resources=tuple(resource_with(resource, by) for resource in problem.resources),
        people=tuple(person_with(person, by) for person in problem.people),
        merges=tuple(
            replace(merge, together=task_with(merge.together, by)) for merge in problem.merges
        ),
    )


def task_with(task: Task, by: Given) -> Task:
    """Return a task with a longer wait, an earlier start or a later end."""
    wait = by.get(wish.wait_most(task), 0)
    early, late = by.get(wish.earliest(task), 0), by.get(wish.latest(task), 0)
    return replace(
        task,
        waiting_most=task.longest_wait + wait if wait else task.waiting_most,
        earliest=None if task.earliest is None else task.earliest - early,
        latest=None if task.latest is None else task.latest + late,
    )


def delay_with(delay: Delay, by: Given) -> Delay:
    """Return a delay that may last longer."""
    if delay.most is None:
        return delay
    return replace(delay, most=delay.most + by.get(wish.at_most(delay), 0))


def service_with(service: Service, by: Given) -> Service:
    """Return a later service."""
    return replace(service, at=service.at + by.get(wish.served(service), 0))


def resource_with(resource: Resource, by: Given) -> Resource:
    """Return a resource of which there is more."""
    return replace(resource, capacity=resource.capacity + by.get(wish.capacity(resource), 0))


def person_with(person: Person, by: Given) -> Person:
    """Return a person with longer sessions, or with some that were only offered."""
    return replace(person, sessions=tuple(session_with(person, one, by) for one in person.sessions))


def session_with(person: Person, session: Session, by: Given) -> Session:
    """Return a session that lasts longer, or that is planned after all."""
    if by.get(wish.offered(person, session)):
        return replace(session, offered=False)
    *most, last = session.windows
    more = by.get(wish.free_until(person, session), 0)
    return replace(session, windows=(*most, Window(start=last.start, end=last.end + more)))
