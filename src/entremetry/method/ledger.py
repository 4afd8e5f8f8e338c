"""The book of one making: what came, what went, and what was assumed."""

from __future__ import annotations

from dataclasses import dataclass, field

from entremetry.method.made import Change

STATED = "stated in the method"


@dataclass(slots=True, kw_only=True)
class Ledger:
    """Written while a method is followed; `step` is the step at hand, in words."""

    step: str = ""
    changes: list[Change] = field(default_factory=list)
    assumptions: list[str] = field(default_factory=list)
    soaking_water: dict[str, float] = field(default_factory=dict)
    sources: list[str] = field(default_factory=list)

    def book(self, mass: float, reason: str, because: str = STATED, source: str = "") -> None:
        """Enter a gain (positive) or a loss (negative) [kg], unless it is nothing."""
        if mass != 0.0:
            self.changes.append(
                Change(step=self.step, reason=reason, mass=mass, because=because, source=source)
            )

    def assume(self, text: str, source: str = "", *, everywhere: bool = False) -> None:
        """Enter something taken for granted, with its step unless it holds `everywhere`."""
        told = f"{self.step}: {text}" if self.step and not everywhere else text
        if told not in self.assumptions:
            self.assumptions.append(told)
        if source and source not in self.sources:
            self.sources.append(source)
