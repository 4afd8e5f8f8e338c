"""How long a step takes and how warm it is meanwhile."""

from __future__ import annotations

from pathlib import Path

from entremetry.store.files import read_text
from entremetry.store.kernel_cache import require_fresh_kernels
from entremetry.timings.answer import answer
from entremetry.timings.step_temperatures import StepTemperatures
from entremetry.timings.timed_step import TimedStep, timed_steps
from entremetry.usecases.batch import reckoned, reckoned_as_spoken, surroundings, surroundings_of
from entremetry.words import say_later


def temperatures(
    path: Path, *, step: str, kitchen: Path | None = None, pictures: bool = False
) -> StepTemperatures:
    """Temperatures of one step of a document in a file.

    Raises
    ------
    EntremetryError
        If the document or the kitchen is refused, or there is no such step.
    """
    around = surroundings_of(path, kitchen)
    text = read_text(path, what=say_later("dessert document"))
    require_fresh_kernels()
    return answer(reckoned(text, str(path), around), step, around.kitchen, pictures=pictures)


def temperatures_of_text(
    text: str,
    *,
    file: str = "document",
    step: str,
    kitchen_text: str | None = None,
    pictures: bool = True,
) -> StepTemperatures:
    """Temperatures of one step of a document at hand as text, in the spoken language."""
    around = surroundings(kitchen_text, "kitchen")
    require_fresh_kernels()
    found = reckoned_as_spoken(text, file, around)
    return answer(found, step, around.kitchen, pictures=pictures)


def timed_steps_of_text(
    text: str, *, file: str = "document", kitchen_text: str | None = None
) -> tuple[TimedStep, ...]:
    """The steps that can be timed, in the order of the work."""
    around = surroundings(kitchen_text, "kitchen")
    return timed_steps(reckoned_as_spoken(text, file, around).dessert)


def timed_steps_of(path: Path, *, kitchen: Path | None = None) -> tuple[TimedStep, ...]:
    """The steps of a document in a file that can be timed, in the order of the work."""
    around = surroundings_of(path, kitchen)
    text = read_text(path, what=say_later("dessert document"))
    return timed_steps(reckoned(text, str(path), around).dessert)
