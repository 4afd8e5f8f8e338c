"""What is wrong with a menu and its plan that come from outside."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from entremetry.agenda.menu import Menu
from entremetry.errors import ProblemError
from entremetry.kitchen.calendar_fields import a_time_zone
from entremetry.planning import Plan
from entremetry.words import say


def require_whole(menu: Menu, plan: Plan | None) -> None:
    """Refuse a menu that lacks words or services, and a plan of other tasks or people.

    Raises
    ------
    QuantityError
        If nobody knows its time zone.
    ProblemError
        With all other faults at once.
    """
    a_time_zone(menu.zone)
    faults = (*menu_faults(menu), *(plan_faults(menu, plan) if plan else ()))
    if faults:
        raise ProblemError(faults)


def menu_faults(menu: Menu) -> Iterator[str]:
    """Yield what a menu does not tell."""
    if menu.origin.tzinfo is None:
        yield say("its beginning has no zone")
    served = {service.task for service in menu.problem.services}
    yield from (
        say("'{name}' is never served", name=dish.name)
        for dish in menu.dishes
        if dish.serving not in served
    )
    told = dict(menu.words)
    tasks = menu.problem.all_tasks
    yield from (say("task '{id}' has no words", id=t.id) for t in tasks if t.id not in told)
    named = {thing.id for thing in menu.things}
    resources = (resource.id for resource in menu.problem.resources)
    yield from (
        say("resource '{id}' has no name", id=name) for name in resources if name not in named
    )


def plan_faults(menu: Menu, plan: Plan) -> Iterator[str]:
    """Yield tasks that are not placed once, and hands of nobody."""
    problem = menu.problem
    placed = Counter(each.task for each in plan.placed)
    for task in problem.tasks:
        if placed[task.id] != 1:
            yield say(
                "task '{id}' is placed {number} times; accepted: once",
                id=task.id,
                number=placed[task.id],
            )
    known = {task.id for task in problem.all_tasks}
    yield from (say("no task is called '{name}'", name=n) for n in placed if n not in known)
    people = {person.id for person in problem.people}
    hands = dict.fromkeys(hand.person for each in plan.placed for hand in each.hands)
    yield from (say("no person is called '{name}'", name=n) for n in hands if n not in people)
