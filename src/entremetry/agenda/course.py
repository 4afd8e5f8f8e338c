"""One dessert of a menu: what is made, how many, and when it is served."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from datetime import datetime
from functools import cached_property

from entremetry.dessert.batch_sheet import BatchSheet, ComponentBatch
from entremetry.dessert.dessert import Component, Dessert
from entremetry.dessert.reckoning import Reckoning
from entremetry.method.step import AnyStep
from entremetry.method.waiting import Serve
from entremetry.timings.timed_step import ASSEMBLY, timed_steps

SERVED = Serve(step="serve")
PLAIN = re.compile(r"[\w.-]+")
"""What a step's own id is made of, if it is to name a task."""


@dataclass(frozen=True, kw_only=True)
class Course:
    """A dessert with its batch sheet and its hour; `key` tells it from the others of the menu."""

    key: str
    reckoning: Reckoning
    sheet: BatchSheet
    at: datetime

    @property
    def dessert(self) -> Dessert:
        """The dessert itself."""
        return self.reckoning.dessert

    @cached_property
    def components(self) -> tuple[Component, ...]:
        """Components of which something is made, those that others are made from first."""
        made = {batch.id for batch in self.sheet.components if batch.ready_mass > 0.0}
        return tuple(each for each in self.dessert.components if each.id in made)

    @cached_property
    def assembly(self) -> tuple[AnyStep, ...]:
        """The steps of the whole dessert; serving is the last, written or not."""
        steps = tuple(self.dessert.document.assembly)
        return steps if steps and steps[-1].step == "serve" else (*steps, SERVED)

    @cached_property
    def timed(self) -> dict[tuple[str, int], str]:
        """Ids by which physics knows a step, by component (none for the assembly) and number."""
        return {
            (each.component.id if each.component else "", each.number - 1): each.id
            for each in timed_steps(self.dessert)
        }

    def batch(self, component: str) -> ComponentBatch:
        """What the batch sheet says of a component."""
        return next(each for each in self.sheet.components if each.id == component)

    def task_id(self, component: str, number: int) -> str:
        """Id of the task of a step, counted from 0."""
        return self.task_ids[component, number]

    @cached_property
    def task_ids(self) -> dict[tuple[str, int], str]:
        """Ids of all tasks by component and number: the step's own id if no other step bears it."""
        steps = {(c.id, n): step for c in self.dessert.components for n, step in enumerate(c.steps)}
        steps |= {("", n): step for n, step in enumerate(self.assembly)}
        numbered = {place: _numbered(*place) for place in steps}
        borne = Counter([*numbered.values(), *(step.id for step in steps.values())])
        return {
            place: f"{self.key}/{_own(step.id, borne) or numbered[place]}"
            for place, step in steps.items()
        }


def _numbered(component: str, number: int) -> str:
    """A component's step by its number; one that is called like the assembly is told apart."""
    between = ".." if component == ASSEMBLY else "-"
    return f"{component or ASSEMBLY}{between}{number + 1}"


def _own(written: str | None, borne: Counter[str | None]) -> str:
    """The id that an author wrote, if it can name a task."""
    return written if written and borne[written] == 1 and PLAIN.fullmatch(written) else ""
