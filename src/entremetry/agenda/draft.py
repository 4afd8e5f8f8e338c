"""A step on its way to becoming a task."""

from __future__ import annotations

import math
from dataclasses import dataclass

from entremetry.agenda.hands_on import HandsOn
from entremetry.agenda.keeping import Limit
from entremetry.agenda.waits import Wait
from entremetry.method.step import AnyStep
from entremetry.planning import Delay, Need, Part, Task

CLOSES = {"bake": 1, "freeze-until": 2}
"""Minutes of hands that end a wait: out of the oven, out of the insert's mould."""
FRESH = {"glaze-at": 3, "bake": 2, "place": 2, "thaw-until": 2}
"""How much it matters that a step is done late; common practice, no source."""
BAKING_TOLERANCE = 0.05
"""A bake may go on for that share of its time, and a minute at least, until hands are free."""
WEIGHTS = {Limit.HABIT: 4, Limit.CRAFT: 40, Limit.SAFETY: 400}
"""How much it hurts if a limit gives; by it a plan made anew tells craft from safety."""
KEPT_FROZEN = 14 * 1440


@dataclass(frozen=True, slots=True, kw_only=True)
class Link:
    """The task that goes before, minutes from its end to the start of this one at most, and why."""

    before: str
    most: int
    limit: Limit = Limit.HABIT


@dataclass(frozen=True, slots=True, kw_only=True)
class StepDraft:
    """One step of a component, or of the assembly (`component` is empty), with all it takes.

    `number` counts its steps from 0; `needs` are what it uses while it lasts.
    """

    id: str
    component: str
    number: int
    step: AnyStep
    hands: HandsOn
    wait: Wait
    links: tuple[Link, ...] = ()
    needs: tuple[Need, ...] = ()
    pieces: int = 1

    @property
    def closing(self) -> int:
        """Minutes of hands at the end; a piece that freezes in its mould stays there."""
        if self.step.step == "freeze-until" and not self.component:
            return 0
        return CLOSES.get(self.step.step, 0)

    @property
    def most(self) -> int | None:
        """The longest its wait may last."""
        if self.step.step == "bake":
            return self.wait.minutes + max(1, math.floor(self.wait.minutes * BAKING_TOLERANCE))
        if self.step.step == "freeze-until":
            return self.wait.minutes + KEPT_FROZEN
        return self.wait.most

    def task(self, pieces: int | None = None) -> Task:
        """The task for so many pieces (none for a round, whose pieces are counted later)."""
        minutes = self.hands.minutes(self.pieces if pieces is None else pieces)
        opening = math.floor(minutes + 0.5)
        if minutes > 0.0:
            opening = max(1, opening - self.closing)
        return Task(
            id=self.id,
            hands_on=opening,
            waiting=self.wait.minutes,
            waiting_most=self.most,
            closing=self.closing,
            needs=tuple(n for n in self.needs if opening or n.part is not Part.OPENING),
            freshness=FRESH.get(self.step.step, 0),
            firm=self.step.step == "bake",
        )

    def delays(self) -> tuple[Delay, ...]:
        """What it follows, and how soon."""
        return tuple(
            Delay(
                before=link.before,
                after=self.id,
                most=link.most,
                firm=link.limit is not Limit.HABIT,
                weight=WEIGHTS[link.limit],
            )
            for link in self.links
        )
