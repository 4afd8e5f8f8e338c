"""The steps of one component as drafts: each follows what its bowl and its lines come from."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.agenda.course import Course
from entremetry.agenda.draft import Link, StepDraft
from entremetry.agenda.equipment import Equipment
from entremetry.agenda.hands_on import hands_on
from entremetry.agenda.keeping import Limit, keeps, keeps_ready, limit_after
from entremetry.agenda.waits import Answers, wait
from entremetry.dessert.dessert import Component
from entremetry.method.route import Stop, route
from entremetry.method.step import AnyStep


def component_flow(
    course: Course, component: Component, equipment: Equipment, answers: Answers
) -> tuple[StepDraft, ...]:
    """Drafts of all steps of a component, in their order."""
    stops = route(
        [line.name for line in component.lines], component.steps, component=component.id
    ).stops
    drafts: list[StepDraft] = []
    for number, step in enumerate(component.steps):
        hands = hands_on(step, course.dessert.document.pieces)
        drafts.append(
            StepDraft(
                id=course.task_id(component.id, number),
                component=component.id,
                number=number,
                step=step,
                hands=hands,
                wait=wait(
                    step,
                    hands=hands.minutes(course.sheet.pieces),
                    step_id=course.timed.get((component.id, number)),
                    answers=answers,
                ),
                links=tuple(_links(course, component, number, stops)),
                needs=equipment.needs(step, course.batch(component.id)),
                pieces=course.sheet.pieces,
            )
        )
    return tuple(drafts)


def finished(course: Course, component: Component) -> Link | None:
    """The last task of a component and how long the component keeps; None if nothing is done."""
    if not component.steps:
        return None
    steps = component.steps
    found = route([line.name for line in component.lines], steps, component=component.id)
    last = max(n for n, stop in enumerate(found.stops) if stop.bowl == found.last_bowl)
    kept = keeps_ready(steps[last], component.kind)
    return Link(before=course.task_id(component.id, last), most=kept.minutes, limit=kept.limit)


def _links(
    course: Course, component: Component, number: int, stops: tuple[Stop, ...]
) -> Iterator[Link]:
    """What a step takes up: its bowl as it was left, other bowls, other components."""
    step, stop = component.steps[number], stops[number]
    for bowl in dict.fromkeys((stop.bowl, *stop.bowls)):
        before = [n for n in range(number) if stops[n].bowl == bowl]
        if before:
            yield link_after(
                course.task_id(component.id, before[-1]),
                component.steps[before[-1]],
                component.kind,
                step,
            )
    others = {line.name: line.component for line in component.lines if line.component}
    for line in stop.lines:
        if line in others:
            other = next(c for c in course.dessert.components if c.id == others[line])
            link = finished(course, other)
            if link is not None:
                yield link


def link_after(before: str, step: AnyStep, kind: str, following: AnyStep) -> Link:
    """The limit between a step and the one after it: as the document says, else as it keeps."""
    if following.within is not None:
        most = max(0, int(following.within // 60))
        return Link(before=before, most=most, limit=max(limit_after(step), Limit.CRAFT, key=_order))
    kept = keeps(step, kind)
    return Link(before=before, most=kept.minutes, limit=kept.limit)


def _order(limit: Limit) -> int:
    """Harder limits last."""
    return tuple(Limit).index(limit)
