"""A mass of food with its constituents and the gas whipped into it."""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite

from entremetry.errors import BalanceError
from entremetry.larder.constituents import NAMES, Constituents, spoken
from entremetry.words import decimal, say

ROUNDING = 1e-12  # kg; what floating point may leave below nothing


@dataclass(frozen=True, slots=True, kw_only=True)
class Mix:
    """Food in a pan or bowl. Constituents in kg, gas in m3."""

    constituents: Constituents
    gas: float = 0.0

    def __post_init__(self) -> None:
        """Refuse less than nothing of a constituent or of gas."""
        for name in NAMES:
            amount = getattr(self.constituents, name)
            if not isfinite(amount) or amount < -ROUNDING:
                raise BalanceError(
                    say(
                        "a mix cannot hold {amount} of {constituent}: "
                        "more is taken out than is in it",
                        amount=decimal(f"{amount * 1000:.4g} g"),
                        constituent=spoken(name),
                    )
                )
        if not isfinite(self.gas) or self.gas < 0.0:
            gas = decimal(f"{self.gas * 1e6:.4g} ml")
            raise BalanceError(say("a mix cannot hold {gas} of gas", gas=gas))

    @property
    def mass(self) -> float:
        """Total mass. [kg]"""
        return self.constituents.total


EMPTY = Mix(constituents=Constituents())


def mixed(*mixes: Mix) -> Mix:
    """All mixes put together; nothing is lost, gas included (see `fold` for what folding costs)."""
    together = EMPTY
    for mix in mixes:
        together = Mix(
            constituents=together.constituents + mix.constituents, gas=together.gas + mix.gas
        )
    return together
