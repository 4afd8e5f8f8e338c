"""A text reckoned: what the answers compare before and after a change."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from entremetry.checks.registry import check
from entremetry.checks.verdict import Verdict
from entremetry.dessert.reckoning import Reckoning
from entremetry.kitchen.kitchen_document import KitchenDocument

Reckon = Callable[[str], Reckoning]


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """A dessert as it is written: reckoned and checked, nothing simulated."""

    reckoning: Reckoning
    verdicts: tuple[Verdict, ...]

    @property
    def piece_mass(self) -> float:
        """Finished mass of one piece. [kg]"""
        return sum(need.on_piece for need in self.reckoning.needs)

    @property
    def factors(self) -> dict[str, float]:
        """How many times each formula is made."""
        pieces = self.reckoning.dessert.document.pieces
        required = self.reckoning.requirements(pieces)
        return {component: each.factor for component, each in required.items()}

    @property
    def allergens(self) -> frozenset[str]:
        """Allergens of all lines, by the European list."""
        found = (
            line.ingredient.allergens_eu
            for component in self.reckoning.dessert.components
            for line in component.lines
            if line.ingredient is not None
        )
        return frozenset().union(*found)


def state(text: str, reckon: Reckon, kitchen: KitchenDocument | None) -> State:
    """Reckon and check a text; EntremetryError if it cannot be made."""
    reckoning = reckon(text)
    return State(reckoning=reckoning, verdicts=check(reckoning, kitchen))
