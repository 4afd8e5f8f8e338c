"""Thermal conductivity of the pure components that food is made of."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from entremetry.physics.arrays import Floats, Numbers
from entremetry.physics.component_density import RANGE


class ComponentConductivity(NamedTuple):
    """Thermal conductivity of each component. [W/(m K)]"""

    water: Floats
    protein: Floats
    fat: Floats
    carbohydrate: Floats
    fibre: Floats
    ash: Floats
    ice: Floats


def component_conductivity(temperature: Numbers) -> ComponentConductivity:
    """Thermal conductivity of water, protein, fat, carbohydrate, fibre, ash and ice.

    Parameters
    ----------
    temperature : float or array, shape (...,)
        Temperature. [K]

    Returns
    -------
    ComponentConductivity
        One conductivity for each component, each of the same shape. [W/(m K)]

    Raises
    ------
    OutsideRange
        If any temperature leaves 233.15 to 423.15 K.

    Notes
    -----
    The linear term of fat is -2.7604e-4: copies with e-3, or with a plus sign, are in use, and
    the first of them makes fat a perfect insulator near 65 °C.

    References
    ----------
    choi_okos_1986; the same rows in ashrae_refrigeration, table 1.

    Examples
    --------
    >>> round(float(component_conductivity(293.15).fat), 5)
    0.17512
    """
    RANGE.require(temperature)
    t = np.asarray(temperature, dtype=float) - 273.15
    return ComponentConductivity(
        water=0.57109 + 1.7625e-3 * t - 6.7036e-6 * t**2,
        protein=0.17881 + 1.1958e-3 * t - 2.7178e-6 * t**2,
        fat=0.18071 - 2.7604e-4 * t - 1.7749e-7 * t**2,
        carbohydrate=0.20141 + 1.3874e-3 * t - 4.3312e-6 * t**2,
        fibre=0.18331 + 1.2497e-3 * t - 3.1683e-6 * t**2,
        ash=0.32962 + 1.4011e-3 * t - 2.9069e-6 * t**2,
        ice=2.2196 - 6.2489e-3 * t + 1.0154e-4 * t**2,
    )
