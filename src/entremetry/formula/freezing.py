"""At which temperature a mix begins to freeze, and how much of its water is ice in the cold."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from entremetry.errors import OutsideRange
from entremetry.larder.constituents import Constituents
from entremetry.physics.solution import (
    CITRIC_ACID,
    DEXTRIN,
    ETHANOL,
    FRUCTOSE,
    GALACTOSE,
    GLUCOSE,
    LACTOSE,
    MALTOSE,
    MILK_SALT,
    POLYOL,
    SUCROSE,
    TREHALOSE,
    Solute,
    freezing_point,
    ice_activity,
    water_activity,
)

SOLUTE_OF: Mapping[str, Solute] = MappingProxyType(
    {
        "sucrose": SUCROSE,
        "unsplit_sugars": SUCROSE,
        "glucose": GLUCOSE,
        "fructose": FRUCTOSE,
        "galactose": GALACTOSE,
        "lactose": LACTOSE,
        "maltose": MALTOSE,
        "trehalose": TREHALOSE,
        "polyols": POLYOL,
        "organic_acids": CITRIC_ACID,
        "alcohol": ETHANOL,
        "other_carbohydrate": DEXTRIN,
        "ash": MILK_SALT,
    }
)
"""Constituent -> what it is in solution. Unsplit sugars count as sucrose, ash as milk salts."""
HELD_BY_PROTEIN = 0.4  # kg of water per kg of protein that never freezes: from_memory
HALVINGS = 60


def dissolved(parts: Constituents) -> dict[Solute, float]:
    """What is dissolved in the water of a mix. [kg]"""
    masses: dict[Solute, float] = {}
    for name, solute in SOLUTE_OF.items():
        masses[solute] = masses.get(solute, 0.0) + getattr(parts, name)
    return masses


def free_water(parts: Constituents) -> float:
    """Water that can freeze: all but what the protein holds. [kg]"""
    return max(parts.water - HELD_BY_PROTEIN * parts.protein, 0.0)


def mix_freezing_point(parts: Constituents) -> float:
    """Temperature at which the first ice of a mix is in balance. [K]

    Raises
    ------
    OutsideRange
        If there is no water, or the solution is too strong for the rule.
    """
    return freezing_point(dissolved(parts), free_water(parts))


def ice_fraction(parts: Constituents, temperature: float) -> float:
    """Part of the free water of a mix that is ice at a temperature in K.

    Raises
    ------
    OutsideRange
        If there is no water, the solution is too strong for the rule, or the temperature
        leaves 203.15 to 273.15 K.
    """
    solutes, water = dissolved(parts), free_water(parts)
    balance = ice_activity(temperature)
    if water_activity(solutes, water) <= balance:
        return 0.0
    low, high = 0.0, 1.0
    for _ in range(HALVINGS):
        liquid = (low + high) / 2.0
        if _activity_below_dilution(solutes, water * liquid) > balance:
            high = liquid
        else:
            low = liquid
    water_activity(solutes, water * high)
    return 1.0 - high


def _activity_below_dilution(solutes: Mapping[Solute, float], liquid: float) -> float:
    """Water activity, or 0 where the solution has become too strong for the rule."""
    try:
        return water_activity(solutes, liquid)
    except OutsideRange:
        return 0.0
