"""Components that several desserts share, made in one go if that serves the plan."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Any

from entremetry.agenda.course import Course
from entremetry.agenda.draft import StepDraft
from entremetry.agenda.equipment import FREEZER, FREEZING, FRIDGE
from entremetry.dessert.dessert import Component, Line
from entremetry.method.share import Part
from entremetry.method.step import AnyStep, scaled_steps
from entremetry.planning import Merge, Need, Resource, Task

COLD = (FREEZER, FRIDGE, FREEZING)
"""Resources of which a larger batch takes up more, as of trays in the oven; a pan stays one."""
TOLD_APART = 6
"""Decimals to which shares of a formula are compared."""

Flow = tuple[Course, Mapping[str, StepDraft]]


def merges(
    flows: Sequence[Flow], in_rounds: set[str], resources: Mapping[str, Resource]
) -> Iterator[Merge]:
    """Steps of equal components of different courses, as tasks that may be done as one."""
    alike: dict[Any, list[tuple[Course, Component]]] = {}
    for course, _ in flows:
        for component in course.components:
            if component.steps:
                made_of = signature(component, course.dessert.components)
                alike.setdefault(made_of, []).append((course, component))
    drafts = {name: draft for _, found in flows for name, draft in found.items()}
    for group in alike.values():
        if len({course.key for course, _ in group}) < 2:
            continue
        for number in range(len(group[0][1].steps)):
            same = [drafts[course.task_id(component.id, number)] for course, component in group]
            if not any(draft.id in in_rounds for draft in same) and _fit(same, resources):
                yield Merge(tasks=tuple(d.id for d in same), together=_together(same, resources))


def signature(component: Component, others: Sequence[Component]) -> tuple[Any, ...]:
    """What two components must share to be made in one go: formula, by shares, and method.

    `others` are the components of its dessert: of two that are made from a third, that must be
    alike as well.
    """
    total = sum(line.mass for line in component.lines)
    lines = frozenset(
        (_origin(line, others), _rounded(line.mass / total)) for line in component.lines
    )
    steps = scaled_steps(component.steps, 1.0 / total)
    return component.kind, lines, tuple(_step(step) for step in steps)


def _origin(line: Line, others: Sequence[Component]) -> Any:
    """The ingredient itself: two documents may call things of their own by one name."""
    if line.component is None:
        return line.ingredient
    return signature(next(each for each in others if each.id == line.component), others)


def _step(step: AnyStep) -> tuple[Any, ...]:
    """A step without its name and its note."""
    fields = [name for name in type(step).model_fields if name not in ("id", "note")]
    return tuple(_rounded(getattr(step, name)) for name in fields)


def _rounded(value: Any) -> Any:
    """A value whose numbers are equal if they agree to some decimals."""
    if isinstance(value, float):
        return round(value, TOLD_APART)
    if isinstance(value, Part):
        return _rounded(value.mass), _rounded(value.fraction)
    return value


def _together(same: Sequence[StepDraft], resources: Mapping[str, Resource]) -> Task:
    """One task for several: what is fixed counts once, what goes by pieces adds up."""
    tasks = [draft.task() for draft in same]
    minutes = (
        max(d.hands.fixed for d in same) + sum(d.hands.per_piece * d.pieces for d in same) / 60.0
    )
    closing = max(task.closing for task in tasks)
    longest = [task.longest_wait for task in tasks]
    return Task(
        id=f"{same[0].id}+{len(same) - 1}",
        hands_on=max(1, round(minutes) - closing) if minutes else 0,
        waiting=max(task.waiting for task in tasks),
        waiting_most=max(longest),
        closing=closing,
        needs=tuple(_needs(tasks, resources)),
        freshness=sum(task.freshness for task in tasks),
        firm=any(task.firm for task in tasks),
    )


def _needs(tasks: Sequence[Task], resources: Mapping[str, Resource]) -> Iterator[Need]:
    for need in tasks[0].needs:
        if need.resource in COLD or need.state:
            most = resources[need.resource].capacity
            yield replace(need, amount=min(most, _amount(need.resource, tasks)))
        else:
            yield need


def _amount(resource: str, tasks: Sequence[Task]) -> int:
    return sum(n.amount for task in tasks for n in task.needs if n.resource == resource)


def _fit(same: Sequence[StepDraft], resources: Mapping[str, Resource]) -> bool:
    """Whether the oven takes the trays of all at once."""
    tasks = [draft.task() for draft in same]
    ovens = {need.resource for task in tasks for need in task.needs if need.state}
    return all(_amount(oven, tasks) <= resources[oven].capacity for oven in ovens)
