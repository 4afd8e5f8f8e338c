"""A liquid cooling in a bowl or pan: open or lidded surface, wall in air or in an ice bath."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.physics.arrays import Floats
from entremetry.physics.humid_air import (
    PRESSURE,
    air_heat_capacity,
    heat_of_evaporation,
    saturation_pressure,
    vapour_density,
)
from entremetry.physics.radiation import STEFAN_BOLTZMANN
from entremetry.sources.range import Range
from entremetry.words import decimal, say

TEMPERATURE = Range("liquid", 253.15, 373.15, "K", "wmo_8")
STEP = 0.25  # K per step of the integration
MOST_STEPS = 20_000
SLOWEST = 1e-7  # K/s: three years for ten kelvin


@dataclass(frozen=True, slots=True, kw_only=True)
class Liquid:
    """Mass [kg], heat capacity [J/(kg K)], water activity, and the mass that is not water [kg]."""

    mass: float
    heat_capacity: float
    water_activity: float = 1.0
    solids: float = 0.0

    def __post_init__(self) -> None:
        if not (0.0 < self.mass < np.inf and 0.0 < self.heat_capacity < np.inf):
            raise OutsideRange("mass and heat capacity of a liquid are positive")
        if not (0.0 <= self.water_activity <= 1.0 and 0.0 <= self.solids <= self.mass):
            raise OutsideRange("water activity is 0 to 1, the solids are not more than the mass")


@dataclass(frozen=True, slots=True, kw_only=True)
class Bowl:
    """What the liquid stands in.

    `opening` is its free surface [m2] with the convective `coefficient` [W/(m2 K)]; a lid stops
    evaporation and radiates with `lid_emissivity`. `wall` is the wetted wall [m2] with its whole
    conductance `wall_coefficient` [W/(m2 K)], inside film (stirring), wall and outside together,
    to `bath` [K] (None: the room). `heat_capacity` is that of the bowl [J/K]. `analogy` is
    Le^(2/3); `air_heat` that of air per volume [J/(m3 K)], None takes it at the film temperature.
    """

    opening: float
    coefficient: float = 5.0
    emissivity: float = 0.95
    lid: bool = False
    lid_emissivity: float = 0.3
    wall: float = 0.0
    wall_coefficient: float = 0.0
    bath: float | None = None
    heat_capacity: float = 0.0
    analogy: float = 0.865 ** (2.0 / 3.0)
    air_heat: float | None = None
    drift: bool = True
    mass_is_lost: bool = True

    def __post_init__(self) -> None:
        sizes = (self.opening, self.coefficient, self.wall, self.wall_coefficient)
        if not all(0.0 <= size < np.inf for size in (*sizes, self.heat_capacity)):
            raise OutsideRange("areas, coefficients and heat capacity of a bowl are not negative")
        if not (0.0 <= self.emissivity <= 1.0 and 0.0 <= self.lid_emissivity <= 1.0):
            raise OutsideRange("emissivities lie between 0 and 1")


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """Air of the room: temperature [K] and relative humidity (0 to 1)."""

    temperature: float
    humidity: float = 0.5

    def __post_init__(self) -> None:
        TEMPERATURE.require(self.temperature)
        if not 0.0 <= self.humidity <= 1.0:
            raise OutsideRange("relative humidity lies between 0 and 1")


@dataclass(frozen=True, slots=True, kw_only=True)
class Loss:
    """Heat that leaves, by way [W], and water that leaves [kg/s]."""

    convection: float
    radiation: float
    evaporation: float
    wall: float
    water: float

    @property
    def total(self) -> float:
        """All ways together. [W]"""
        return self.convection + self.radiation + self.evaporation + self.wall


@dataclass(frozen=True, slots=True, kw_only=True)
class Cooling:
    """Times [s], temperatures [K] and water gone [kg]; whether the end was reached, else why."""

    times: Floats
    temperatures: Floats
    evaporated: Floats
    reached: bool
    reason: str = ""

    def time_at(self, temperature: float) -> float:
        """Time at which a temperature on the way was passed. [s]"""
        low, high = float(self.temperatures.min()), float(self.temperatures.max())
        if not low - 1e-9 <= temperature <= high + 1e-9:
            raise OutsideRange(f"{temperature} K was not passed, only {low:.2f} to {high:.2f} K")
        falling = self.temperatures[0] > self.temperatures[-1]
        order = slice(None, None, -1) if falling else slice(None)
        return float(np.interp(temperature, self.temperatures[order], self.times[order]))


def loss(liquid: Liquid, bowl: Bowl, room: Room, temperature: float) -> Loss:
    """Heat and water that leave at one temperature of the liquid.

    Parameters
    ----------
    liquid, bowl, room
        What cools, in what, where.
    temperature : float
        Of the liquid, taken as mixed. [K]

    Returns
    -------
    Loss
        Negative parts are gains.

    Notes
    -----
    Evaporation by the Lewis analogy; for hot liquids the drift (Stefan flow) multiplies it by
    P / (p_s - p) ln((P - p) / (P - p_s)).

    References
    ----------
    incropera_2007, sections 6.7.2 and 14.2 (from memory).
    """
    t, air = temperature, room.temperature
    emissivity = bowl.lid_emissivity if bowl.lid else bowl.emissivity
    water = 0.0 if bowl.lid else bowl.opening * _vapour_flux(liquid, bowl, room, t)
    outside = air if bowl.bath is None else bowl.bath
    return Loss(
        convection=bowl.opening * bowl.coefficient * (t - air),
        radiation=bowl.opening * emissivity * STEFAN_BOLTZMANN * (t**4 - air**4),
        evaporation=water * float(heat_of_evaporation(t)),
        wall=bowl.wall * bowl.wall_coefficient * (t - outside),
        water=water,
    )


def cool(
    liquid: Liquid, bowl: Bowl, room: Room, start: float, end: float, longest: float = 172800.0
) -> Cooling:
    """Let a liquid cool, or warm, from one temperature to another.

    Parameters
    ----------
    liquid, bowl, room
        What, in what, where.
    start, end : float
        Temperatures. [K]
    longest : float
        When to stop waiting. [s]

    Returns
    -------
    Cooling
        The curve; 'never' with its reason if the end lies beyond where heat stops flowing.

    Raises
    ------
    OutsideRange
        If a temperature is not from 253.15 to 373.15 K.
    """
    for temperature in (start, end):
        TEMPERATURE.require(temperature)
    rows = [(0.0, start, 0.0)]
    sign = float(np.sign(end - start))
    end, reason = _goal(liquid, bowl, room, start, end)
    while sign * (end - rows[-1][1]) > 1e-9:
        time, t, gone = rows[-1]
        rate = _rates(liquid, bowl, room, t, gone)[0]
        if time >= longest or len(rows) > MOST_STEPS:
            reason = say(
                "not within {hours} h: it stands at {temperature} °C",
                hours=decimal(f"{longest / 3600.0:.1f}"),
                temperature=decimal(f"{t - 273.15:.1f}"),
            )
            break
        step = min(min(STEP, abs(end - t)) / abs(rate), longest - time)
        rows.append(_next(liquid, bowl, room, rows[-1], end, step))
    table = np.array(rows)
    return Cooling(
        times=table[:, 0],
        temperatures=table[:, 1],
        evaporated=table[:, 2],
        reached=not reason,
        reason=reason,
    )


def _goal(liquid: Liquid, bowl: Bowl, room: Room, start: float, end: float) -> tuple[float, str]:
    """Where the run ends, and why if that is not the end wished for.

    Heat stops flowing where the loss is nought; a run stays STEP short of there, where steps that
    aim at STEP are still stable.
    """
    sign = float(np.sign(end - start))

    def flows(t: float) -> bool:
        return sign * _rates(liquid, bowl, room, t, 0.0)[0] > SLOWEST

    if sign == 0.0 or flows(end):
        return end, ""
    near, far = start, end
    for _ in range(50):
        middle = (near + far) / 2.0
        near, far = (middle, far) if flows(middle) else (near, middle)
    short = near - sign * STEP
    reason = say(
        "never: at {temperature} °C no more heat flows",
        temperature=decimal(f"{near - 273.15:.1f}"),
    )
    return (short if sign * (short - start) > 0.0 else start), reason


def _next(
    liquid: Liquid,
    bowl: Bowl,
    room: Room,
    row: tuple[float, float, float],
    end: float,
    step: float,
) -> tuple[float, float, float]:
    """One step of Runge and Kutta; the last one is cut so that it ends on the end."""
    moved = _step(liquid, bowl, room, row, step)
    for _ in range(6):
        way = moved[1] - row[1]
        if (moved[1] - end) * way <= 1e-12 * abs(way):
            break
        step *= (end - row[1]) / way
        moved = _step(liquid, bowl, room, row, step)
    if abs(moved[1] - end) < 1e-7:
        return (moved[0], end, moved[2])
    return moved


def _step(
    liquid: Liquid, bowl: Bowl, room: Room, row: tuple[float, float, float], step: float
) -> tuple[float, float, float]:
    time, t, gone = row
    a = _rates(liquid, bowl, room, t, gone)
    b = _rates(liquid, bowl, room, t + 0.5 * step * a[0], gone + 0.5 * step * a[1])
    c = _rates(liquid, bowl, room, t + 0.5 * step * b[0], gone + 0.5 * step * b[1])
    d = _rates(liquid, bowl, room, t + step * c[0], gone + step * c[1])
    mean = [(a[i] + 2.0 * b[i] + 2.0 * c[i] + d[i]) / 6.0 for i in range(2)]
    return (time + step, t + step * mean[0], gone + step * mean[1])


def _rates(liquid: Liquid, bowl: Bowl, room: Room, t: float, gone: float) -> tuple[float, float]:
    """Change of temperature [K/s] and water that leaves [kg/s]."""
    lost = loss(liquid, bowl, room, t)
    mass = liquid.mass - (gone if bowl.mass_is_lost else 0.0)
    mass = max(mass, liquid.solids, 1e-3 * liquid.mass)
    return -lost.total / (mass * liquid.heat_capacity + bowl.heat_capacity), lost.water


def _vapour_flux(liquid: Liquid, bowl: Bowl, room: Room, t: float) -> float:
    """Water that leaves each square metre. [kg/(m2 s)]"""
    there = liquid.water_activity * float(saturation_pressure(t))
    around = room.humidity * float(saturation_pressure(room.temperature))
    film = float(air_heat_capacity(0.5 * (t + room.temperature)))
    transfer = bowl.coefficient / ((bowl.air_heat or film) * bowl.analogy)
    flux = transfer * (
        float(vapour_density(there, t)) - float(vapour_density(around, room.temperature))
    )
    there = min(there, 0.98 * PRESSURE)
    if bowl.drift and abs(there - around) > 1e-6:
        ratio = np.log((PRESSURE - around) / (PRESSURE - there)) / (there - around)
        flux *= PRESSURE * float(ratio)
    return flux
