"""The words of each task: its step as a sentence and the amounts that enter, for its round."""

from __future__ import annotations

from entremetry.agenda.course import Course
from entremetry.agenda.draft import StepDraft
from entremetry.agenda.words import TaskWords
from entremetry.dessert.dessert import Component
from entremetry.dessert.telling import line_names
from entremetry.method.route import route
from entremetry.method.wording import sentence, sentences
from entremetry.quantities import format_mass
from entremetry.words import say


def task_words(
    course: Course, draft: StepDraft, *, share: float = 1.0, number: int = 1, rounds: int = 1
) -> TaskWords:
    """What is said of one task that handles a share of the batch."""
    component = next((c for c in course.components if c.id == draft.component), None)
    if component is None:
        text, amounts = _of_assembly(course, draft, share)
    else:
        text, amounts = _of_component(course, component, draft, share)
    return TaskWords(
        dessert=course.dessert.document.id,
        dessert_name=course.dessert.document.name,
        component=draft.component,
        component_name=component.name if component else "",
        kind=draft.step.step,
        text=text,
        amounts=amounts,
        because="; ".join(part for part in (draft.hands.because, draft.wait.because) if part),
        round=number,
        rounds=rounds,
    )


def _of_component(
    course: Course, component: Component, draft: StepDraft, share: float
) -> tuple[str, tuple[str, ...]]:
    batch = course.batch(component.id)
    lines = [line.name for line in component.lines]
    text = sentences(
        lines,
        component.steps,
        component=component.name,
        names=line_names(component, course.dessert),
        factor=batch.factor * share,
        soaking_water=dict(course.reckoning.makings[component.id].soaking_water),
    )[draft.number]
    entering = route(lines, component.steps, component=component.id).stops[draft.number].lines
    amounts = tuple(
        f"{format_mass(line.mass * share)} {line.name}"
        for line in batch.lines
        if line.line in entering
    )
    return text, amounts


def _of_assembly(course: Course, draft: StepDraft, share: float) -> tuple[str, tuple[str, ...]]:
    sheet = course.sheet
    text = (
        sheet.assembly[draft.number]
        if draft.number < len(sheet.assembly)
        else sentence(draft.step, names=course.dessert.names)
    )
    cavities = round(sheet.mould.cavities * share)
    if draft.step.step == "fill":
        each = tuple(step.text for step in sheet.fill_steps)
        return text, (say("{number} cavities", number=cavities), *each) if cavities > 1 else each
    return text, ()
