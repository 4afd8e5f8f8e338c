"""Fats that melt over a range: latent heat and solid part."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.physics.arrays import Floats, Numbers, read_table


@dataclass(frozen=True, slots=True, kw_only=True)
class MeltingFat:
    """Heat of melting [J/kg] and the part that is solid at rising temperatures [K]."""

    latent_heat: float
    temperatures: tuple[float, ...]
    solid: tuple[float, ...]

    def __post_init__(self) -> None:
        falling = all(a >= b for a, b in zip(self.solid, self.solid[1:], strict=False))
        rising = all(a < b for a, b in zip(self.temperatures, self.temperatures[1:], strict=False))
        if len(self.solid) != len(self.temperatures) or not (rising and falling):
            raise OutsideRange("a fat's solid part falls as its temperatures rise")
        if not (0.0 <= self.solid[-1] <= self.solid[0] <= 1.0 and 0.0 <= self.latent_heat < 1e6):
            raise OutsideRange("a fat's solid part is from 0 to 1, its heat below 1 MJ/kg")

    def solid_fraction(self, temperature: Numbers) -> Floats:
        """Part that is solid; straight between the rows, constant beyond them."""
        t = np.asarray(temperature, dtype=float)
        return read_table(t, self.temperatures, self.solid)

    def melting_enthalpy(self, temperature: Numbers) -> Floats:
        """Heat taken up by melting, nought when all is liquid. [J/kg]"""
        return -self.latent_heat * self.solid_fraction(temperature)


# Latent heat: beckett_2009, physical constants. Solid part, West African: from_memory.
COCOA_BUTTER = MeltingFat(
    latent_heat=157e3,
    temperatures=(283.15, 293.15, 298.15, 303.15, 308.15, 310.15),
    solid=(0.90, 0.760, 0.696, 0.450, 0.011, 0.0),
)

# Latent heat and solid part: from_memory; the fat crystallises some degrees colder than it melts.
MILK_FAT = MeltingFat(
    latent_heat=90e3,
    temperatures=(243.15, 273.15, 283.15, 293.15, 308.15, 313.15),
    solid=(0.85, 0.65, 0.40, 0.20, 0.03, 0.0),
)
