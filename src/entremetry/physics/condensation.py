"""Water that a cold surface takes from moist air: dew and frost."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.physics.humid_air import (
    frost_pressure,
    heat_of_evaporation,
    saturation_pressure,
    vapour_transfer,
)
from entremetry.sources.range import Range

HUMIDITY = Range("relative humidity", 0.0, 1.0, "-", "wmo_8")
HEAT_OF_SUBLIMATION = 2.834e6
"""From vapour to ice at 0 °C [J/kg]; wmo_8 tables."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Deposit:
    """Water gained by a surface [kg/(m2 s)] and the heat that comes with it [W/m2]."""

    mass_flux: float
    heat_flux: float
    frost: bool


def deposit(surface: float, air: float, humidity: float, coefficient: float) -> Deposit:
    """Dew or frost on a surface.

    Parameters
    ----------
    surface, air : float
        Temperatures. [K]
    humidity : float
        Relative humidity of the air, 0 to 1.
    coefficient : float
        Convective heat transfer coefficient, without radiation. [W/(m2 K)]

    Returns
    -------
    Deposit
        Nought if the surface is above the dew point.

    Raises
    ------
    OutsideRange
        If a number is outside its range.

    Notes
    -----
    The pressure difference drives, by the Lewis analogy. The same law stands in the conduction
    kernel; a test holds the two together.

    References
    ----------
    incropera_2007, section 6.7.2.
    """
    HUMIDITY.require(humidity)
    frost = surface < 273.15
    there = float(frost_pressure(surface) if frost else saturation_pressure(surface))
    around = humidity * float(saturation_pressure(air))
    flux = max(vapour_transfer(coefficient) * (around - there), 0.0)
    heat = HEAT_OF_SUBLIMATION if frost else float(heat_of_evaporation(surface))
    return Deposit(mass_flux=flux, heat_flux=flux * heat, frost=frost and flux > 0.0)
