"""Air and the water vapour in it."""

from __future__ import annotations

import numpy as np

from entremetry.physics.arrays import Floats, Numbers, read_table
from entremetry.sources.range import Range

GAS_CONSTANT_VAPOUR = 461.5  # J/(kg K)
PRESSURE = 101325.0  # Pa
AIR_CONSTANT = 287.05  # J/(kg K)
AIR_HEAT = 1007.0  # J/(kg K), incropera_2007, table A.4
LEWIS_NUMBER = 0.865  # of vapour in air: thermal over mass diffusivity
OVER_WATER = Range("temperature", 228.15, 373.15, "K", "wmo_8")
OVER_ICE = Range("temperature", 208.15, 273.16, "K", "wmo_8")
PARTIAL = Range("partial pressure", 0.0, 2e5, "Pa", "wmo_8")
ACTIVITY = Range("water activity", 0.0, 1.0, "-", "krischer_1978")
COEFFICIENT = Range("coefficient", 0.0, 1e6, "W/(m2 K)", "our_own")
AIR = Range("air temperature", 200.0, 400.0, "K", "lemmon_jacobsen_2004")

# lemmon_jacobsen_2004, dry air at one atmosphere
_AIR_TEMPERATURE = (200.0, 225.0, 250.0, 275.0, 300.0, 325.0, 350.0, 375.0, 400.0)
_AIR_CONDUCTIVITY = (
    0.018503,
    0.020567,
    0.022564,
    0.024502,
    0.026384,
    0.028217,
    0.030003,
    0.031748,
    0.033453,
)
_AIR_VISCOSITY = (  # kinematic
    7.5370e-6,
    9.3650e-6,
    1.1350e-5,
    1.3480e-5,
    1.5750e-5,
    1.8160e-5,
    2.0690e-5,
    2.3350e-5,
    2.6130e-5,
)
_AIR_PRANDTL = (0.7255, 0.7196, 0.7147, 0.7106, 0.7071, 0.7042, 0.7019, 0.7002, 0.6989)


def saturation_pressure(temperature: Numbers) -> Floats:
    """Pressure of water vapour in balance with liquid water, from 228.15 to 373.15 K. [Pa]

    Notes
    -----
    611.2 exp(17.62 t / (243.12 + t)), t in degrees Celsius.

    References
    ----------
    wmo_8, annex 4.B.
    """
    OVER_WATER.require(temperature)
    t = np.asarray(temperature, dtype=float) - 273.15
    return 611.2 * np.exp(17.62 * t / (243.12 + t))


def frost_pressure(temperature: Numbers) -> Floats:
    """Pressure of water vapour in balance with ice, from 208.15 to 273.16 K. [Pa]

    Notes
    -----
    611.2 exp(22.46 t / (272.62 + t)), t in degrees Celsius.

    References
    ----------
    wmo_8, annex 4.B.
    """
    OVER_ICE.require(temperature)
    t = np.asarray(temperature, dtype=float) - 273.15
    return 611.2 * np.exp(22.46 * t / (272.62 + t))


def dew_point(temperature: float, humidity: float) -> float:
    """Temperature at which air starts to leave water on a surface. [K]

    Parameters
    ----------
    temperature : float
        Air temperature. [K]
    humidity : float
        Relative humidity, above 0 and up to 1.

    Returns
    -------
    float
        Dew point over liquid water. [K]

    References
    ----------
    wmo_8, annex 4.B, solved for the temperature.
    """
    Range("relative humidity", 1e-3, 1.0, "-", "wmo_8").require(humidity)
    ratio = float(np.log(humidity * saturation_pressure(temperature) / 611.2))
    return 273.15 + 243.12 * ratio / (17.62 - ratio)


def vapour_density(pressure: Numbers, temperature: Numbers) -> Floats:
    """Mass of vapour per volume of air at a partial pressure [Pa] and temperature [K]. [kg/m3]"""
    PARTIAL.require(pressure)
    AIR.require(temperature)
    return np.asarray(pressure) / (GAS_CONSTANT_VAPOUR * np.asarray(temperature))


