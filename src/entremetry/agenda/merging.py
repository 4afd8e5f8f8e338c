"""Components that several desserts share, made in one go if that serves the plan."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from entremetry.agenda.course import Course
from entremetry.agenda.draft import StepDraft
from entremetry.agenda.equipment import FREEZER, FREEZING, FRIDGE
from entremetry.dessert.dessert import Component, Line
from entremetry.method.share import Part
from entremetry.method.step import AnyStep, scaled_steps
from entremetry.planning import Merge, Need, Resource, Task

ADDED_UP = (FREEZER, FRIDGE, FREEZING)
"""Resources of which a larger batch takes up more; a pan, a bowl or a tray stays one."""
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
                alike.setdefault(signature(component), []).append((course, component))
    drafts = {name: draft for _, found in flows for name, draft in found.items()}
    for group in alike.values():
        if len({course.key for course, _ in group}) < 2:
            continue
        for number in range(len(group[0][1].steps)):
            same = [drafts[course.task_id(component.id, number)] for course, component in group]
            if not any(draft.id in in_rounds for draft in same):
                yield Merge(tasks=tuple(d.id for d in same), together=_together(same, resources))


def signature(component: Component) -> tuple[Any, ...]:
    """What two components must share to be made in one go: formula, by shares, and method."""
    total = sum(line.mass for line in component.lines)
    lines = sorted((_origin(line), _rounded(line.mass / total)) for line in component.lines)
    steps = scaled_steps(component.steps, 1.0 / total)
    return component.kind, tuple(lines), tuple(_step(step) for step in steps)


def _origin(line: Line) -> str:
    return line.ingredient.id if line.ingredient else str(line.component)


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
    )


def _needs(tasks: Sequence[Task], resources: Mapping[str, Resource]) -> Iterator[Need]:
    for need in tasks[0].needs:
        if need.resource in ADDED_UP:
            amounts = [n.amount for t in tasks for n in t.needs if n.resource == need.resource]
            most = resources[need.resource].capacity
            yield Need(
                resource=need.resource,
                amount=min(most, sum(amounts)),
                part=need.part,
                state=need.state,
                lasting=need.lasting,
            )
        else:
            yield need
