"""Thermal properties, freezing curves, heat conduction, liquids cooling, glaze films.

Light to import: what needs a compiler is in `physics.conduction`.
"""

from __future__ import annotations

from entremetry.physics.component_conductivity import component_conductivity
from entremetry.physics.component_density import component_density, ice_density
from entremetry.physics.component_heat_capacity import component_enthalpy, component_heat_capacity
from entremetry.physics.composition import Composition, density
from entremetry.physics.food import Food, Structure, food_material, ice_fraction, specific_enthalpy
from entremetry.physics.liquidus import Liquidus, dilute_liquidus, liquidus
from entremetry.physics.material import Material, constant_material, material
from entremetry.physics.melting_fat import COCOA_BUTTER, MILK_FAT, MeltingFat

__all__ = [
    "COCOA_BUTTER",
    "MILK_FAT",
    "Composition",
    "Food",
    "Liquidus",
    "Material",
    "MeltingFat",
    "Structure",
    "component_conductivity",
    "component_density",
    "component_enthalpy",
    "component_heat_capacity",
    "constant_material",
    "density",
    "dilute_liquidus",
    "food_material",
    "ice_density",
    "ice_fraction",
    "liquidus",
    "material",
    "specific_enthalpy",
]
