"""From one step and what it takes up to its draft."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from entremetry.agenda.course import Course
from entremetry.agenda.draft import Link, StepDraft
from entremetry.agenda.equipment import Equipment
from entremetry.agenda.hands_on import hands_on
from entremetry.agenda.waits import Answers, wait
from entremetry.method.step import AnyStep


@dataclass(frozen=True, slots=True, kw_only=True)
class Drafting:
    """Drafts the steps of a course; `answers` tells their temperatures."""

    course: Course
    equipment: Equipment
    answers: Answers

    def draft(self, component: str, number: int, step: AnyStep, links: Iterable[Link]) -> StepDraft:
        """The draft of a step of a component, or of the assembly (no component), from 0."""
        course = self.course
        hands = hands_on(step, course.dessert.document.pieces)
        return StepDraft(
            id=course.task_id(component, number),
            component=component,
            number=number,
            step=step,
            hands=hands,
            wait=wait(
                step,
                hands=hands.minutes(course.sheet.pieces),
                step_id=course.timed.get((component, number)),
                answers=self.answers,
            ),
            links=tuple(links),
            needs=self.equipment.needs(step, course.batch(component) if component else None),
            pieces=course.sheet.pieces,
        )
