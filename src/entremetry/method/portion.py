"""One line of a formula, weighed."""

from __future__ import annotations

from dataclasses import dataclass, field

from entremetry.larder.constituents import Constituents


@dataclass(frozen=True, slots=True, kw_only=True)
class Portion:
    """What one line of a formula brings along: constituents in kg, gas in m3.

    `name` is how it is printed, `ingredient` the id it has in the larder, or of the component if
    the line is one; `tags` are those of the ingredient; `gas` is for a line already aerated.
    """

    name: str
    constituents: Constituents
    ingredient: str = ""
    tags: frozenset[str] = field(default_factory=frozenset)
    gas: float = 0.0

    @property
    def mass(self) -> float:
        """Mass of the line. [kg]"""
        return self.constituents.total

    @property
    def is_gelatine(self) -> bool:
        """Whether it sets and comes from an animal, which among setting agents gelatine does."""
        return "gelatine" in self.tags or {"gelling", "animal"} <= self.tags

    def scaled(self, factor: float) -> Portion:
        """Portion for a batch `factor` times as large."""
        return Portion(
            name=self.name,
            constituents=self.constituents * factor,
            ingredient=self.ingredient,
            tags=self.tags,
            gas=self.gas * factor,
        )
