"""A finished component as a material that conducts, freezes and melts."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from entremetry.dessert.reckoning import Reckoning
from entremetry.errors import OutsideRange
from entremetry.formula.density import liquid_volume
from entremetry.formula.freezing import dissolved, free_water
from entremetry.formula.mix import Mix
from entremetry.larder.constituents import Constituents
from entremetry.method.made import Made
from entremetry.physics import (
    COCOA_BUTTER,
    MILK_FAT,
    Composition,
    Food,
    Liquidus,
    Material,
    MeltingFat,
    Structure,
    dilute_liquidus,
    food_material,
    liquidus,
)
from entremetry.physics.solution import freezing_point, water_activity

OPEN_CRUMB = frozenset({"base", "crumble"})
DRY = 0.03  # kg of free water per kg below which nothing is taken to freeze
MOST_DISSOLVED = 0.9  # moles of solute per mole of water up to which the rule is used
WATER_MOLAR_MASS = 0.01801528
LEAST = 1e-9  # mol per kg, as good as nothing
PURE = 273.10  # K: where water with next to nothing in it begins to melt
COLDEST = 234.15  # K: colder than food is tabled for


def component_material(made: Made, kind: str, name: str) -> Material:
    """Thermal properties of a finished component.

    Raises
    ------
    OutsideRange
        If its composition makes no food.
    """
    return _tabled(made.mix, made.density.value, kind, name)


@lru_cache(maxsize=256)
def _tabled(mix: Mix, density: float, kind: str, name: str) -> Material:
    """The table of a component, which is the same in every mould."""
    return food_material(name, component_food(mix, kind, density))


def material_of(reckoning: Reckoning, component_id: str) -> Material:
    """Thermal properties of a component of a dessert."""
    component = next(c for c in reckoning.dessert.components if c.id == component_id)
    return component_material(reckoning.makings[component_id], component.kind, component.name)


def component_food(mix: Mix, kind: str, density: float) -> Food:
    """Composition, air, fats that melt and the freezing curve of a mix.

    The air is what the density of the finished component leaves beside its constituents.
    """
    parts = mix.constituents * (1.0 / mix.mass)
    return Food(
        composition=_composition(parts),
        liquidus=freezing_curve(parts),
        air=max(0.0, 1.0 - density * liquid_volume(mix) / mix.mass),
        structure=Structure.CRUMB if kind in OPEN_CRUMB else Structure.FOAM,
        melting_fats=_fats(parts),
    )


@lru_cache(maxsize=256)
def freezing_curve(parts: Constituents) -> Liquidus | None:
    """How the water freezes out; None for what is too dry or too concentrated to freeze.

    What has next to nothing dissolved in it melts over the last twentieth of a kelvin.
    """
    solutes = dissolved(parts)
    free = free_water(parts)
    moles = sum(mass / solute.molar_mass for solute, mass in solutes.items())
    if free < DRY:
        return None
    most = MOST_DISSOLVED * free / WATER_MOLAR_MASS / max(moles, LEAST)
    if most <= 1.1:
        return None

    def point(concentration: float) -> float:
        return freezing_point(solutes, free / concentration)

    try:
        first = point(1.0)
    except OutsideRange:  # colder than any freezer
        return None
    if first > PURE:
        return dilute_liquidus(PURE)
    return None if first < COLDEST else liquidus(point, greatest_concentration=min(most, 400.0))


def activity_of_water(parts: Constituents) -> float:
    """Water activity of the liquid in a component."""
    return water_activity(dissolved(parts), parts.water)


def _composition(parts: Constituents) -> Composition:
    """Alcohol is counted with the water, organic acids and sugars with the carbohydrate."""
    return Composition(
        water=parts.water + parts.alcohol,
        protein=parts.protein,
        fat=parts.fat,
        carbohydrate=parts.carbohydrate - parts.fibre,
        fibre=parts.fibre,
        ash=parts.ash,
    )


def _fats(parts: Constituents) -> Mapping[MeltingFat, float]:
    return {
        fat: mass
        for fat, mass in ((COCOA_BUTTER, parts.cocoa_butter), (MILK_FAT, parts.milk_fat))
        if mass > 0.0
    }
