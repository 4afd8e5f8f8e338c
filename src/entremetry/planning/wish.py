"""The facts of a problem under the names by which model, explanation and amendment know them."""

from __future__ import annotations

from entremetry.planning.fact import Fact, FactKind
from entremetry.planning.resource import Person, Resource, Session
from entremetry.planning.task import Delay, Service, Task


def at_least(delay: Delay) -> Fact:
    """Return the shortest time between two tasks as a fact."""
    return _between(FactKind.AT_LEAST, delay, delay.least or 0)


def at_most(delay: Delay) -> Fact:
    """Return the longest time between two tasks as a fact."""
    return _between(FactKind.AT_MOST, delay, delay.most or 0)


def _between(kind: FactKind, delay: Delay, minutes: int) -> Fact:
    sides = (delay.leaving.value, delay.reaching.value)
    return Fact(kind=kind, subjects=(delay.before, delay.after), minutes=minutes, sides=sides)


def lasts(task: Task) -> Fact:
    """Return the shortest length of a task as a fact."""
    return Fact(kind=FactKind.LASTS, subjects=(task.id,), minutes=task.least)


def wait_most(task: Task) -> Fact:
    """Return the longest wait within a task as a fact."""
    return Fact(kind=FactKind.WAIT_MOST, subjects=(task.id,), minutes=task.longest_wait)


def served(service: Service) -> Fact:
    """Return the minute of service as a fact."""
    return Fact(kind=FactKind.SERVICE, subjects=(service.task,), minutes=service.at)


def earliest(task: Task) -> Fact:
    """Return the first minute at which a task may start as a fact."""
    return Fact(kind=FactKind.EARLIEST, subjects=(task.id,), minutes=task.earliest or 0)


def latest(task: Task) -> Fact:
    """Return the last minute at which a task may end as a fact."""
    return Fact(kind=FactKind.LATEST, subjects=(task.id,), minutes=task.latest or 0)


def capacity(resource: Resource) -> Fact:
    """Return how much of a resource there is as a fact."""
    return Fact(kind=FactKind.CAPACITY, subjects=(resource.id,), minutes=resource.capacity)


def free_until(person: Person, session: Session) -> Fact:
    """Return the end of a session as a fact."""
    subjects = (person.id, session.id)
    return Fact(kind=FactKind.SESSION, subjects=subjects, minutes=session.end)


def offered(person: Person, session: Session) -> Fact:
    """Return a session that could be opened as a fact."""
    subjects = (person.id, session.id)
    return Fact(kind=FactKind.OFFERED, subjects=subjects, minutes=session.start, until=session.end)


def absence(person: Person, start: int, end: int) -> Fact:
    """Return a time without somebody's hands as a fact."""
    return Fact(kind=FactKind.ABSENCE, subjects=(person.id,), minutes=start, until=end)


def horizon(start: int, end: int) -> Fact:
    """Return the first and the last minute of all as a fact."""
    return Fact(kind=FactKind.HORIZON, minutes=start, until=end)
