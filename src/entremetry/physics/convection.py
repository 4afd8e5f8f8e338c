"""Heat transfer coefficients between a surface and air. [W/(m2 K)]

All take the surface's and the air's temperature [K] and a length [m], and use air at the mean of
the two. The plates know which way they face: a cold plate facing up behaves like a hot one facing
down, and mistaking them is a factor of two.
"""

from __future__ import annotations

from entremetry.errors import OutsideRange
from entremetry.physics.humid_air import air_conductivity, air_prandtl, air_viscosity
from entremetry.sources.range import Range

GRAVITY = 9.80665  # m/s2
LENGTH = Range("length", 1e-4, 10.0, "m", "incropera_2007")
SPEED = Range("air speed", 0.0, 30.0, "m/s", "incropera_2007")


def rayleigh(surface: float, air: float, length: float) -> float:
    """Rayleigh number of a surface in air: buoyancy against viscosity and conduction."""
    LENGTH.require(length)
    film = 0.5 * (surface + air)
    nu, prandtl = float(air_viscosity(film)), float(air_prandtl(film))
    return GRAVITY * abs(surface - air) * length**3 * prandtl / (film * nu**2)


def natural_sphere(surface: float, air: float, diameter: float) -> float:
    """Natural convection around a sphere; near enough for a dome of this diameter.

    References
    ----------
    churchill_1983.
    """
    film = 0.5 * (surface + air)
    ra, prandtl = rayleigh(surface, air, diameter), float(air_prandtl(film))
    return float(air_conductivity(film)) / diameter * sphere_nusselt(prandtl, ra)


def sphere_nusselt(prandtl: float, rayleigh_number: float) -> float:
    """Nusselt number of a sphere in natural convection.

    References
    ----------
    churchill_1983.
    """
    base = 1.0 + (0.469 / prandtl) ** (9.0 / 16.0)
    laminar = 0.589 * rayleigh_number**0.25 / base ** (4.0 / 9.0)
    turbulent = (1.0 + 7.44e-8 * rayleigh_number / base ** (16.0 / 9.0)) ** (1.0 / 12.0)
    return float(2.0 + laminar * turbulent)


def natural_wall(surface: float, air: float, height: float) -> float:
    """Natural convection at an upright wall.

    References
    ----------
    churchill_chu_1975.
    """
    film = 0.5 * (surface + air)
    ra, prandtl = rayleigh(surface, air, height), float(air_prandtl(film))
    base = (1.0 + (0.492 / prandtl) ** (9.0 / 16.0)) ** (8.0 / 27.0)
    nusselt = (0.825 + 0.387 * ra ** (1.0 / 6.0) / base) ** 2
    return float(air_conductivity(film)) / height * float(nusselt)


def natural_level(surface: float, air: float, area: float, edge: float, faces_up: bool) -> float:
    """Natural convection at a level surface.

    Parameters
    ----------
    surface, air : float
        Temperatures. [K]
    area, edge : float
        Area [m2] and length of its edge [m]; their ratio is the plate's length.
    faces_up : bool
        Which way the surface faces.

    Returns
    -------
    float
        Coefficient. [W/(m2 K)]

    Raises
    ------
    OutsideRange
        If area or edge is not positive.

    Notes
    -----
    Warm facing up and cold facing down let the air rise or fall away: 0.54 Ra^(1/4), above
    Ra = 1e7 0.15 Ra^(1/3). The other two keep it: 0.27 Ra^(1/4).

    References
    ----------
    incropera_2007, equations 9.30 to 9.32 (McAdams; Lloyd and Moran).
    """
    if not (area > 0.0 and edge > 0.0):
        raise OutsideRange("area and edge of a level surface are positive")
    length = area / edge
    ra = rayleigh(surface, air, length)
    free = (surface > air) == faces_up
    if free:
        nusselt = 0.54 * ra**0.25 if ra < 1e7 else 0.15 * ra ** (1.0 / 3.0)
    else:
        nusselt = 0.27 * ra**0.25
    return float(air_conductivity(0.5 * (surface + air))) / length * float(nusselt)


def forced_sphere(surface: float, air: float, diameter: float, speed: float) -> float:
    """Air blown over a sphere: fan fridge, blast freezer.

    References
    ----------
    whitaker_1972.
    """
    LENGTH.require(diameter)
    SPEED.require(speed)
    reynolds = speed * diameter / float(air_viscosity(air))
    ratio = _dynamic(air) / _dynamic(surface)
    film = (0.4 * reynolds**0.5 + 0.06 * reynolds ** (2.0 / 3.0)) * float(air_prandtl(air)) ** 0.4
    nusselt = 2.0 + film * ratio**0.25
    return float(air_conductivity(air)) / diameter * float(nusselt)


def _dynamic(temperature: float) -> float:
    """Dynamic viscosity of air up to a constant factor: kinematic over temperature."""
    return float(air_viscosity(temperature)) / temperature
