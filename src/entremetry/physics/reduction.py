"""Boiling a liquid down: how much must go, and how long that takes."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.errors import OutsideRange
from entremetry.sources.range import Range

HEAT_OF_BOILING = 2.257e6
"""Water at 100 °C [J/kg]; incropera_2007, table A.6."""
MASS = Range("mass", 0.0, 1e6, "kg", "our_own")
FRACTION = Range("solids", 0.0, 0.95, "kg/kg", "our_own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Reduction:
    """Mass at the end and water gone [kg], time to heat up and to boil down [s]."""

    mass: float
    evaporated: float
    heating_time: float
    boiling_time: float

    @property
    def time(self) -> float:
        """Both together. [s]"""
        return self.heating_time + self.boiling_time


def mass_at_solids(mass: float, solids: float, wanted: float) -> float:
    """Mass left when a liquid of `mass` and solids fraction is boiled to another fraction. [kg]"""
    FRACTION.require(solids)
    FRACTION.require(wanted)
    if not 0.0 < solids <= wanted:
        raise OutsideRange(f"boiling does not take solids from {solids} to {wanted}")
    MASS.require(mass)
    return mass * solids / wanted


def reduce(
    mass: float,
    end_mass: float,
    power: float,
    *,
    start: float = 293.15,
    boiling_point: float = 373.15,
    heat_capacity: float = 4000.0,
    losses: float = 0.0,
) -> Reduction:
    """Boil a liquid down with a given net power.

    Parameters
    ----------
    mass, end_mass : float
        Before and after. [kg]
    power : float
        Heat that enters the liquid. [W]
    start, boiling_point : float
        Temperatures; syrups boil above 373.15. [K]
    heat_capacity : float
        Of the liquid. [J/(kg K)]
    losses : float
        Heat that the pan loses to the room while it boils, without evaporation. [W]

    Returns
    -------
    Reduction
        Times and masses.

    Raises
    ------
    OutsideRange
        If the end mass is not below the mass, or the losses eat the power: it never boils down.

    Notes
    -----
    Boiling is limited by heat: 1.595 kg/h for each net kilowatt.

    References
    ----------
    incropera_2007, table A.6, for the heat of boiling.
    """
    if not 0.0 < end_mass <= mass < float("inf"):
        raise OutsideRange(f"boiling does not take {mass} kg to {end_mass} kg")
    if not 0.0 < heat_capacity < float("inf"):
        raise OutsideRange(f"a heat capacity of {heat_capacity} J/(kg K) is not positive")
    if not (float("inf") > power > losses >= 0.0):
        raise OutsideRange(f"never: {power} W do not exceed the losses of {losses} W")
    if not 200.0 < start <= boiling_point < 500.0:
        raise OutsideRange("a liquid starts below its boiling point")
    gone = mass - end_mass
    return Reduction(
        mass=end_mass,
        evaporated=gone,
        heating_time=mass * heat_capacity * (boiling_point - start) / (power - 0.5 * losses),
        boiling_time=gone * HEAT_OF_BOILING / (power - losses),
    )
