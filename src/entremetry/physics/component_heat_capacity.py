"""Heat capacity and enthalpy of the pure components that food is made of."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

import numpy as np

from entremetry.physics.arrays import Floats, Numbers
from entremetry.physics.component_density import RANGE

LATENT_HEAT_FUSION = 333.6e3
"""Heat of melting of ice at 273.15 K [J/kg]; ashrae_refrigeration."""

_ROWS: Mapping[str, tuple[float, float, float]] = MappingProxyType(
    {  # choi_okos_1986; J/(kg K), t in °C
        "protein": (2008.2, 1.2089, -1.3129e-3),
        "fat": (1984.2, 1.4733, -4.8008e-3),
        "carbohydrate": (1548.8, 1.9625, -5.9399e-3),
        "fibre": (1845.9, 1.8306, -4.6509e-3),
        "ash": (1092.6, 1.8896, -3.6817e-3),
        "ice": (2062.3, 6.0769, 0.0),
    }
)
_WATER = (4176.2, -9.0864e-2, 5.4731e-3)  # choi_okos_1986, 0 to 150 °C
_COLD_WATER = (4081.7, -5.3062, 0.99516)  # ashrae_refrigeration, -40 to 0 °C


class ComponentHeat(NamedTuple):
    """Heat capacity [J/(kg K)] or enthalpy [J/kg] of each component."""

    water: Floats
    protein: Floats
    fat: Floats
    carbohydrate: Floats
    fibre: Floats
    ash: Floats
    ice: Floats


def component_heat_capacity(temperature: Numbers) -> ComponentHeat:
    """Specific heat capacity of water, protein, fat, carbohydrate, fibre, ash and ice.

    Parameters
    ----------
    temperature : float or array, shape (...,)
        Temperature. [K]

    Returns
    -------
    ComponentHeat
        Heat capacity at constant pressure, each of the same shape. [J/(kg K)]

    Raises
    ------
    OutsideRange
        If any temperature leaves 233.15 to 423.15 K.

    Notes
    -----
    Water at 0 °C has 4176.2; a widely used library carries 4128.9, which is 1.13 % low against
    the steam tables and against the printed foods of the same chapter. Below 0 °C the row for
    undercooled water is used; it joins at 0 °C with a step of 2.3 %. No latent heat is in
    these numbers.

    References
    ----------
    choi_okos_1986; ashrae_refrigeration, table 1, with the row of water below 0 °C from memory.

    Examples
    --------
    >>> round(float(component_heat_capacity(313.15).water), 1)
    4181.3
    """
    RANGE.require(temperature)
    t = np.asarray(temperature, dtype=float) - 273.15
    water = np.where(t < 0.0, _polynomial(_COLD_WATER, t), _polynomial(_WATER, t))
    return ComponentHeat(water=water, **{n: _polynomial(row, t) for n, row in _ROWS.items()})


def component_enthalpy(temperature: Numbers) -> ComponentHeat:
    """Enthalpy of each component, nought at 273.15 K in the state it has there; ice -333.6 kJ/kg.

    Parameters
    ----------
    temperature : float or array, shape (...,)
        Temperature. [K]

    Returns
    -------
    ComponentHeat
        Integral of the heat capacity from 273.15 K, each of the same shape. [J/kg]

    Raises
    ------
    OutsideRange
        If any temperature leaves 233.15 to 423.15 K.

    Notes
    -----
    The difference of water and ice is the heat of melting at that temperature, so a mix that
    freezes over a range closes its heat balance on any path.

    References
    ----------
    choi_okos_1986; ashrae_refrigeration.
    """
    RANGE.require(temperature)
    t = np.asarray(temperature, dtype=float) - 273.15
    heats = {name: _integral(row, t) for name, row in _ROWS.items()}
    heats["ice"] = heats["ice"] - LATENT_HEAT_FUSION
    water = np.where(t < 0.0, _integral(_COLD_WATER, t), _integral(_WATER, t))
    return ComponentHeat(water=water, **heats)


def _polynomial(row: tuple[float, float, float], t: Floats) -> Floats:
    return row[0] + row[1] * t + row[2] * t**2


def _integral(row: tuple[float, float, float], t: Floats) -> Floats:
    return t * (row[0] + row[1] / 2.0 * t + row[2] / 3.0 * t**2)
