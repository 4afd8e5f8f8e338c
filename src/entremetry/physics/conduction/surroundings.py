"""What a face of the body meets: air, shelf, radiation, moisture, and a wall or film on it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.physics.arrays import Floats
from entremetry.physics.conduction.surface import COLUMNS
from entremetry.physics.humid_air import saturation_pressure, vapour_transfer
from entremetry.sources.range import Range

TEMPERATURE = Range("surroundings", 203.15, 473.15, "K", "our_own")
THICKEST = 10.0  # m
COEFFICIENT = Range("coefficient", 0.0, 1e6, "W/(m2 K)", "our_own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Surroundings:
    """One face's surroundings.

    `coefficient` is that of convection, or of contact with a shelf [W/(m2 K)]; with `exponent` it
    grows with the difference of skin and air over `span` (natural convection: 0.25). `radiant` is
    the temperature of the walls around, that of the air if None. `humidity` (0 to 1) lets water
    condense or frost on a colder skin; `wetness` is the skin's own water activity, and 0 lets
    nothing evaporate. `contact` is a resistance on the outside, such as card or box [m2 K/W].
    """

    temperature: float
    coefficient: float
    contact: float = 0.0
    emissivity: float = 0.0
    radiant: float | None = None
    humidity: float | None = None
    wetness: float = 0.0
    exponent: float = 0.0
    span: float = 10.0

    def __post_init__(self) -> None:
        TEMPERATURE.require(self.temperature)
        TEMPERATURE.require(self.temperature if self.radiant is None else self.radiant)
        COEFFICIENT.require(self.coefficient)
        fractions = (self.emissivity, self.humidity or 0.0, self.wetness, self.exponent)
        if not all(0.0 <= part <= 1.0 for part in fractions):
            raise OutsideRange("emissivity, humidity, wetness and exponent lie between 0 and 1")
        if not (0.0 <= self.contact < np.inf and 0.0 < self.span < np.inf):
            raise OutsideRange("contact resistance is not negative, the span is positive")
        if self.humidity is not None and self.temperature > 373.15:
            raise OutsideRange("moist air is treated up to 373.15 K")

    @property
    def insulated(self) -> bool:
        """Whether no heat passes at all."""
        return self.coefficient == 0.0 and self.emissivity == 0.0

    @property
    def moist(self) -> bool:
        """Whether water condenses or evaporates."""
        return self.humidity is not None and self.coefficient > 0.0

    @property
    def reach(self) -> tuple[float, float]:
        """Coldest and warmest temperature that these surroundings can bring about. [K]"""
        if self.insulated:
            return np.inf, -np.inf
        walls = self.temperature if self.radiant is None or self.emissivity == 0.0 else self.radiant
        low, high = min(self.temperature, walls), max(self.temperature, walls)
        if self.moist and self.wetness > 0.0:
            low = 203.15
        return low, high

    def row(self) -> Floats:
        """The numbers that the kernel reads, in the order of its columns."""
        values = np.zeros(COLUMNS)
        vapour = transfer = 0.0
        if self.humidity is not None:
            vapour = self.humidity * float(saturation_pressure(max(self.temperature, 228.15)))
            transfer = vapour_transfer(self.coefficient)
        radiant = self.temperature if self.radiant is None else self.radiant
        values[:] = (
            self.temperature,
            self.coefficient,
            self.contact,
            self.emissivity,
            radiant,
            vapour,
            self.wetness,
            transfer,
            self.exponent,
            self.span,
            float(self.emissivity == self.exponent == transfer == 0.0),
        )
        return values


INSULATED = Surroundings(temperature=273.15, coefficient=0.0)
"""A plane of symmetry, or a face through which nothing passes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """A thin layer on a face: the mould's wall, a box, or a glaze just poured.

    `thickness` in m, `conductivity` in W/(m K), `heat_capacity` per volume in J/(m3 K). The layer
    has one temperature; None starts it at the temperature of the food behind it. `contact` is a
    resistance between food and layer, as of a base that a set piece stands on [m2 K/W].
    """

    thickness: float
    conductivity: float
    heat_capacity: float
    temperature: float | None = None
    contact: float = 0.0

    def __post_init__(self) -> None:
        sizes = (self.thickness, self.conductivity, self.heat_capacity)
        if not all(0.0 < size < np.inf for size in sizes):
            raise OutsideRange("a wall's thickness, conductivity and heat capacity are positive")
        if self.thickness > THICKEST:
            raise OutsideRange(f"a wall {self.thickness} m thick is no layer on a face")
        if not 0.0 <= self.contact < np.inf:
            raise OutsideRange("a wall's contact resistance is not negative")
        if self.temperature is not None:
            TEMPERATURE.require(self.temperature)
