"""What may go wrong with a dessert: the bench checks of a document."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from entremetry.checks.band import Outcome
from entremetry.checks.registry import check
from entremetry.checks.verdict import Verdict
from entremetry.dessert.reckoning import Reckoning
from entremetry.errors import EntremetryError
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.store.files import read_text
from entremetry.timings.step_temperatures import StepTemperatures
from entremetry.timings.timed_step import timed_steps
from entremetry.usecases.batch import (
    Surroundings,
    reckoned,
    reckoned_as_spoken,
    surroundings,
    surroundings_of,
)
from entremetry.words import say_later


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """A dessert with every verdict on it, what fails first; `untimed` steps were not computed."""

    id: str
    name: str
    names: Mapping[str, str]
    verdicts: tuple[Verdict, ...]
    untimed: tuple[str, ...] = ()

    def of(self, outcome: Outcome) -> tuple[Verdict, ...]:
        """The verdicts with this outcome."""
        return tuple(verdict for verdict in self.verdicts if verdict.verdict is outcome)

    @property
    def fails(self) -> bool:
        """Whether at least one check fails."""
        return bool(self.of(Outcome.FAIL))


def checks(
    path: Path, *, kitchen: Path | None = None, mould: str | None = None, times: bool = True
) -> Checked:
    """Every bench check of a document in a file; without `times` nothing is simulated.

    Raises
    ------
    EntremetryError
        With one message that says what, where and how to mend it.
    """
    around = surroundings_of(path, kitchen)
    text = read_text(path, what=say_later("dessert document"))
    return _checked(reckoned(text, str(path), around, mould), around.kitchen, times)


def checks_of_text(
    text: str,
    *,
    file: str = "document",
    kitchen_text: str | None = None,
    mould: str | None = None,
    times: bool = True,
) -> Checked:
    """Every bench check of a document at hand as text, in the spoken language; see `checks`."""
    around = surroundings(kitchen_text, "kitchen")
    return _checked(reckoned_as_spoken(text, file, around, mould), around.kitchen, times)


def checked_in(text: str, file: str, around: Surroundings, *, times: bool = True) -> Checked:
    """Every bench check of a text that is read against what is given; see `checks`."""
    return _checked(reckoned(text, file, around), around.kitchen, times)


def _checked(reckoning: Reckoning, kitchen: KitchenDocument | None, times: bool) -> Checked:
    found: dict[str, StepTemperatures] = {}
    untimed = []
    for step in timed_steps(reckoning.dessert):
        answer = _answer(reckoning, step.id, kitchen) if times else None
        if answer is None:
            untimed.append(step.id)
        else:
            found[step.id] = answer
    document = reckoning.dessert.document
    return Checked(
        id=document.id,
        name=document.name,
        names=reckoning.dessert.names,
        verdicts=check(reckoning, kitchen, found),
        untimed=tuple(untimed),
    )


def _answer(
    reckoning: Reckoning, step: str, kitchen: KitchenDocument | None
) -> StepTemperatures | None:
    """Temperatures of a step; None if the document does not tell enough for them."""
    from entremetry.store.kernel_cache import require_fresh_kernels
    from entremetry.timings.answer import answer

    require_fresh_kernels()

    try:
        return answer(reckoning, step, kitchen)
    except EntremetryError:
        return None
