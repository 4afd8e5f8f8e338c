"""A mass of food with its constituents and the gas whipped into it."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.larder.constituents import Constituents


@dataclass(frozen=True, slots=True, kw_only=True)
class Mix:
    """Food in a pan or bowl. Constituents in kg, gas in m3."""

    constituents: Constituents
    gas: float = 0.0

    @property
    def mass(self) -> float:
        """Total mass. [kg]"""
        return self.constituents.total
