"""Publications worked out one after another in a thread of their own, and kept."""

from __future__ import annotations

import threading
from collections import OrderedDict
from collections.abc import Callable
from concurrent.futures import Future
from concurrent.futures import TimeoutError as NotYet
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeAlias

from entremetry.errors import EntremetryError
from entremetry.web.background import Background

if TYPE_CHECKING:
    from entremetry.usecases.publishing import Prepared

KEPT = 32
NAME = "publications"


@dataclass(frozen=True, slots=True, kw_only=True)
class Publication:
    """A text in a kitchen, in so many pieces: the same has the same tables and the same page."""

    text: str
    file: str
    pieces: int
    mould: str | None
    kitchen_text: str | None
    language: str


class Stopped(Exception):
    """Somebody stopped it."""


class Preparing:
    """A publication on its way: how far it is, and a way to stop it.

    `future` is there from the moment on that it has begun.
    """

    def __init__(self) -> None:
        self.future: Future[Prepared]
        self.done, self.whole = 0, 0
        self._stop = threading.Event()

    @property
    def stopped(self) -> bool:
        """Whether it was asked to end."""
        return self._stop.is_set()

    @property
    def running(self) -> bool:
        """Whether something may still come of it."""
        return not self.stopped and not self.future.done()

    @property
    def broken(self) -> bool:
        """Whether it ended in a way that is worth another try."""
        if not self.future.done():
            return False
        return not isinstance(self.future.exception(), EntremetryError | Stopped | None)

    def stop(self) -> None:
        """End it at the next point; what is done is thrown away."""
        self._stop.set()

    def heard(self, done: int, whole: int) -> None:
        """Take note of how far it is; Stopped if it is to end."""
        if self.stopped:
            raise Stopped
        self.done, self.whole = done, whole

    def result(self, seconds: float) -> Prepared | None:
        """What came of it if it is there within so many seconds, else None.

        Raises
        ------
        EntremetryError
            As the use case raises it.
        """
        if self.stopped and not self.future.done():
            return None
        try:
            return self.future.result(timeout=seconds)
        except (NotYet, Stopped):
            return None


Job: TypeAlias = "Callable[[Publication, Callable[[int, int], None]], Prepared]"


class PublishWork:
    """A thread that works out one publication after another, and the last of them."""

    def __init__(self, compute: Job | None = None) -> None:
        self._compute = compute or worked_out
        self._kept: OrderedDict[Publication, Preparing] = OrderedDict()
        self._background = Background(NAME)
        self._lock = threading.Lock()

    def ask(self, asked: Publication) -> Preparing:
        """The publication, begun if it is not there; one that was stopped stays so."""
        with self._lock:
            found = self._kept.get(asked)
            if found is None or found.broken:
                found = self._begin(asked)
            self._kept.move_to_end(asked)
            while len(self._kept) > KEPT:
                self._kept.popitem(last=False)
        return found

    def again(self, asked: Publication) -> None:
        """Forget that it was stopped, so that it begins when it is next asked for."""
        with self._lock:
            if asked in self._kept and self._kept[asked].stopped:
                del self._kept[asked]

    def stop_all(self) -> None:
        """End everything."""
        for preparing in tuple(self._kept.values()):
            preparing.stop()

    def _begin(self, asked: Publication) -> Preparing:
        preparing = self._kept[asked] = Preparing()

        def job() -> Prepared:
            preparing.heard(0, 0)
            return self._compute(asked, preparing.heard)

        preparing.future = self._background.begin(job)
        return preparing


def worked_out(asked: Publication, heard: Callable[[int, int], None]) -> Prepared:
    """Work out a publication; `heard` is told how far it is."""
    from entremetry.usecases.publishing import prepared_of_text

    return prepared_of_text(
        asked.text,
        file=asked.file,
        pieces=asked.pieces,
        mould=asked.mould,
        kitchen_text=asked.kitchen_text,
        language=asked.language,
        heard=heard,
    )
