"""One dessert of a menu: what is made, how many, and when it is served."""

from __future__ import annotations

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
        steps = self.assembly
        if component:
            steps = next(tuple(c.steps) for c in self.dessert.components if c.id == component)
        return f"{self.key}/{steps[number].id or f'{component or ASSEMBLY}-{number + 1}'}"
