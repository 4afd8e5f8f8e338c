"""Density of the pure components that food is made of."""

from __future__ import annotations

from typing import NamedTuple

from entremetry.sources.range import Range

RANGE = Range("temperature", 233.15 - 1e-9, 423.15 + 1e-9, "K", "choi_okos_1986")
ICE_RANGE = Range("temperature of ice", 233.15 - 1e-9, 273.15, "K", "choi_okos_1986")


class ComponentDensity(NamedTuple):
    """Density of each component at one temperature. [kg/m3]"""

    water: float
    protein: float
    fat: float
    carbohydrate: float
    fibre: float
    ash: float


def component_density(temperature: float) -> ComponentDensity:
    """Density of water, protein, fat, carbohydrate, fibre and ash in food.

    Parameters
    ----------
    temperature : float
        Temperature. [K]

    Returns
    -------
    ComponentDensity
        One density for each component. [kg/m3]

    Raises
    ------
    OutsideRange
        If the temperature leaves 233.15 to 423.15 K.

    References
    ----------
    choi_okos_1986; the same rows in ASHRAE Refrigeration, chapter 19, table 1.

    Examples
    --------
    >>> round(component_density(293.15).fat, 2)
    917.24
    """
    RANGE.require(temperature)
    t = temperature - 273.15
    return ComponentDensity(
        water=997.18 + 3.1439e-3 * t - 3.7574e-3 * t**2,
        protein=1329.9 - 0.51840 * t,
        fat=925.59 - 0.41757 * t,
        carbohydrate=1599.1 - 0.31046 * t,
        fibre=1311.5 - 0.36589 * t,
        ash=2423.8 - 0.28063 * t,
    )


def ice_density(temperature: float) -> float:
    """Density of ice.

    Parameters
    ----------
    temperature : float
        Temperature. [K]

    Returns
    -------
    float
        Density. [kg/m3]

    Raises
    ------
    OutsideRange
        If the temperature leaves 233.15 to 273.15 K; there is no ice above.

    References
    ----------
    choi_okos_1986, ice row.

    Examples
    --------
    >>> round(ice_density(253.15), 3)
    919.504
    """
    ICE_RANGE.require(temperature)
    return 916.89 - 0.13071 * (temperature - 273.15)
