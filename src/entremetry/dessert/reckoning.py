"""A dessert reckoned: its components made and placed, for however many pieces."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from entremetry.dessert.cut_outs import BaseMass, base_mass
from entremetry.dessert.dessert import Dessert
from entremetry.dessert.made_components import all_made
from entremetry.dessert.needs import Need, needs
from entremetry.dessert.placed import Placed
from entremetry.dessert.placement import BasePlacement
from entremetry.dessert.placing import place
from entremetry.dessert.portions import pieces_per_cavity
from entremetry.dessert.requirement import Requirement, requirements
from entremetry.method.made import Made


@dataclass(frozen=True, slots=True, kw_only=True)
class Reckoning:
    """A dessert with its components made and placed; independent of how many pieces."""

    dessert: Dessert
    makings: dict[str, Made]
    placed: Placed
    bases: dict[str, BaseMass]
    needs: tuple[Need, ...]
    per_cavity: int

    @property
    def density(self) -> dict[str, float]:
        """Density of each finished component. [kg/m3]"""
        return {component: made.density.value for component, made in self.makings.items()}

    def cavities(self, pieces: int) -> int:
        """Cavities to fill for so many pieces."""
        return math.ceil(pieces / self.per_cavity)

    def requirements(self, pieces: int) -> dict[str, Requirement]:
        """What to make of each component."""
        return requirements(self.dessert, self.makings, self.needs, self.cavities(pieces))


def reckon(dessert: Dessert, *, read_mesh: Callable[[str], bytes]) -> Reckoning:
    """Make every component and place it.

    Raises
    ------
    FitError
        If the parts do not fit into the mould or into one another.
    BalanceError
        If a method takes more from its formula than there is.
    """
    makings = all_made(dessert)
    density = {component: made.density.value for component, made in makings.items()}
    placed = place(
        dessert.mould.solid,
        dessert.document.placement,
        names=dessert.names,
        density=density,
        read_mesh=read_mesh,
    )
    bases = _bases(dessert, makings)
    per_cavity = pieces_per_cavity(dessert)
    return Reckoning(
        dessert=dessert,
        makings=makings,
        placed=placed,
        bases=bases,
        needs=needs(dessert, placed, density, bases, per_cavity),
        per_cavity=per_cavity,
    )


def _bases(dessert: Dessert, makings: dict[str, Made]) -> dict[str, BaseMass]:
    steps = {component.id: component.steps for component in dessert.components}
    return {
        p.component: base_mass(
            p, steps[p.component], makings[p.component], makings[p.component].density.value
        )
        for p in dessert.document.placement
        if isinstance(p, BasePlacement)
    }
