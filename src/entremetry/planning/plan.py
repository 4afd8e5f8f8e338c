"""When everything is done, and by whom."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.planning.task import Part


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """Minutes of somebody's hands on one part of a task."""

    person: str
    part: Part
    start: int
    end: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A task with its times; `within` names the merged task that does it, if one does."""

    task: str
    start: int
    end: int
    hands: tuple[Stretch, ...] = ()
    within: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """All tasks placed, in the order of their starts."""

    placed: tuple[Placed, ...]

    def at(self, task: str) -> Placed:
        """Return where a task stands."""
        return next(placed for placed in self.placed if placed.task == task)

    def holds(self, task: str) -> bool:
        """Tell whether a task stands in the plan."""
        return any(placed.task == task for placed in self.placed)
