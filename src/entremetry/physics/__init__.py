"""Thermal properties, freezing curves, heat conduction, liquids cooling, glaze films.

Light to import: what needs a compiler is in `physics.conduction`.
"""

from __future__ import annotations

from entremetry.physics.appliance import Freezer, Load, greatest_load, load, power_for
from entremetry.physics.bowl import Bowl, Cooling, Liquid, Loss, Room, cool, loss
from entremetry.physics.component_conductivity import component_conductivity
from entremetry.physics.component_density import component_density, ice_density
from entremetry.physics.component_heat_capacity import component_enthalpy, component_heat_capacity
from entremetry.physics.composition import Composition, density
from entremetry.physics.condensation import Deposit, deposit
from entremetry.physics.convection import (
    forced_sphere,
    natural_level,
    natural_sphere,
    natural_wall,
)
from entremetry.physics.food import Food, Structure, food_material, ice_fraction, specific_enthalpy
from entremetry.physics.freezing_time import (
    Form,
    FreezingFood,
    cleland_earle_time,
    pham_time,
)
from entremetry.physics.glaze_film import Fluidity, film_thickness, film_volume, pole_thickness
from entremetry.physics.glaze_pour import Dome, Glaze, Pour, Wish, pour, pour_window
from entremetry.physics.humid_air import dew_point
from entremetry.physics.liquidus import Liquidus, dilute_liquidus, liquidus
from entremetry.physics.material import Material, constant_material, material
from entremetry.physics.melting_fat import COCOA_BUTTER, MILK_FAT, MeltingFat
from entremetry.physics.mixing_temperature import (
    Part,
    constant_heat,
    mixing_temperature,
    temperature_needed,
)
from entremetry.physics.radiation import radiative_coefficient
from entremetry.physics.reduction import Reduction, mass_at_solids, reduce
from entremetry.physics.thawing_time import cleland_thawing_time
from entremetry.physics.uncertainty import Interval, Spread, interval, monte_carlo

__all__ = [
    "COCOA_BUTTER",
    "MILK_FAT",
    "Bowl",
    "Composition",
    "Cooling",
    "Deposit",
    "Dome",
    "Fluidity",
    "Food",
    "Form",
    "Freezer",
    "FreezingFood",
    "Glaze",
    "Interval",
    "Liquid",
    "Liquidus",
    "Load",
    "Loss",
    "Material",
    "MeltingFat",
    "Part",
    "Pour",
    "Reduction",
    "Room",
    "Spread",
    "Structure",
    "Wish",
    "cleland_earle_time",
    "cleland_thawing_time",
    "component_conductivity",
    "component_density",
    "component_enthalpy",
    "component_heat_capacity",
    "constant_heat",
    "constant_material",
    "cool",
    "density",
    "deposit",
    "dew_point",
    "dilute_liquidus",
    "film_thickness",
    "film_volume",
    "food_material",
    "forced_sphere",
    "greatest_load",
    "ice_density",
    "ice_fraction",
    "interval",
    "liquidus",
    "load",
    "loss",
    "mass_at_solids",
    "material",
    "mixing_temperature",
    "monte_carlo",
    "natural_level",
    "natural_sphere",
    "natural_wall",
    "pham_time",
    "pole_thickness",
    "pour",
    "pour_window",
    "power_for",
    "radiative_coefficient",
    "reduce",
    "specific_enthalpy",
    "temperature_needed",
]
