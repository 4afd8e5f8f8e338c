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
        place = [self.file or "document"]
        if self.line is not None:
            place.append(f"line {self.line}")
        if self.field:
            place.append(self.field)
        text = f"{', '.join(place)}: found {self.found}; accepted: {self.accepted}"
        return text + did_you_mean(self.nearest)


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
        super().__init__(f"found {found}; accepted: {accepted}{did_you_mean(self.nearest)}")


class UnknownName(EntremetryError, LookupError):
    """A name that nothing bears, with the nearest names that something does."""

    def __init__(self, thing: str, name: str, known: Iterable[str]) -> None:
        self.thing = thing
        self.name = name
        self.nearest = nearest_names(name, known)
        super().__init__(f"no {thing} is called '{name}'{did_you_mean(self.nearest)}")


class OutsideRange(EntremetryError, ValueError):
    """A value outside the range in which a formula holds."""


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
            f"'{name}' was changed meanwhile: this edit started from revision {started_from}, "
            f"the newest is {newest}; nothing was written, compare the two and save again"
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
    *most, last = nearest
    listed = f"{', '.join(most)} or {last}" if most else last
    return f"; did you mean {listed}?"
