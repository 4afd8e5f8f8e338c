"""The steps of the whole dessert as drafts, and where each component comes in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from entremetry.agenda.component_flow import finished, link_after, not_warm_for_long
from entremetry.agenda.course import Course
from entremetry.agenda.draft import Link, StepDraft
from entremetry.agenda.drafting import Drafting
from entremetry.agenda.keeping import rests_cold
from entremetry.dessert.document import DessertDocument
from entremetry.method.step import AnyStep
from entremetry.method.waiting import Until

GLAZED, FILLED, PUT = "glaze-at", "fill", "place"
AT_ROOM = (GLAZED, PUT, "cut")
ROLE_ENTERS = {"coating": GLAZED, "garnish": PUT}


def assembly_flow(drafting: Drafting) -> tuple[StepDraft, ...]:
    """Drafts of all steps of the assembly, in their order; serving is the last."""
    course = drafting.course
    entering = _entering(course)
    return tuple(
        drafting.draft("", number, step, [*_before(course, number), *entering.get(number, ())])
        for number, step in enumerate(course.assembly)
    )


def _before(course: Course, number: int) -> Iterator[Link]:
    """The step before; what was frozen does not lie at the bench for long."""
    if number:
        before = course.assembly[number - 1]
        found = link_after(course.task_id("", number - 1), before, "", course.assembly[number])
        yield from not_warm_for_long(found) if out_of_the_cold(course, number - 1) else (found,)


def out_of_the_cold(course: Course, number: int) -> bool:
    """Whether a step of the assembly leaves at the bench what has been in the freezer or fridge.

    What is unmoulded goes back.
    """
    step, before = course.assembly[number], course.assembly[:number]
    was_cold = any(isinstance(each, Until) or rests_cold(each) for each in before)
    return was_cold and step.step in AT_ROOM and step.keeps is None


def _entering(course: Course) -> dict[int, list[Link]]:
    """What comes in at each step, by its number."""
    found: dict[int, list[Link]] = {}
    used = {line.component for c in course.components for line in c.lines if line.component}
    for component in course.components:
        link = finished(course, component)
        placed = any(p.component == component.id for p in course.dessert.document.placement)
        if link is not None and (placed or component.id not in used):
            found.setdefault(enters_at(course, component.id), []).append(link)
    return found


def enters_at(course: Course, component: str) -> int:
    """Number of the assembly step at which a component of a course comes in."""
    return entering_step(course.dessert.document, course.assembly, component)


def entering_step(document: DessertDocument, assembly: Sequence[AnyStep], component: str) -> int:
    """Number of the step of an assembly at which a component comes in.

    The step that names it; else the glazing for a coating, the last placing for a garnish, the
    placing for a base that lies under the piece, the filling for all others, each time one that
    names nothing else if there is one; else the first step.
    """
    for number, step in enumerate(assembly):
        if component in step.what:
            return number
    placement = next((p for p in document.placement if p.component == component), None)
    role = "" if placement is None else placement.role
    wanted = ROLE_ENTERS.get(role, FILLED)
    if getattr(placement, "sits", "") == "under":
        wanted = PUT
    fitting = [number for number, step in enumerate(assembly) if step.step == wanted]
    unnamed = [number for number in fitting if not assembly[number].what]
    found = unnamed or fitting or [0]
    return found[-1] if role == "garnish" else found[0]
