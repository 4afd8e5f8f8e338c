"""The book of one making: what came, what went, and what was assumed."""

from __future__ import annotations

from dataclasses import dataclass, field

from entremetry.method.made import Change
from entremetry.words import say, say_later

STATED = say_later("stated in the method")


@dataclass(slots=True, kw_only=True)
class Ledger:
    """Written while a method is followed, in the language that is spoken.

    `step` is the step at hand, in words.
    """

    step: str = ""
    changes: list[Change] = field(default_factory=list)
    assumptions: list[str] = field(default_factory=list)
    soaking_water: dict[str, float] = field(default_factory=dict)
    sources: list[str] = field(default_factory=list)

    def book(self, mass: float, reason: str, because: str = "", source: str = "") -> None:
        """Enter a gain (positive) or a loss (negative) [kg], unless it is nothing."""
        if mass != 0.0:
            why = because or say(STATED)
            self.changes.append(
                Change(step=self.step, reason=reason, mass=mass, because=why, source=source)
            )

    def assume(self, text: str, source: str = "", *, everywhere: bool = False) -> None:
        """Enter something taken for granted, with its step unless it holds `everywhere`."""
        told = text
        if self.step and not everywhere:
            told = say("{step}: {text}", step=self.step, text=text)
        if told not in self.assumptions:
            self.assumptions.append(told)
        if source and source not in self.sources:
            self.sources.append(source)
