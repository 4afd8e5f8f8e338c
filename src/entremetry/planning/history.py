"""What has happened already when a plan is made anew."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """A finished task with its real times."""

    task: str
    start: int
    end: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Running:
    """A task that has begun and is not finished; `person` has the hands in it, if known."""

    task: str
    start: int
    person: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class History:
    """The minute it is now, and what is done or running; all else is still to come.

    What failed and has to be made again is simply not listed as done.
    """

    now: int
    done: tuple[Done, ...] = ()
    running: tuple[Running, ...] = ()

    @property
    def told(self) -> tuple[str, ...]:
        """Tasks that are done or running."""
        return (*(one.task for one in self.done), *(one.task for one in self.running))

    def done_task(self, task: str) -> Done | None:
        """Return the record of a finished task."""
        return next((one for one in self.done if one.task == task), None)

    def running_task(self, task: str) -> Running | None:
        """Return the record of a running task."""
        return next((one for one in self.running if one.task == task), None)
