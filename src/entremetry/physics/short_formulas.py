"""Ice and enthalpy of foods of which only water and freezing point are known."""

from __future__ import annotations

import numpy as np

from entremetry.sources.range import Range

BELOW_ZERO = Range("temperature", 228.15, 273.14, "K", "ashrae_refrigeration")
FOOD = Range("temperature", 228.15, 423.15, "K", "ashrae_refrigeration")
FRACTION = Range("mass fraction", 0.0, 1.0, "kg/kg", "ashrae_refrigeration")
LATENT_HEAT = 333.6  # kJ/kg


def tchigeov_ice(water: float, freezing_point: float, temperature: float) -> float:
    """Mass of ice per mass of food.

    Parameters
    ----------
    water : float
        Mass fraction of water before freezing. [kg/kg]
    freezing_point, temperature : float
        Where freezing begins, and where the ice is asked for. [K]

    Returns
    -------
    float
        Ice fraction; nought at and above the freezing point. [kg/kg]

    References
    ----------
    tchigeov_1979; ashrae_refrigeration, chapter 19, equation 5.
    """
    FRACTION.require(water)
    BELOW_ZERO.require(freezing_point)
    FOOD.require(temperature)
    if temperature >= freezing_point:
        return 0.0
    logarithm = float(np.log(freezing_point - temperature + 1.0))
    return 1.105 * water / (1.0 + 0.7138 / logarithm)


def chen_enthalpy(water: float, protein: float, freezing_point: float, temperature: float) -> float:
    """Enthalpy of a food, nought at 233.15 K.

    Parameters
    ----------
    water, protein : float
        Mass fractions. [kg/kg]
    freezing_point, temperature : float
        Where freezing begins, and where the enthalpy is asked for. [K]

    Returns
    -------
    float
        Enthalpy. [J/kg]

    References
    ----------
    chen_1985; ashrae_refrigeration, chapter 19, equations 15 and 17.
    """
    FRACTION.require(water)
    FRACTION.require(protein)
    BELOW_ZERO.require(freezing_point)
    FOOD.require(temperature)
    t, t_f = temperature - 273.15, freezing_point - 273.15
    if t > t_f:
        solids = 1.0 - water
        unfrozen = 4.19 - 2.30 * solids - 0.628 * solids**3
        return _frozen(water, protein, t_f, t_f) * 1e3 + (t - t_f) * unfrozen * 1e3
    return _frozen(water, protein, t_f, t) * 1e3


def _frozen(water: float, protein: float, t_f: float, t: float) -> float:
    free = water - 0.4 * protein
    return (t + 40.0) * (1.55 + 1.26 * (1.0 - water) - free * LATENT_HEAT * t_f / (-40.0 * t))
