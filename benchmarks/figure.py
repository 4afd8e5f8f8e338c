"""What a benchmark measures: a time, and a reference taken in the same run."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass
from statistics import median


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """Median times in seconds; `target` is what the product promises on one common machine."""

    name: str
    seconds: float
    reference: str
    reference_seconds: float
    target: float

    @property
    def ratio(self) -> float:
        """How many times the reference the measured thing takes."""
        return self.seconds / self.reference_seconds

    def __str__(self) -> str:
        verdict = "within" if self.seconds <= self.target else "OVER"
        return (
            f"{self.name:<44} {self.seconds * 1e3:10.3f} ms  "
            f"{self.ratio:8.2f} x {self.reference:<38} "
            f"{verdict} the target of {self.target * 1e3:g} ms"
        )


def median_seconds(work: Callable[[], object], rounds: int) -> float:
    """Median time of `rounds` calls, after one that is not counted."""
    work()
    return median(seconds(work) for _ in range(rounds))


def seconds(work: Callable[[], object]) -> float:
    """Time of one call."""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start
