"""What a method makes of a formula, and where the rest went."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from entremetry.formula.mix import Mix
from entremetry.sources.figure import Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One gain or loss of mass: positive `mass` came in, negative went out. [kg]"""

    step: str
    reason: str
    mass: float
    because: str
    source: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """One batch of a formula taken through its method, at the scale the formula is written.

    `mass_in` is all that was weighed (formula lines and water taken up in soaking), `mix` what
    is ready for the mould; `mix.mass == mass_in + sum(change.mass for losses)` to 1e-12.
    `kept` is the share of each line that is still there at the end, water driven off apart: none of
    what is strained out, less than all where a part stays in bowl or bag.
    `raw_density` is that of a dough before the oven, else the same as `density`. `assumptions`
    are sentences for the reader: what the method does not state and was taken for granted.
    """

    mass_in: float
    mix: Mix
    density: Figure
    raw_density: Figure
    changes: tuple[Change, ...]
    soaking_water: tuple[tuple[str, float], ...] = ()
    assumptions: tuple[str, ...] = ()
    kept: Mapping[str, float] = field(default_factory=dict)

    @property
    def loss(self) -> float:
        """Mass that went in and is not there at the end. [kg]"""
        return self.mass_in - self.mix.mass
