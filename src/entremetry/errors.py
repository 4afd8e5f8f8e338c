"""Every error of the product, on one page.

::

    EntremetryError
    ├── DocumentError      a document is refused; holds all its faults       exit 2
    ├── QuantityError      a text that is no quantity, or of a wrong kind    exit 2
    ├── UnknownName        a name that nothing bears; offers the nearest     exit 2
    ├── OutsideRange       a value where a formula does not hold             exit 2
    ├── FitError           parts that do not fit into one another            exit 2
    ├── BalanceError       a mass that cannot be lost, kept or reached       exit 2
    ├── ProblemError       tasks that contradict themselves; holds all faults  exit 2
    ├── SolverError        a computation that does not converge; says where      exit 2
    └── StoreError         something cannot be read, kept or written         exit 2
        └── Conflict       it was changed meanwhile by someone else          exit 2
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from difflib import get_close_matches

from entremetry.words import either, say, say_as, say_as_later


class EntremetryError(Exception):
    """Anything the product refuses, with a message for the person who asked."""

    exit_status = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One thing wrong in a document: where, what was found, what is accepted."""

    field: str
    found: str
    accepted: str
    file: str | None = None
    line: int | None = None
    nearest: tuple[str, ...] = ()

    def __str__(self) -> str:
        place = [self.file or say("document")]
        if self.line is not None:
            place.append(say("line {number}", number=self.line))
        if self.field:
            place.append(self.field)
        told = say(
            "{place}: found {found}; accepted: {accepted}",
            place=", ".join(place),
            found=self.found,
            accepted=self.accepted,
        )
        return told + did_you_mean(self.nearest)


class DocumentError(EntremetryError):
    """A document is refused; `faults` holds everything wrong with it."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(faults)
        super().__init__("\n".join(str(fault) for fault in self.faults))


class QuantityError(EntremetryError, ValueError):
    """A text that cannot be read as the quantity that is wanted."""

    def __init__(self, found: str, accepted: str, nearest: Sequence[str] = ()) -> None:
        self.found = found
        self.accepted = accepted
        self.nearest = tuple(nearest)
        told = say("found {found}; accepted: {accepted}", found=found, accepted=accepted)
        super().__init__(told + did_you_mean(self.nearest))


class UnknownName(EntremetryError, LookupError):
    """A name that nothing bears, with the nearest names that something does.

    `thing` is one of `THINGS`, with the fields that stand in it.
    """

    def __init__(self, thing: str, name: str, known: Iterable[str], **fields: str) -> None:
        self.thing = thing.format(**fields) if fields else thing
        self.name = name
        self.nearest = nearest_names(name, known)
        none = say_as("none", thing, **fields)
        told = say("no {thing} is called '{name}'", thing=none, name=name)
        super().__init__(told + did_you_mean(self.nearest))


class OutsideRange(EntremetryError, ValueError):
    """A value outside the range in which a formula holds.

    `told` has what it is a value of, what was found, and what is accepted, if it is as simple as
    that.
    """

    told: tuple[str, str, str] | None = None

    @classmethod
    def of(cls, what: str, found: str, accepted: str) -> OutsideRange:
        """The refusal of one value."""
        error = cls(
            say(
                "{what}: found {found}; accepted: {accepted}",
                what=what,
                found=found,
                accepted=accepted,
            )
        )
        error.told = what, found, accepted
        return error


class FitError(EntremetryError):
    """Two parts that do not fit, and by how much."""

    def __init__(self, message: str, *, parts: tuple[str, str], missing: float) -> None:
        """Keep the names of both parts and the length that is missing [m]."""
        self.parts = parts
        self.missing = missing
        super().__init__(message)


class BalanceError(EntremetryError):
    """A mass that a step cannot lose, keep or reach."""


class ProblemError(EntremetryError):
    """Tasks and resources that cannot be planned as written; `faults` holds everything wrong."""

    def __init__(self, faults: Iterable[str]) -> None:
        self.faults = tuple(faults)
        super().__init__("\n".join(self.faults))


class SolverError(EntremetryError):
    """A computation that does not converge, with the step where it stopped."""


class StoreError(EntremetryError):
    """Something that cannot be read, kept or written."""


class Conflict(StoreError):
    """A newer revision exists than the one an edit started from; nothing was written."""

    def __init__(self, name: str, *, started_from: int, newest: int) -> None:
        self.started_from = started_from
        self.newest = newest
        super().__init__(
            say(
                "'{name}' was changed meanwhile: this edit started from revision {started_from}, "
                "the newest is {newest}; nothing was written, compare the two and save again",
                name=name,
                started_from=started_from,
                newest=newest,
            )
        )


def nearest_names(name: str, known: Iterable[str], count: int = 3) -> tuple[str, ...]:
    """Return up to `count` of the `known` names that look most like `name`."""
    names = sorted(set(known))
    folded = {candidate.casefold(): candidate for candidate in names}
    close = get_close_matches(name.casefold(), folded, n=count, cutoff=0.5)
    return tuple(folded[match] for match in close)


def did_you_mean(nearest: Sequence[str]) -> str:
    """Say which names are near, or nothing."""
    if not nearest:
        return ""
    return say("; did you mean {names}?", names=either(nearest))


THINGS = (
    say_as_later("none", "allergen"),
    say_as_later("none", "allergen or ingredient"),
    say_as_later("none", "component"),
    say_as_later("none", "component of this dessert"),
    say_as_later("none", "component, line or ingredient of this dessert"),
    say_as_later("none", "cross-section of a log"),
    say_as_later("none", "cross-section of a ring"),
    say_as_later("none", "dessert"),
    say_as_later("none", "dessert of the plan"),
    say_as_later("none", "dessert of this menu"),
    say_as_later("none", "dessert step that can be timed"),
    say_as_later("none", "ingredient"),
    say_as_later("none", "ingredient of this dessert"),
    say_as_later("none", "kitchen"),
    say_as_later("none", "line of this formula"),
    say_as_later("none", "line of {component}"),
    say_as_later("none", "line or ingredient of this dessert"),
    say_as_later("none", "measure of a formula"),
    say_as_later("none", "measure of {ingredient}"),
    say_as_later("none", "mould"),
    say_as_later("none", "mould or vessel"),
    say_as_later("none", "part that may wait"),
    say_as_later("none", "place"),
    say_as_later("none", "plan"),
    say_as_later("none", "prices"),
    say_as_later("none", "revision of '{document}'"),
    say_as_later("none", "shape of a mould"),
    say_as_later("none", "source"),
    say_as_later("none", "step of the plan"),
    say_as_later("none", "step that can be timed"),
    say_as_later("none", "symptom"),
    say_as_later("none", "task of this plan"),
    say_as_later("none", "vessel"),
)
"""Whatever can be called by a wrong name; a language says each as it does after 'no'."""
