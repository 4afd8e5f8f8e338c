"""A simple estimate of the energy that oven and freezer take."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from entremetry.dessert.dessert import Component
from entremetry.dessert.reckoning import Reckoning
from entremetry.dessert.requirement import Requirement
from entremetry.errors import OutsideRange
from entremetry.method.shaping import Bake
from entremetry.method.step import AnyStep
from entremetry.method.waiting import FreezeUntil
from entremetry.physics.food import specific_enthalpy
from entremetry.timings.component_food import component_food
from entremetry.timings.start import ready_temperature
from entremetry.words import say, say_later

OVEN_POWER = 2.5e3  # W, a household or small deck oven: from_memory
OVEN_DUTY = 0.5  # share of the time it heats once it is hot: from_memory
PREHEATING = 900.0  # s at full power: from_memory
USUAL_BAKING = 1200.0  # s, where a method states no time: common_practice
FREEZER_YIELD = 1.5  # heat moved for work put in, household freezer: from_memory
FROZEN = 255.15  # K, where a step states no temperature: common_practice
COOLED_BY = 38.0  # K, from 20 to -18 °C
SPECIFIC_HEAT = 3.0e3  # J/(kg K), between fresh and frozen dessert: from_memory
LATENT_HEAT = 334e3  # J/kg of water
SHARE_FROZEN = 0.75  # of the water at -18 °C in a sweet mix: from_memory
JOULES_PER_KWH = 3.6e6
OVEN = say_later("each baking heats an oven of 2.5 kW for 15 min and holds it at half power")
COMPUTED = say_later(
    "what is frozen gives off the heat between the temperatures of its steps, computed from its "
    "composition and freezing curve, to a freezer taken to move 1.5 times the work put in (from "
    "memory)"
)
ROUGH = say_later(
    "what is frozen gives off its heat from 20 to -18 °C by a rule of thumb, since the composition "
    "of {names} is outside what can be computed, to a freezer taken to move 1.5 times the work put "
    "in (from memory)"
)
UNCOUNTED = say_later("hob, mixer, fridge and keeping frozen are not counted")


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchEnergy:
    """Energy of a batch [J], and how it was found."""

    joules: float
    because: str


def baking_energy(seconds: float) -> float:
    """Energy of one oven that is heated and baked in for so long. [J]"""
    return OVEN_POWER * (PREHEATING + OVEN_DUTY * seconds)


def freezing_energy(mass: float, water: float) -> float:
    """Energy that a freezer takes for a mass with so much water in it. [J]"""
    heat = mass * SPECIFIC_HEAT * COOLED_BY + water * SHARE_FROZEN * LATENT_HEAT
    return heat / FREEZER_YIELD


def batch_energy(reckoning: Reckoning, required: Mapping[str, Requirement]) -> BatchEnergy:
    """Energy of a batch: one oven for each baking, and all that goes into the freezer."""
    baked = sum(
        baking_energy(step.time or USUAL_BAKING)
        for component in reckoning.dessert.components
        if required[component.id].ready > 0.0
        for step in component.steps
        if isinstance(step, Bake)
    )
    frozen, rough = 0.0, []
    for component in reckoning.dessert.components:
        try:
            heat = _heat(reckoning, component) / FREEZER_YIELD
        except OutsideRange:
            mix = reckoning.makings[component.id].mix
            heat = freezing_energy(mix.mass, mix.constituents.water)
            rough.append(component.name)
        frozen += heat * required[component.id].factor
    how = say(ROUGH, names=", ".join(rough)) if rough else say(COMPUTED)
    because = f"{say(OVEN)}; {how}; {say(UNCOUNTED)}"
    return BatchEnergy(joules=baked + frozen, because=because)


def stages(
    steps: Sequence[AnyStep], assembly: Sequence[AnyStep], *, filled: bool
) -> tuple[tuple[float, float], ...]:
    """From and to which temperature a component is frozen, alone and in the piece. [K]"""
    found: list[tuple[float, float]] = []
    for number, step in enumerate(steps):
        if isinstance(step, FreezeUntil):
            found.append((ready_temperature(steps[:number])[0], _target(step)))
    if filled:
        begin = found[-1][1] if found else ready_temperature(steps)[0]
        found += [(begin, _target(s)) for s in assembly if isinstance(s, FreezeUntil)][:1]
    return tuple((warm, cold) for warm, cold in found if warm > cold)


def _heat(reckoning: Reckoning, component: Component) -> float:
    """Heat that the freezer takes out of what is made of a component. [J]"""
    filled = component.kind in ("mousse", "insert")
    assembly = reckoning.dessert.document.assembly
    ways = stages(component.steps, assembly, filled=filled)
    if not ways:
        return 0.0
    made = reckoning.makings[component.id]
    food = component_food(made.mix, component.kind, made.density.value)
    warm, cold = np.array(ways).T
    per_mass = specific_enthalpy(food, warm) - specific_enthalpy(food, cold)
    return float(made.mix.mass * per_mass.sum())


def _target(step: FreezeUntil) -> float:
    return FROZEN if step.temperature is None else step.temperature
