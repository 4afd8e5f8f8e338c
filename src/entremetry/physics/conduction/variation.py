"""What may be off in one of many runs."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.physics.conduction.cells import Cells, Patches


@dataclass(frozen=True, slots=True, kw_only=True)
class Variation:
    """Factors on coefficient, heat content, conductivity and lengths; a shift of the air [K]."""

    coefficient: float = 1.0
    heat: float = 1.0
    conductivity: float = 1.0
    size: float = 1.0
    air: float = 0.0

    def __post_init__(self) -> None:
        factors = (self.coefficient, self.heat, self.conductivity, self.size)
        if not all(0.0 < factor < np.inf for factor in factors) or not np.isfinite(self.air):
            raise OutsideRange("the factors of a variation are positive, its shift is finite")


PLAIN = Variation()
"""Nothing is off."""


def varied_cells(cells: Cells, variation: Variation) -> Cells:
    """The same cells with other heat contents, conductivities or lengths."""
    if variation == PLAIN:
        return cells
    bulk = variation.heat * variation.size**3
    along = variation.conductivity * variation.size
    return cells._replace(
        volume=cells.volume * bulk,
        gain=cells.gain / bulk,
        bulk=cells.bulk * bulk,
        link0=cells.link0 * along,
        link1=cells.link1 * along,
        link2=cells.link2 * along,
        resistance=cells.resistance / variation.size**2,
    )


def varied_patches(patches: Patches, variation: Variation) -> Patches:
    """The same surface for other lengths and conductivities; walls keep their own stuff."""
    return patches._replace(
        area=patches.area * variation.size**2,
        distance=patches.distance * variation.size / variation.conductivity,
    )
