"""Variables of one task: its ends, its wait, and the intervals of its parts."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from entremetry.planning.task import Part, Side, Task

if TYPE_CHECKING:
    from entremetry.planning.linear import Interval, Linear, Truth


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskTimes:
    """Start, end and wait of a task; `present` is None if there is no choice about it.

    `fixed` names the ends that have happened already, and are whole numbers. An `absent` task
    takes place within another one, or not at all.
    """

    task: Task
    start: Linear
    end: Linear
    wait: Linear
    present: Truth | None = None
    fixed: frozenset[Side] = frozenset()
    absent: bool = False

    def at(self, side: Side) -> Linear:
        """Return one end."""
        return self.start if side is Side.START else self.end

    def stretch(self, part: Part) -> Interval:
        """Return first minute, length and end of a part."""
        task = self.task
        if part is Part.OPENING:
            return self.start, task.hands_on, self.start + task.hands_on
        if part is Part.CLOSING:
            return self.end - task.closing, task.closing, self.end
        if part is Part.WAITING:
            return self.start + task.hands_on, self.wait, self.end - task.closing
        return self.start, self.wait + task.hands_on + task.closing, self.end

    @property
    def is_done(self) -> bool:
        """Whether both ends have happened."""
        return self.fixed == frozenset(Side)

    @property
    def is_running(self) -> bool:
        """Whether only the start has happened."""
        return self.fixed == frozenset({Side.START})


@dataclass(frozen=True, slots=True, kw_only=True)
class Hand:
    """One stretch of somebody's hands that is still to be planned.

    `people` maps each person who may do it to a literal, or to None if there is no choice.
    """

    task: str
    part: Part
    start: Linear
    minutes: int
    people: dict[str, Truth | None]
    present: Truth | None = None

    @property
    def end(self) -> Linear:
        """Minute after the last."""
        return self.start + self.minutes

    def literals(self, person: str) -> list[Truth]:
        """Return what has to be true for this person to be the one who does it."""
        return [one for one in (self.people[person], self.present) if one is not None]
