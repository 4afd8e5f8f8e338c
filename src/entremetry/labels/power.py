"""A simple estimate of the energy that oven and freezer take."""

from __future__ import annotations

from collections.abc import Mapping

from entremetry.dessert.reckoning import Reckoning
from entremetry.dessert.requirement import Requirement
from entremetry.method.shaping import Bake
from entremetry.method.waiting import FreezeUntil
from entremetry.words import say_later

OVEN_POWER = 2.5e3  # W, a household or small deck oven: from_memory
OVEN_DUTY = 0.5  # share of the time it heats once it is hot: from_memory
PREHEATING = 900.0  # s at full power: from_memory
USUAL_BAKING = 1200.0  # s, where a method states no time: common_practice
FREEZER_YIELD = 1.5  # heat moved for work put in, household freezer: from_memory
COOLED_BY = 38.0  # K, from 20 to -18 °C
SPECIFIC_HEAT = 3.0e3  # J/(kg K), between fresh and frozen dessert: from_memory
LATENT_HEAT = 334e3  # J/kg of water
SHARE_FROZEN = 0.75  # of the water at -18 °C in a sweet mix: from_memory
JOULES_PER_KWH = 3.6e6
BECAUSE = say_later(
    "each baking heats an oven of 2.5 kW for 15 min and holds it at half power; what is frozen "
    "gives off its heat from 20 to -18 °C to a freezer that moves 1.5 times the work put in; hob, "
    "mixer, fridge and keeping frozen are not counted"
)


def baking_energy(seconds: float) -> float:
    """Energy of one oven that is heated and baked in for so long. [J]"""
    return OVEN_POWER * (PREHEATING + OVEN_DUTY * seconds)


def freezing_energy(mass: float, water: float) -> float:
    """Energy that a freezer takes for a mass with so much water in it. [J]"""
    heat = mass * SPECIFIC_HEAT * COOLED_BY + water * SHARE_FROZEN * LATENT_HEAT
    return heat / FREEZER_YIELD


def batch_energy(reckoning: Reckoning, required: Mapping[str, Requirement]) -> float:
    """Energy of a batch: one oven for each baking, and all that goes into the freezer. [J]"""
    return sum(
        baking_energy(step.time or USUAL_BAKING)
        for component in reckoning.dessert.components
        if required[component.id].ready > 0.0
        for step in component.steps
        if isinstance(step, Bake)
    ) + _freezing(reckoning, required)


def _freezing(reckoning: Reckoning, required: Mapping[str, Requirement]) -> float:
    whole = any(isinstance(s, FreezeUntil) for s in reckoning.dessert.document.assembly)
    energy = 0.0
    for component in reckoning.dessert.components:
        frozen = any(isinstance(step, FreezeUntil) for step in component.steps)
        filled = whole and component.kind in ("mousse", "insert")
        if frozen or filled:
            mix, factor = reckoning.makings[component.id].mix, required[component.id].factor
            energy += factor * freezing_energy(mix.mass, mix.constituents.water)
    return energy
