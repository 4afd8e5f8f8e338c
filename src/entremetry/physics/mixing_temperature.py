"""The temperature of a mix, and what a part must have so that the mix comes out right."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from entremetry.errors import OutsideRange

LOW, HIGH = 233.15, 423.15


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """Mass [kg], temperature [K] and enthalpy of one part as a rising function of it [J/kg]."""

    mass: float
    temperature: float
    enthalpy: Callable[[float], float]

    def __post_init__(self) -> None:
        if not 0.0 < self.mass < float("inf"):
            raise OutsideRange(f"a mass of {self.mass} kg cannot be mixed")
        if not LOW <= self.temperature <= HIGH:
            raise OutsideRange(f"{self.temperature} K is outside {LOW} to {HIGH} K")


def constant_heat(heat_capacity: float) -> Callable[[float], float]:
    """Enthalpy of a part without melting or freezing, from its heat capacity [J/(kg K)]."""
    if not 0.0 < heat_capacity < float("inf"):
        raise OutsideRange("a heat capacity is positive")
    return lambda temperature: heat_capacity * (temperature - 273.15)


def mixing_temperature(parts: Sequence[Part]) -> float:
    """Temperature that parts take when they are mixed and nothing is lost.

    Parameters
    ----------
    parts : sequence of Part
        Latent heat counts through their enthalpies: chocolate melts, ice melts.

    Returns
    -------
    float
        Temperature at which the mix has the heat that its parts had. [K]

    Raises
    ------
    OutsideRange
        If there is no part.

    References
    ----------
    common_practice; conservation of enthalpy at constant pressure.
    """
    if not parts:
        raise OutsideRange("a mix needs one part or more")
    heat = sum(p.mass * p.enthalpy(p.temperature) for p in parts)
    low = min(p.temperature for p in parts)
    high = max(p.temperature for p in parts)
    return _root(lambda t: sum(p.mass * p.enthalpy(t) for p in parts) - heat, low, high)


def temperature_needed(parts: Sequence[Part], other: Part, mix: float) -> float:
    """Temperature that one more part must have so that the mix comes to a temperature.

    Parameters
    ----------
    parts : sequence of Part
        The parts whose temperatures are given.
    other : Part
        The part that is looked for; its own temperature is not used.
    mix : float
        Temperature wanted. [K]

    Returns
    -------
    float
        Temperature of the other part. [K]

    Raises
    ------
    OutsideRange
        If no temperature from 233.15 to 423.15 K does it.
    """
    given = sum(p.mass * (p.enthalpy(p.temperature) - p.enthalpy(mix)) for p in parts)
    wanted = other.enthalpy(mix) - given / other.mass
    if not other.enthalpy(LOW) <= wanted <= other.enthalpy(HIGH):
        raise OutsideRange(f"no temperature of {other.mass} kg brings the mix to {mix} K")
    return _root(lambda t: other.enthalpy(t) - wanted, LOW, HIGH)


def _root(function: Callable[[float], float], low: float, high: float) -> float:
    """Zero of a rising function by halving, to 1e-10 K."""
    while high - low > 1e-10:
        middle = 0.5 * (low + high)
        if middle in (low, high):
            break
        low, high = (middle, high) if function(middle) < 0.0 else (low, middle)
    return 0.5 * (low + high)
