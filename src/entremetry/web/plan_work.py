"""Plans made one after another in a thread of their own, followed and stopped from a page."""

from __future__ import annotations

import threading
from collections import OrderedDict
from collections.abc import Callable
from concurrent.futures import Future
from concurrent.futures import TimeoutError as NotYet
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeAlias

from entremetry.usecases.kept_plans import PlanAnew
from entremetry.web.background import Background

if TYPE_CHECKING:
    from entremetry.planning import Goal, Limits, Progress

KEPT = 64
NAME = "plans"


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """Where a finished plan is to be read; `anew` if it waits there to be taken."""

    address: str
    anew: PlanAnew | None = None


class Making:
    """A plan on its way: its best so far for each goal, and a way to stop it.

    `future` is there from the moment on that it has begun.
    """

    def __init__(self, key: str, title: str, back: str) -> None:
        self.key, self.title, self.back = key, title, back
        self.future: Future[Made]
        self.best: dict[Goal | None, Progress] = {}
        self._stop = threading.Event()

    @property
    def stopped(self) -> bool:
        """Whether it was asked to end with the best so far."""
        return self._stop.is_set()

    def stop(self) -> None:
        """End with the best so far."""
        self._stop.set()

    def limits(self) -> Limits:
        """Limits that tell of the progress here and listen to a stop."""
        from entremetry.planning import Limits

        return Limits(progress=self._heard, cancelled=self._stop.is_set)

    def result(self, seconds: float) -> Made | None:
        """What was made if it is there within so many seconds, else None.

        Raises
        ------
        EntremetryError
            As the use case raises it.
        """
        try:
            return self.future.result(timeout=seconds)
        except NotYet:
            return None

    def _heard(self, progress: Progress) -> None:
        self.best = {**self.best, progress.goal: progress}


Job: TypeAlias = "Callable[[Limits], Made]"


class PlanWork:
    """A thread that makes one plan after another, and the last that were made."""

    def __init__(self) -> None:
        self._kept: OrderedDict[str, Making] = OrderedDict()
        self._background = Background(NAME)
        self._lock = threading.Lock()

    def begin(self, making: Making, job: Job) -> Making:
        """Begin to make a plan; one that bears a key again is the one begun before."""
        with self._lock:
            if making.key in self._kept:
                return self._kept[making.key]
            making.future = self._background.begin(lambda: job(making.limits()))
            self._kept[making.key] = making
            while len(self._kept) > KEPT:
                self._kept.popitem(last=False)
        return making

    def find(self, key: str) -> Making | None:
        """The making of a plan by its key; None after a restart."""
        return self._kept.get(key)

    def stop_all(self) -> None:
        """End everything with the best so far."""
        for making in tuple(self._kept.values()):
            making.stop()
