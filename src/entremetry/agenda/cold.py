"""What lies in the freezer and in the fridge, from which task to which."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from entremetry.agenda.course import Course
from entremetry.agenda.draft import StepDraft
from entremetry.agenda.equipment import FREEZER, FRIDGE
from entremetry.planning import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class Stay:
    """Dessert in the cold from the start of one task to one end of another. [m3, kg]"""

    place: str
    first: str
    last: str
    reaching: Side
    volume: float
    mass: float


def stays(course: Course, drafts: Mapping[str, StepDraft]) -> Iterator[Stay]:
    """Everything a course keeps in the cold: what freezes, and what thaws in the fridge."""
    for draft in drafts.values():
        if draft.step.step == "freeze-until":
            last = _frozen_until(draft.id, drafts)
            reaching = Side.END if last == draft.id else Side.START
            yield _stay(course, FREEZER, draft, last, reaching)
        elif draft.step.step == "thaw-until" and draft.step.where in (None, "fridge"):
            serving = course.task_id("", len(course.assembly) - 1)
            yield _stay(course, FRIDGE, draft, serving, Side.END)


def _frozen_until(task: str, drafts: Mapping[str, StepDraft]) -> str:
    """The task for which a piece leaves the freezer for good: what is unmoulded goes back."""
    following = [d for d in drafts.values() if any(link.before == task for link in d.links)]
    if not following:
        return task
    after = following[0]
    return _frozen_until(after.id, drafts) if after.step.step == "unmould" else after.id


def _stay(course: Course, place: str, draft: StepDraft, last: str, reaching: Side) -> Stay:
    sheet = course.sheet
    if draft.component:
        batch = course.batch(draft.component)
        volume, mass = batch.volume.value, batch.ready_mass
    else:
        volume = sheet.mould.cavity_volume.value * sheet.mould.cavities
        mass = sheet.piece_mass.value * sheet.pieces
    return Stay(place=place, first=draft.id, last=last, reaching=reaching, volume=volume, mass=mass)
