"""The steps of one component as drafts: each follows what its bowl and its lines come from."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from entremetry.agenda.course import Course
from entremetry.agenda.draft import Link, StepDraft
from entremetry.agenda.drafting import Drafting
from entremetry.agenda.keeping import WARM, Limit, keeps, keeps_ready, limit_after, rests_cold
from entremetry.dessert.dessert import Component
from entremetry.method.cooking import CoolTo, Heated
from entremetry.method.route import Stop, route
from entremetry.method.shaping import Bake
from entremetry.method.step import AnyStep
from entremetry.method.waiting import FreezeUntil

SPOILS = ("insert", "garnish")
"""Kinds that may wait for hours once they are finished, and spoil if they do it warm."""


def component_flow(drafting: Drafting, component: Component) -> tuple[StepDraft, ...]:
    """Drafts of all steps of a component, in their order."""
    stops = route(
        [line.name for line in component.lines], component.steps, component=component.id
    ).stops
    return tuple(
        drafting.draft(
            component.id, number, step, _links(drafting.course, component, number, stops)
        )
        for number, step in enumerate(component.steps)
    )


def finished(course: Course, component: Component) -> Link | None:
    """The last task of a component and how long the component keeps; None if nothing is done."""
    if not component.steps:
        return None
    last, _ = last_step(component)
    kept = keeps_ready(component.steps[last], component.kind)
    return Link(before=course.task_id(component.id, last), most=kept.minutes, limit=kept.limit)


def last_step(component: Component) -> tuple[int, bool]:
    """Number of the step that finishes a component, and whether it leaves it hot."""
    steps = component.steps
    found = route([line.name for line in component.lines], steps, component=component.id)
    last = max(n for n, stop in enumerate(found.stops) if stop.bowl == found.last_bowl)
    return last, last in hot_after(steps, found.stops)


def hot_when_ready(component: Component) -> bool:
    """Whether something that spoils may be set aside hot."""
    return component.kind in SPOILS and bool(component.steps) and last_step(component)[1]


def _links(
    course: Course, component: Component, number: int, stops: tuple[Stop, ...]
) -> Iterator[Link]:
    """What a step takes up: its bowl as it was left, other bowls, other components."""
    step, stop = component.steps[number], stops[number]
    hot = hot_after(component.steps, stops)
    for last in taken_up(number, stops):
        found = link_after(
            course.task_id(component.id, last), component.steps[last], component.kind, step
        )
        yield from not_warm_for_long(found) if last in hot else (found,)
    others = {line.name: line.component for line in component.lines if line.component}
    for line in stop.lines:
        if line in others:
            other = next(c for c in course.dessert.components if c.id == others[line])
            link = finished(course, other)
            if link is not None:
                yield link


def taken_up(number: int, stops: Sequence[Stop]) -> tuple[int, ...]:
    """Numbers of the steps that left what a step finds in its bowl, and the other bowls."""
    left: dict[str, int] = {}
    for before, stop in enumerate(stops[:number]):
        left[stop.bowl] = before
    stop = stops[number]
    return tuple(left[bowl] for bowl in dict.fromkeys((stop.bowl, *stop.bowls)) if bowl in left)


def hot_after(steps: Sequence[AnyStep], stops: Sequence[Stop]) -> frozenset[int]:
    """Numbers of the steps that leave something hot: heated, and not cooled since.

    What is baked is dry enough to stand, and what states how long it keeps may do so.
    """
    hot: set[int] = set()
    for number, step in enumerate(steps):
        cooled = isinstance(step, CoolTo | FreezeUntil | Bake) or rests_cold(step)
        if isinstance(step, Heated) or (not cooled and hot & {*taken_up(number, stops)}):
            hot.add(number)
    return frozenset(number for number in hot if steps[number].keeps is None)


def not_warm_for_long(link: Link) -> Iterator[Link]:
    """A limit, and the one of safety that stays if it gives."""
    if link.most < WARM:
        yield link
        yield replace(link, most=WARM, limit=Limit.SAFETY)
    else:
        yield replace(link, most=WARM, limit=Limit.SAFETY)


def link_after(before: str, step: AnyStep, kind: str, following: AnyStep) -> Link:
    """The limit between a step and the one after it: as the document says, else as it keeps."""
    if following.within is not None:
        most = math.floor(following.within / 60.0 + 1e-9)
        return Link(before=before, most=most, limit=max(limit_after(step), Limit.CRAFT, key=_order))
    kept = keeps(step, kind)
    return Link(before=before, most=kept.minutes, limit=kept.limit)


def _order(limit: Limit) -> int:
    """Harder limits last."""
    return tuple(Limit).index(limit)
