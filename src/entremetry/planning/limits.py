"""How long planning may take, and how it tells of itself."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from entremetry.planning.result import Goal


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """The best so far for one goal; `goal` is None while any plan at all is looked for."""

    goal: Goal | None
    value: int
    bound: int
    seconds: float


def say_nothing(progress: Progress) -> None:
    """Take no notice of progress."""


def never() -> bool:
    """Go on to the end."""
    return False


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """Seconds for everything, threads of the solver, and the two ways to follow and to stop it.

    `explaining` is the part of the time kept for saying why there is no plan.
    """

    seconds: float = 20.0
    explaining: float = 2.0
    workers: int = 2
    seed: int = 1
    progress: Callable[[Progress], None] = say_nothing
    cancelled: Callable[[], bool] = never
