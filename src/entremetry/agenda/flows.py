"""All steps of all courses as drafts, and which of them are done in rounds."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import chain

from entremetry.agenda.assembly_flow import assembly_flow
from entremetry.agenda.cold import Stay, stays
from entremetry.agenda.component_flow import component_flow
from entremetry.agenda.course import Course
from entremetry.agenda.draft import StepDraft
from entremetry.agenda.drafting import Drafting
from entremetry.agenda.equipment import Equipment
from entremetry.agenda.moulding import Moulding, mouldings
from entremetry.agenda.waits import Answers
from entremetry.kitchen.mould import Mould
from entremetry.planning.batches import round_id


@dataclass(frozen=True, kw_only=True)
class Flows:
    """Courses in a kitchen that owns moulds; `answers` tells temperatures of a course's steps."""

    courses: tuple[Course, ...]
    equipment: Equipment
    moulds: Mapping[str, Mould]
    answers: Callable[[Course], Answers]

    @cached_property
    def drafts(self) -> dict[str, dict[str, StepDraft]]:
        """Drafts of each course by its key, in the order of the work."""
        return {course.key: self._drafts(course) for course in self.courses}

    def _drafts(self, course: Course) -> dict[str, StepDraft]:
        drafting = Drafting(course=course, equipment=self.equipment, answers=self.answers(course))
        flows = [component_flow(drafting, component) for component in course.components]
        found = [*chain.from_iterable(flows), *assembly_flow(drafting)]
        return {draft.id: draft for draft in found}

    @property
    def each(self) -> Iterator[tuple[Course, StepDraft]]:
        """Every draft with its course."""
        for course in self.courses:
            for draft in self.drafts[course.key].values():
                yield course, draft

    @cached_property
    def stays(self) -> tuple[tuple[Course, Stay], ...]:
        """Everything that lies in the cold."""
        return tuple(
            (course, stay)
            for course in self.courses
            for stay in stays(course, self.drafts[course.key])
        )

    @cached_property
    def mouldings(self) -> tuple[Moulding, ...]:
        """Every mould in use, course by course.

        Raises
        ------
        QuantityError
            If one is filled more often than anybody would.
        """
        found = tuple(
            each
            for course in self.courses
            for each in mouldings(course, self.drafts[course.key], self.moulds)
        )
        for moulding in found:
            moulding.require_few_rounds()
        return found

    @cached_property
    def in_rounds(self) -> dict[str, Moulding]:
        """Tasks that are done in rounds, each with the mould that makes them so."""
        found: dict[str, Moulding] = {}
        for moulding in self.mouldings:
            if moulding.rounds > 1:
                found |= {name: moulding for name in moulding.members if name not in found}
        return found

    def ids(self, task: str) -> tuple[str, ...]:
        """Ids of a task in all its rounds."""
        moulding = self.in_rounds.get(task)
        if moulding is None:
            return (task,)
        return tuple(round_id(task, number + 1) for number in range(moulding.rounds))
