"""Pouring a warm glaze over a frozen piece: film, grams, melting, setting, the pour window."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.physics.arrays import Floats
from entremetry.physics.glaze_film import Fluidity, film_thickness, film_volume
from entremetry.physics.material import Material
from entremetry.sources.range import Range

RADIUS = Range("radius of a dome", 1e-3, 10.0, "m", "our_own")
DEPTH = 12e-3  # of the piece that takes part in the first minutes [m]
CELL = 0.2e-3
FIRST_THICKNESS = 2.5e-3  # where the search for the film's own thickness begins
ROUNDS = 6
AGREED = 0.05  # relative


@dataclass(frozen=True, slots=True, kw_only=True)
class Glaze:
    """Thermal table of the glaze, its density [kg/m3] and how it flows."""

    material: Material
    density: float
    fluidity: Fluidity


@dataclass(frozen=True, slots=True, kw_only=True)
class Dome:
    """The frozen piece: its material, temperature [K] and radius [m]."""

    material: Material
    temperature: float
    radius: float

    def __post_init__(self) -> None:
        self.material.require(self.temperature)
        RADIUS.require(self.radius)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pour:
    """What becomes of one pour; lengths in m, masses in kg, times in s, temperatures in K.

    `set_time` is None if the film has not set within the time looked at; `contact` is the
    temperature that film and piece take where they touch at first.
    """

    temperature: float
    pole: float
    edge: float
    stays: float
    runs_off: float
    contact: float
    melt_depth: float
    set_time: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """What a good film is: thickness at the pole from `thinnest` to `thickest`, melting and time
    to set not above their limits. [m, m, m, s]"""

    thinnest: float = 0.8e-3
    thickest: float = 3.0e-3
    melting: float = 1.0e-3
    setting: float = 240.0


def pour(
    glaze: Glaze,
    dome: Dome,
    temperature: float,
    poured: float,
    start: float = 5e-3,
    watch: float = 300.0,
    air: float = 293.15,
) -> Pour:
    """Follow one pour until the film has set.

    Parameters
    ----------
    glaze, dome
        What is poured over what.
    temperature : float
        Of the glaze as it leaves the jug. [K]
    poured : float
        Mass poured over one piece. [kg]
    start : float
        Thickness of the film just after the pour; a thick one forgets it. [m]
    watch : float
        Time looked at. [s]
    air : float
        Of the room. [K]

    Returns
    -------
    Pour
        Film, grams, melting, setting.

    Raises
    ------
    OutsideRange
        If temperatures are not covered or masses not positive.

    Notes
    -----
    Heat runs one-dimensionally through the film and the outer 12 mm of the piece (conduction
    kernel); the film flows with the fluidity of its own temperatures, weighted towards the free
    surface as the lubrication flow is. Film and heat are brought together in a few rounds: a
    thick film stays warm and runs thin, a thin one sets at once, so a round goes part of the way.
    """
    if not (0.0 < poured < np.inf and 0.0 < start < np.inf and 0.0 < watch < np.inf):
        raise OutsideRange("mass poured, first thickness and time are positive")
    if not glaze.fluidity.sets_at < temperature:
        raise OutsideRange("never: a glaze at or below its setting point does not pour")
    thickness = min(FIRST_THICKNESS, start)
    for _ in range(ROUNDS):
        times, field, depths = _warmth(glaze, dome, temperature, thickness, watch, air)
        flow, set_time = _flow(glaze.fluidity, times, field, depths, thickness)
        left = film_thickness(np.pi / 3.0, start, flow, glaze.density, dome.radius)
        if abs(np.log(left / thickness)) < AGREED:
            break
        thickness *= float((left / thickness) ** 0.4)
    stays = glaze.density * film_volume(start, flow, glaze.density, dome.radius)
    return Pour(
        temperature=temperature,
        pole=film_thickness(0.0, start, flow, glaze.density, dome.radius),
        edge=film_thickness(np.pi / 2.0, start, flow, glaze.density, dome.radius),
        stays=min(stays, poured),
        runs_off=max(poured - stays, 0.0),
        contact=contact_temperature(glaze.material, temperature, dome.material, dome.temperature),
        melt_depth=_melt_depth(dome.material, field, depths, thickness),
        set_time=set_time,
    )


def pour_window(
    glaze: Glaze,
    dome: Dome,
    poured: float,
    wish: Wish | None = None,
    temperatures: Sequence[float] | None = None,
) -> tuple[tuple[float, float] | None, tuple[Pour, ...]]:
    """Pour temperatures that give a good film, and what each tried one gives.

    Parameters
    ----------
    glaze, dome, poured
        As for `pour`.
    wish : Wish, optional
        What a good film is.
    temperatures : sequence of float, optional
        Temperatures to try, rising; by default each degree from just above setting to 45 °C. [K]

    Returns
    -------
    (low, high) or None, and the pours
        Coolest and warmest temperature whose film is good; None if there is none. [K]
    """
    wish = wish or Wish()
    if temperatures is None:
        temperatures = list(np.arange(np.ceil(glaze.fluidity.sets_at) + 1.15, 318.2, 1.0))
    pours = tuple(pour(glaze, dome, float(t), poured) for t in temperatures)
    good = [p.temperature for p in pours if _is_good(p, wish)]
    return ((good[0], good[-1]) if good else None), pours


def contact_temperature(
    warm: Material, warm_temperature: float, cold: Material, cold_temperature: float
) -> float:
    """Temperature at which two thick bodies touch at first, without latent heat. [K]

    References
    ----------
    carslaw_jaeger_1959, section 2.15: weighted by sqrt(k rho c).
    """
    a = _effusivity(warm, warm_temperature)
    b = _effusivity(cold, cold_temperature)
    return (a * warm_temperature + b * cold_temperature) / (a + b)


def _effusivity(made: Material, temperature: float) -> float:
    span = 0.5
    low = max(temperature - span, made.lowest)
    high = min(temperature + span, made.highest)
    heat = (float(made.enthalpy(high)) - float(made.enthalpy(low))) / (high - low)
    return float(np.sqrt(heat * float(made.conductivity(temperature))))


def _is_good(p: Pour, wish: Wish) -> bool:
    return (
        wish.thinnest <= p.pole <= wish.thickest
        and p.melt_depth <= wish.melting
        and p.set_time is not None
        and p.set_time <= wish.setting
    )


def _warmth(
    glaze: Glaze, dome: Dome, temperature: float, thickness: float, watch: float, air: float
) -> tuple[Floats, Floats, Floats]:
    """Temperatures over time and depth; depth is counted from the surface of the piece inward."""
    from entremetry.physics import conduction as heat

    whole = DEPTH + thickness
    edge = heat.outline(
        ("middle", [(0.0, 0.0), (CELL, 0.0)]),
        ("side", [(CELL, 0.0), (CELL, whole)]),
        ("skin", [(CELL, whole), (0.0, whole)]),
        ("side", [(0.0, whole), (0.0, 0.0)]),
    )
    film = heat.Region(
        name="film", material=glaze.material, points=heat.rectangle(0.0, DEPTH, CELL, whole)
    )
    body = heat.plane_body(edge, dome.material, (film,), CELL)
    room = heat.Surroundings(temperature=air, coefficient=5.0, emissivity=0.95)
    times = watch * np.linspace(0.0, 1.0, 121) ** 2
    history = heat.run(
        body,
        {"body": dome.temperature, "film": temperature},
        [heat.Stage(surroundings={"skin": room}, duration=watch)],
        None,
        heat.Course(accuracy=0.02, keep=tuple(times)),
    )
    field = np.array([s.temperatures[0, :, 0] for s in history.snapshots], dtype=np.float64)
    levels = (np.arange(field.shape[1], dtype=np.float64) + 0.5) * body.spacing[1]
    return np.array([s.time for s in history.snapshots]), field, DEPTH - levels


def _flow(
    fluidity: Fluidity, times: Floats, field: Floats, depths: Floats, thickness: float
) -> tuple[float, float | None]:
    """Integral of the film's fluidity over time, and when all of the film has set."""
    film = depths < 0.0
    above = -depths[film]  # height above the piece
    weight = 3.0 * (thickness - above) ** 2
    weight = np.maximum(weight, 0.0)
    weight = weight / weight.sum()
    mean = fluidity.fluidity(field[:, film]) @ weight
    flow = float(np.sum(0.5 * (mean[1:] + mean[:-1]) * np.diff(times)))
    warm = np.flatnonzero(field[:, film].max(axis=1) > fluidity.sets_at)
    last = int(warm[-1]) if warm.size else 0
    return flow, float(times[last + 1]) if last + 1 < times.size else None


def _melt_depth(made: Material, field: Floats, depths: Floats, thickness: float) -> float:
    """Greatest depth of the piece that was ever above its freezing point. [m]"""
    if made.freezing_point is None:
        return 0.0
    inside = depths > 0.0
    hottest = field[:, inside].max(axis=0)
    melted = depths[inside][hottest > made.freezing_point]
    return float(melted.max()) + 0.5 * CELL if melted.size else 0.0
