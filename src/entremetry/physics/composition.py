"""What a food is made of, as far as its thermal properties care."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.errors import OutsideRange
from entremetry.physics.component_density import component_density
from entremetry.sources.range import Range

FRACTION = Range("mass fraction", 0.0, 1.0, "kg/kg", "our_own")
TOTAL = Range("sum of the mass fractions", 0.99, 1.01, "kg/kg", "our_own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Composition:
    """Mass fractions of a food without its air; carbohydrate does not include fibre. [kg/kg]

    Food tables that give carbohydrate by difference count the fibre twice: take it off first.
    Sums from 0.99 to 1.01 are accepted as rounding of such tables.
    """

    water: float = 0.0
    protein: float = 0.0
    fat: float = 0.0
    carbohydrate: float = 0.0
    fibre: float = 0.0
    ash: float = 0.0

    def __post_init__(self) -> None:
        for fraction in self.fractions:
            FRACTION.require(fraction)
        TOTAL.require(sum(self.fractions))

    @property
    def fractions(self) -> tuple[float, ...]:
        """Water, protein, fat, carbohydrate, fibre, ash. [kg/kg]"""
        return (
            self.water,
            self.protein,
            self.fat,
            self.carbohydrate,
            self.fibre,
            self.ash,
        )

    @property
    def bound_water(self) -> float:
        """Water that never freezes: 0.4 of the protein (ashrae_refrigeration). [kg/kg]"""
        return min(0.4 * self.protein, self.water)


def density(composition: Composition, temperature: float, air: float = 0.0) -> float:
    """Density of an unfrozen food whose components' volumes add up.

    Parameters
    ----------
    composition : Composition
        Mass fractions without the air.
    temperature : float
        Temperature. [K]
    air : float
        Volume fraction of air, below one.

    Returns
    -------
    float
        Mass per volume, air included. [kg/m3]

    Raises
    ------
    OutsideRange
        If the temperature leaves 233.15 to 423.15 K, or air is not in 0 to 1.

    References
    ----------
    ashrae_refrigeration, density of foods.
    """
    if not 0.0 <= air < 1.0:
        raise OutsideRange(f"air fraction {air} is outside 0 to 1, 1 excluded")
    parts = zip(composition.fractions, component_density(temperature), strict=True)
    volume = sum(fraction / rho for fraction, rho in parts)
    return (1.0 - air) * sum(composition.fractions) / volume
