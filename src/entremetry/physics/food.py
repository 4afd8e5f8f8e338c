"""A food: composition, ice, fat and air made into one material."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.physics.arrays import Floats
from entremetry.physics.component_conductivity import component_conductivity
from entremetry.physics.component_density import RANGE, component_density
from entremetry.physics.component_heat_capacity import component_enthalpy
from entremetry.physics.composition import Composition, density
from entremetry.physics.effective_conductivity import effective_medium, levy, maxwell_eucken
from entremetry.physics.humid_air import air_conductivity, pore_conductivity
from entremetry.physics.liquidus import Liquidus
from entremetry.physics.material import HIGHEST, LOWEST, Material, material
from entremetry.physics.melting_fat import MeltingFat

REFERENCE = 277.15
"""Temperature at which mass and volume are matched; cells keep their mass. [K]"""


class Structure(StrEnum):
    """How the air lies in the food."""

    FOAM = "foam"  # closed bubbles: mousse, whipped cream
    CRUMB = "crumb"  # open pores: sponge, biscuit


@dataclass(frozen=True, slots=True, kw_only=True)
class Food:
    """Composition without air, freezing curve, volume fraction of air, and fats that melt.

    `melting_fats` gives the mass fraction of the food that each fat makes up [kg/kg]; `liquidus`
    is None for what does not freeze. `water_activity` drives vapour through open pores.
    """

    composition: Composition
    liquidus: Liquidus | None = None
    air: float = 0.0
    structure: Structure = Structure.FOAM
    melting_fats: Mapping[MeltingFat, float] = field(default_factory=dict)
    water_activity: float = 0.9

    def __post_init__(self) -> None:
        if not 0.0 <= self.air < 1.0 or not 0.0 <= self.water_activity <= 1.0:
            raise OutsideRange("air fraction and water activity lie between 0 and 1")
        if any(part < 0.0 for part in self.melting_fats.values()):
            raise OutsideRange("a melting fat's mass fraction is not negative")
        if sum(self.melting_fats.values()) > self.composition.fat + 1e-9:
            raise OutsideRange("the melting fats are more than the fat of the composition")

    @property
    def density(self) -> float:
        """Mass per volume with its air, at 277.15 K. [kg/m3]"""
        return density(self.composition, REFERENCE, self.air)


def ice_fraction(food: Food, temperature: Floats) -> Floats:
    """Mass of ice per mass of food. [kg/kg]"""
    RANGE.require(temperature)
    t = np.asarray(temperature, dtype=float)
    if food.liquidus is None:
        return np.zeros_like(t)
    free = food.composition.water - food.composition.bound_water
    return free * (1.0 - food.liquidus.liquid_fraction(t))


def specific_enthalpy(food: Food, temperature: Floats) -> Floats:
    """Enthalpy per mass: sensible, ice and fat; the unfrozen food has nought at 273.15 K. [J/kg]

    The fat that is solid there counts below nought.
    """
    t = np.asarray(temperature, dtype=float)
    heats = component_enthalpy(t)
    ice = ice_fraction(food, t)
    total = ice * (heats.ice - heats.water)
    for fraction, heat in zip(food.composition.fractions, heats[:6], strict=True):
        total = total + fraction * heat
    for fat, fraction in food.melting_fats.items():
        total = total + fraction * fat.melting_enthalpy(t)
    return total


def conductivity(food: Food, temperature: Floats) -> Floats:
    """Conductivity: unfrozen components side by side, ice by Levy, then the air. [W/(m K)]

    References
    ----------
    carson_2016 for the order of the models; maxwell_eucken for closed foam, which is the physical
    upper bound there, and the effective medium for open crumb.
    """
    t = np.asarray(temperature, dtype=float)
    dense = _dense_conductivity(food, t)
    if food.air == 0.0:
        return dense
    if food.structure is Structure.FOAM:
        return maxwell_eucken(dense, air_conductivity(t), food.air)
    return effective_medium(dense, pore_conductivity(t, food.water_activity), food.air)


def food_material(
    name: str, food: Food, lowest: float = LOWEST, highest: float = HIGHEST
) -> Material:
    """Table a food for the conduction kernel.

    Parameters
    ----------
    name : str
        What it is called in messages.
    food : Food
        Composition, freezing curve, air, fats.
    lowest, highest : float
        Ends of the table. [K]

    Returns
    -------
    Material
        The table, per volume with the air.
    """
    mass = food.density
    return material(
        name,
        lambda t: mass * specific_enthalpy(food, t),
        lambda t: conductivity(food, t),
        freezing_point=food.liquidus.freezing_point if food.liquidus else None,
        lowest=lowest,
        highest=highest,
    )


def _dense_conductivity(food: Food, t: Floats) -> Floats:
    ks = component_conductivity(t)
    rhos = component_density(REFERENCE)
    ice = ice_fraction(food, t)
    volumes = [x / rho for x, rho in zip(food.composition.fractions, rhos, strict=True)]
    liquid = volumes[0] - ice / rhos.water
    rest = sum(volumes[1:]) + liquid
    side = liquid * ks.water
    for volume, k in zip(volumes[1:], ks[1:6], strict=True):
        side = side + volume * k
    ice_volume = ice / (916.89 - 0.13071 * (np.minimum(t, 273.15) - 273.15))
    return levy(side / rest, ks.ice, ice_volume / (ice_volume + rest))