def heat_of_evaporation(temperature: Numbers) -> Floats:
    """Heat to evaporate water. [J/kg]

    Notes
    -----
    2.501e6 - 2361 t, t in degrees Celsius, as in common meteorological use (from memory).
    """
    OVER_WATER.require(temperature)
    return 2.501e6 - 2361.0 * (np.asarray(temperature, dtype=float) - 273.15)


def air_conductivity(temperature: Numbers) -> Floats:
    """Conductivity of dry air, read from the table. [W/(m K)]

    References
    ----------
    lemmon_jacobsen_2004.
    """
    AIR.require(temperature)
    return read_table(temperature, _AIR_TEMPERATURE, _AIR_CONDUCTIVITY)


def air_viscosity(temperature: Numbers) -> Floats:
    """Kinematic viscosity of dry air at one atmosphere. [m2/s]"""
    AIR.require(temperature)
    return read_table(temperature, _AIR_TEMPERATURE, _AIR_VISCOSITY)


def air_prandtl(temperature: Numbers) -> Floats:
    """Prandtl number of dry air."""
    AIR.require(temperature)
    return read_table(temperature, _AIR_TEMPERATURE, _AIR_PRANDTL)


def air_heat_capacity(temperature: Numbers) -> Floats:
    """Heat capacity per volume of dry air at one atmosphere. [J/(m3 K)]"""
    AIR.require(temperature)
    return AIR_HEAT * PRESSURE / (AIR_CONSTANT * np.asarray(temperature, dtype=float))


def vapour_diffusivity(temperature: Numbers) -> Floats:
    """Diffusivity of water vapour in air at one atmosphere. [m2/s]

    Notes
    -----
    2.26e-5 (T / 273)^1.81.

    References
    ----------
    krischer_1978.
    """
    AIR.require(temperature)
    return 2.26e-5 * (np.asarray(temperature, dtype=float) / 273.0) ** 1.81


def vapour_transfer(coefficient: float) -> float:
    """Water that passes a surface's air film per pressure difference. [kg/(m2 s Pa)]

    Parameters
    ----------
    coefficient : float
        Convective heat transfer coefficient of the same film. [W/(m2 K)]

    Notes
    -----
    Lewis analogy: h / (rho c_p Le^(2/3)) times the difference of pressures over R_v T. As rho goes
    with 1/T the film's temperature drops out.

    References
    ----------
    incropera_2007, section 6.7.2; Lewis number 0.865.
    """
    COEFFICIENT.require(coefficient)
    bulk = AIR_HEAT * PRESSURE / AIR_CONSTANT
    analogy: float = LEWIS_NUMBER ** (2.0 / 3.0)
    return coefficient / (bulk * GAS_CONSTANT_VAPOUR * analogy)


def pore_conductivity(temperature: Numbers, water_activity: float) -> Floats:
    """Conductivity of moist pores: still air, and vapour that carries its heat across.

    Parameters
    ----------
    temperature : float or array, shape (...,)
        Temperature; vapour counts from 228.15 K to 363.15 K and is held constant beyond. [K]
    water_activity : float
        Of the pore walls, from 0 (dry) to 1.

    Returns
    -------
    float or array, same shape
        Conductivity of the pore. [W/(m K)]

    References
    ----------
    krischer_1978.
    """
    ACTIVITY.require(water_activity)
    t = np.asarray(temperature, dtype=float)
    s = np.clip(t, 228.15, 363.15)
    pressure = saturation_pressure(s)
    slope = pressure * 17.62 * 243.12 / (243.12 + s - 273.15) ** 2
    drift = PRESSURE / (PRESSURE - water_activity * pressure)
    flow = vapour_diffusivity(s) / (GAS_CONSTANT_VAPOUR * s) * drift * water_activity * slope
    vapour: Floats = flow * heat_of_evaporation(s)
    return air_conductivity(t) + vapour
