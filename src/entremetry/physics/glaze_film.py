"""A liquid film that drains from a dome while it thickens: how much stays, and where."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.physics.arrays import Floats, Numbers
from entremetry.sources.range import Range

GRAVITY = 9.80665  # m/s2
VISCOSITY = Range("viscosity", 1e-4, 1e5, "Pa s", "our_own")
GREATEST = 1e9  # of thickness, radius, density and yield stress, in SI units
ANGLE = Range("angle from the pole", 0.0, np.pi / 2 + 1e-9, "rad", "lee_2016")


@dataclass(frozen=True, slots=True, kw_only=True)
class Fluidity:
    """Viscosity over temperature from two measurements, and the point at which the glaze sets.

    Between and beyond the two points the logarithm of the viscosity runs straight over 1/T. At
    and below `sets_at` nothing flows. Temperatures in K, viscosities in Pa s.
    """

    warm: float
    warm_viscosity: float
    cold: float
    cold_viscosity: float
    sets_at: float

    def __post_init__(self) -> None:
        VISCOSITY.require(self.warm_viscosity)
        VISCOSITY.require(self.cold_viscosity)
        if not 250.0 < self.cold < self.warm < 373.15:
            raise OutsideRange("the warm point of a glaze lies above its cold one, below boiling")
        if not self.warm_viscosity < self.cold_viscosity or not 250.0 < self.sets_at < self.warm:
            raise OutsideRange("a glaze thickens as it cools, and sets below its warm point")

    def viscosity(self, temperature: Numbers) -> Floats:
        """Viscosity of the running glaze. [Pa s]"""
        t = np.asarray(temperature, dtype=float)
        ratio = np.log(self.cold_viscosity / self.warm_viscosity)
        slope = ratio / (1.0 / self.cold - 1.0 / self.warm)
        return np.asarray(self.warm_viscosity * np.exp(slope * (1.0 / t - 1.0 / self.warm)))

    def fluidity(self, temperature: Numbers) -> Floats:
        """One over the viscosity, nought once it has set. [1/(Pa s)]"""
        t = np.asarray(temperature, dtype=float)
        return np.where(t > self.sets_at, 1.0 / self.viscosity(t), 0.0)


def pole_thickness(start: float, flow: float, density: float, radius: float) -> float:
    """Thickness at the top of a dome.

    Parameters
    ----------
    start : float
        Thickness just after the pour. [m]
    flow : float
        Integral of 1/viscosity over time. [m s/kg, that is 1/Pa]
    density, radius : float
        Of the glaze [kg/m3], of the dome [m].

    Returns
    -------
    float
        h0 / sqrt(1 + 4 rho g h0^2 F / (3 R)). [m]

    Raises
    ------
    OutsideRange
        If a size is not positive or the flow is negative.

    Notes
    -----
    Exact for the lubrication equation at the pole. A film poured thick forgets how thick:
    h goes to sqrt(3 R / (4 rho g F)).

    References
    ----------
    lee_2016; oron_1997 for the lubrication equation.
    """
    _require_sizes(start, density, radius)
    if not 0.0 <= flow < np.inf:
        raise OutsideRange(f"a flow of {flow} 1/Pa is negative")
    growth = 4.0 * density * GRAVITY * start**2 * flow / (3.0 * radius)
    return float(start / np.sqrt(1.0 + growth))


def profile(angle: float) -> float:
    """Late thickness at an angle from the pole over that at the pole.

    Parameters
    ----------
    angle : float
        From the pole, up to a right angle. [rad]

    Returns
    -------
    float
        f with f^2 = (4/3) sin^(-4/3) a times the integral of sin^(1/3) from 0 to a.

    Notes
    -----
    The similarity solution of the draining film on a sphere: 1.3133 at the equator.

    References
    ----------
    lee_2016 (small angles: 1 + a^2/10); takagi_huppert_2010.
    """
    ANGLE.require(angle)
    if angle < 1e-3:
        return 1.0 + angle**2 / 10.0
    nodes, weights = np.polynomial.legendre.leggauss(24)
    # s = u^3 makes the cube root of the sine smooth at the pole
    u = 0.5 * angle ** (1.0 / 3.0) * (nodes + 1.0)
    values = np.sin(u**3) ** (1.0 / 3.0) * 3.0 * u**2
    integral = float(np.sum(weights * values)) * 0.5 * angle ** (1.0 / 3.0)
    return float(np.sqrt(4.0 / 3.0 * integral * np.sin(angle) ** (-4.0 / 3.0)))


def film_thickness(angle: float, start: float, flow: float, density: float, radius: float) -> float:
    """Thickness at an angle: even at first, the similarity profile late. [m]

    Parameters are those of `pole_thickness` and `profile`.

    Notes
    -----
    The two limits are joined as their squares' reciprocals add, which is exact at the pole.

    References
    ----------
    lee_2016; the join is our_own.
    """
    thin = pole_thickness(start, flow, density, radius)
    late = 1.0 / (1.0 / thin**2 - 1.0 / start**2) if thin < start else np.inf
    shaped = late * profile(angle) ** 2
    return float(1.0 / np.sqrt(1.0 / start**2 + 1.0 / shaped))


def film_volume(start: float, flow: float, density: float, radius: float) -> float:
    """Volume of the film on a hemisphere. [m3]"""
    nodes, weights = np.polynomial.legendre.leggauss(16)
    angles = 0.25 * np.pi * (nodes + 1.0)
    h = np.array([film_thickness(float(a), start, flow, density, radius) for a in angles])
    ring = 2.0 * np.pi * radius**2 * np.sin(angles) * h
    return float(0.25 * np.pi * np.sum(weights * ring))


def wall_thickness(distance: float, flow: float, density: float) -> float:
    """Thickness on an upright wall at a distance below its top edge: sqrt(z / (rho g F)). [m]

    References
    ----------
    jeffreys_1930.
    """
    _require_sizes(distance, density, 1.0)
    if not 0.0 < flow < np.inf:
        raise OutsideRange("a film that has not flowed has no thickness by this law")
    return float(np.sqrt(distance / (density * GRAVITY * flow)))


def held_thickness(yield_stress: float, density: float, angle: float = np.pi / 2) -> float:
    """Thickness that a yield stress [Pa] holds at an angle from the pole. [m]

    References
    ----------
    balmforth_2006, the static film of a Bingham fluid (from memory).
    """
    _require_sizes(yield_stress, density, 1.0)
    if not 0.0 < angle <= np.pi / 2 + 1e-9:
        raise OutsideRange("a yield stress holds any thickness on the level")
    return float(yield_stress / (density * GRAVITY * np.sin(angle)))


def _require_sizes(first: float, density: float, radius: float) -> None:
    if not all(0.0 < size < GREATEST for size in (first, density, radius)):
        raise OutsideRange("thickness, density and radius of a film are positive and no giants")
