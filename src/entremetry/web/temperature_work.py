"""Temperatures computed one after another in a thread of their own, and kept."""

from __future__ import annotations

import threading
from collections import OrderedDict
from collections.abc import Callable
from concurrent.futures import Future
from concurrent.futures import TimeoutError as NotYet
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from markupsafe import Markup

from entremetry.errors import EntremetryError
from entremetry.web.background import Background
from entremetry.words import ENGLISH, say

if TYPE_CHECKING:
    from entremetry.timings.step_temperatures import StepTemperatures

KEPT = 64
WIDE, NARROW = 700, 280
NAME = "temperatures"


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """A step of a text in a kitchen, in a language: the same question has the same answer."""

    text: str
    file: str
    step: str
    kitchen_text: str | None
    language: str = ENGLISH.code


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """Section at one moment; `key` frames are shown where nothing can be moved."""

    drawing: Markup
    said: str
    key: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """An answer with its drawings."""

    result: StepTemperatures
    wide: Markup
    narrow: Markup
    frames: tuple[Frame, ...]


class TemperatureWork:
    """A thread that answers one question after another, and the last answers."""

    def __init__(self, compute: Callable[[Question], Shown] | None = None) -> None:
        self._compute = compute or shown
        self._kept: OrderedDict[Question, Future[Shown]] = OrderedDict()
        self._background = Background(NAME)
        self._lock = threading.Lock()
        self._warm: Future[Any] | None = None

    @property
    def warming(self) -> bool:
        """Whether the solver is being made ready after the start."""
        return self._warm is not None and not self._warm.done()

    def warm_up(self, job: Callable[[], object]) -> None:
        """Do a first piece of work in the background, so that the solver is compiled."""
        self._warm = self._background.begin(job)

    def ask(self, question: Question) -> Future[Shown]:
        """Answer to a question, now or later."""
        with self._lock:
            found = self._kept.get(question)
            if found is None or _failed(found):
                found = self._kept[question] = self._background.begin(
                    lambda: self._compute(question)
                )
            self._kept.move_to_end(question)
            while len(self._kept) > KEPT:
                self._kept.popitem(last=False)
        return found

    def answer(self, question: Question, seconds: float) -> Shown | None:
        """Answer to a question if it is there within so many seconds, else None.

        Raises
        ------
        EntremetryError
            As the use case raises it.
        """
        try:
            return self.ask(question).result(timeout=seconds)
        except NotYet:
            return None


def _failed(future: Future[Shown]) -> bool:
    """Whether a computation broke, so that it is worth another try."""
    return (
        future.done()
        and future.exception() is not None
        and not isinstance(future.exception(), EntremetryError)
    )


def shown(question: Question) -> Shown:
    """Compute a step's temperatures and draw them."""
    from entremetry.usecases.temperatures import temperatures_of_text

    result = temperatures_of_text(
        question.text,
        file=question.file,
        step=question.step,
        kitchen_text=question.kitchen_text,
        pictures=True,
    )
    return drawn(result)


def drawn(result: StepTemperatures) -> Shown:
    """A result with its curves, for wide and narrow pages, and its frames."""
    from entremetry.publish.temperature_curves import curves_svg

    title = say("Temperatures over time: {name}", name=result.name)
    return Shown(
        result=result,
        wide=Markup(curves_svg(result, title=title, width_px=WIDE)),
        narrow=Markup(curves_svg(result, title=title, width_px=NARROW)),
        frames=_frames(result),
    )


def _frames(result: StepTemperatures) -> tuple[Frame, ...]:
    from entremetry.publish.temperature_section import moment_words, section_frames

    if result.field is None:
        return ()
    drawings = section_frames(result)
    last = len(drawings) - 1
    key = {round(last * share / 5.0) for share in range(6)}
    return tuple(
        Frame(drawing=Markup(drawing), said=moment_words(result.field, k), key=k in key)
        for k, drawing in enumerate(drawings)
    )
