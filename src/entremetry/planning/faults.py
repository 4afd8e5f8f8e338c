"""What is wrong with a problem before anybody tries to solve it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator

from entremetry.errors import ProblemError, did_you_mean, nearest_names
from entremetry.planning.problem_data import ProblemData
from entremetry.planning.resource import Person, Resource
from entremetry.planning.task import Need, Part, Task

LONGEST = 10 * 366 * 1440
"""Ten years in minutes: no number in a problem is larger, so that no sum overflows."""


def require_sound(problem: ProblemData) -> None:
    """Refuse a problem that contradicts itself.

    Raises
    ------
    ProblemError
        With all faults at once.
    """
    faults = tuple(every_fault(problem))
    if faults:
        raise ProblemError(faults)


def every_fault(problem: ProblemData) -> Iterator[str]:
    """Yield everything wrong, in plain words."""
    if problem.end <= problem.start or problem.end - problem.start > LONGEST:
        yield f"the horizon runs from minute {problem.start} to {problem.end}"
    yield from twice("task", (task.id for task in problem.all_tasks))
    yield from twice("resource", (resource.id for resource in problem.resources))
    yield from twice("person", (person.id for person in problem.people))
    yield from twice("span", (span.id for span in problem.spans))
    capacities = {resource.id: resource for resource in problem.resources}
    for task in problem.all_tasks:
        yield from task_faults(task, problem, capacities)
    for resource in problem.resources:
        yield from resource_faults(resource)
    for person in problem.people:
        yield from person_faults(person)
    yield from link_faults(problem, capacities)
    yield from merge_faults(problem)


def twice(thing: str, names: Iterable[str]) -> Iterator[str]:
    """Yield the ids that several things bear, and the empty one."""
    for name, count in Counter(names).items():
        if count > 1:
            yield f"{count} {thing}s bear the id '{name}'"
        if not name:
            yield f"a {thing} has no id"


def unknown(thing: str, name: str, known: Iterable[str]) -> str:
    """Say that nothing bears a name."""
    return f"no {thing} is called '{name}'{did_you_mean(nearest_names(name, known))}"


def task_faults(task: Task, problem: ProblemData, capacities: dict[str, Resource]) -> Iterator[str]:
    """Yield what is wrong with one task."""
    minutes = (task.hands_on, task.waiting, task.longest_wait, task.closing)
    if min(minutes) < 0 or max(minutes) > LONGEST or task.longest_wait < task.waiting:
        yield (
            f"task '{task.id}' lasts {task.hands_on} + {task.waiting} to {task.longest_wait} + "
            f"{task.closing} minutes; accepted: minutes from 0, the longer wait last"
        )
    if task.freshness < 0:
        yield f"task '{task.id}' has a negative weight of freshness"
    people = [person.id for person in problem.people]
    yield from (unknown("person", name, people) for name in task.by if name not in people)
    if (task.hands_on or task.closing) and not problem.hands_for(task):
        yield f"task '{task.id}' needs hands, and nobody may do it"
    for need in task.needs:
        yield from need_faults(task, need, capacities)


def need_faults(task: Task, need: Need, capacities: dict[str, Resource]) -> Iterator[str]:
    """Yield what is wrong with one use of a resource."""
    if need.resource not in capacities:
        yield unknown("resource", need.resource, capacities)
        return
    yield from amount_faults(f"task '{task.id}'", need.amount, capacities[need.resource])
    if need.lasting is not None and not 0 <= need.lasting <= LONGEST:
        yield f"task '{task.id}' takes '{need.resource}' for {need.lasting} minutes"
    length = {Part.OPENING: task.hands_on, Part.CLOSING: task.closing, Part.WAITING: 1}
    if need.lasting is None and length.get(need.part, 1) == 0:
        yield f"task '{task.id}' needs '{need.resource}' for a part of no length ({need.part})"


def amount_faults(who: str, amount: int, resource: Resource) -> Iterator[str]:
    """Yield an amount that can never be had."""
    if amount < 1:
        yield f"{who} needs {amount} of '{resource.id}'; accepted: 1 or more"
    if amount > resource.capacity >= 1:
        yield f"{who} needs {amount} of '{resource.id}', and there are {resource.capacity}"


def resource_faults(resource: Resource) -> Iterator[str]:
    """Yield what is wrong with one resource."""
    if not 1 <= resource.capacity <= LONGEST:
        yield f"resource '{resource.id}' has capacity {resource.capacity}; accepted: 1 or more"
    if min(resource.turnover, resource.changeover, resource.spare, resource.weight) < 0:
        yield f"resource '{resource.id}' has a negative turnover, changeover, spare or weight"


def person_faults(person: Person) -> Iterator[str]:
    """Yield sessions that are empty or not in order."""
    yield from twice(f"session of '{person.id}'", (session.id for session in person.sessions))
    reached = -LONGEST
    for session in person.sessions:
        if not session.windows:
            yield f"session '{session.id}' of '{person.id}' has no free minutes"
        if session.overtime < 0 or session.weight < 0:
            yield f"session '{session.id}' of '{person.id}' has a negative overtime or weight"
        for window in session.windows:
            if window.start < reached or window.end <= window.start or window.end > LONGEST:
                yield (
                    f"session '{session.id}' of '{person.id}': window {window.start} to "
                    f"{window.end} is empty, or not after the one before it"
                )
            reached = max(reached, window.end)


def link_faults(problem: ProblemData, capacities: dict[str, Resource]) -> Iterator[str]:
    """Yield what is wrong with delays, spans and services."""
    tasks = {task.id for task in problem.tasks}
    for delay in problem.delays:
        for name in (delay.before, delay.after):
            if name not in tasks:
                yield unknown("task", name, tasks)
        limits = [limit for limit in (delay.least, delay.most) if limit is not None]
        if any(not 0 <= limit <= LONGEST for limit in limits) or limits != sorted(limits):
            yield (
                f"delay from '{delay.before}' to '{delay.after}': {delay.least} to {delay.most} "
                "minutes; accepted: minutes from 0, the larger last"
            )
    for span in problem.spans:
        yield from (unknown("task", n, tasks) for n in (span.first, span.last) if n not in tasks)
        if span.resource not in capacities:
            yield unknown("resource", span.resource, capacities)
        else:
            yield from amount_faults(f"span '{span.id}'", span.amount, capacities[span.resource])
    yield from service_faults(problem, tasks)


def service_faults(problem: ProblemData, tasks: set[str]) -> Iterator[str]:
    """Yield services of nothing, or at a minute that is past."""
    yield from twice("service", (service.task for service in problem.services))
    for service in problem.services:
        if service.task not in tasks:
            yield unknown("task", service.task, tasks)
        if not problem.start <= service.at <= problem.end:
            yield (
                f"the service of '{service.task}' at minute {service.at} lies outside "
                f"{problem.start} to {problem.end}"
            )


def merge_faults(problem: ProblemData) -> Iterator[str]:
    """Yield merges of fewer than two tasks, or of tasks that are merged elsewhere."""
    tasks = {task.id for task in problem.tasks}
    for merge in problem.merges:
        yield from (unknown("task", name, tasks) for name in merge.tasks if name not in tasks)
        if len(merge.tasks) < 2:
            yield f"merged task '{merge.together.id}' stands for fewer than two tasks"
    members = (name for merge in problem.merges for name in merge.tasks)
    for name, count in Counter(members).items():
        if count > 1:
            yield f"task '{name}' is merged {count} times"
