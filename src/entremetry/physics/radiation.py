"""Radiation between a surface and the walls around it."""

from __future__ import annotations

from entremetry.sources.range import Range

STEFAN_BOLTZMANN = 5.670374419e-8
"""Radiation of a black surface over T^4 [W/(m2 K4)]; CODATA 2018."""
EMISSIVITY = Range("emissivity", 0.0, 1.0, "-", "incropera_2007")
TEMPERATURE = Range("temperature", 1.0, 3000.0, "K", "incropera_2007")


def radiative_coefficient(surface: float, walls: float, emissivity: float = 0.95) -> float:
    """Coefficient that radiation adds to convection.

    Parameters
    ----------
    surface, walls : float
        Temperatures of the surface and of the large walls around it. [K]
    emissivity : float
        Of the surface; most foods have about 0.95.

    Returns
    -------
    float
        Coefficient on the difference of the two temperatures. [W/(m2 K)]

    Raises
    ------
    OutsideRange
        If a number is outside its range.

    References
    ----------
    incropera_2007, equation 1.9.
    """
    EMISSIVITY.require(emissivity)
    TEMPERATURE.require(surface)
    TEMPERATURE.require(walls)
    return emissivity * STEFAN_BOLTZMANN * (surface**2 + walls**2) * (surface + walls)
