"""How much of the water is still liquid below the freezing point."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.physics.arrays import Floats, Numbers, read_table
from entremetry.physics.component_heat_capacity import LATENT_HEAT_FUSION
from entremetry.sources.range import Range

MELTING_POINT = 273.15
COLDEST = 233.15
FREEZING_POINT = Range("freezing point", COLDEST, MELTING_POINT - 1e-3, "K", "our_own")


@dataclass(frozen=True, slots=True, repr=False)
class Liquidus:
    """A table: the more the solution is concentrated, the colder it freezes.

    `concentrations` tell how many times the freezable water is concentrated (1 where ice begins,
    rising); `temperatures` at which that solution is in balance with ice (falling). [K]
    Between two rows the concentration runs straight. Below the last row nothing more freezes.
    """

    temperatures: Floats
    concentrations: Floats

    def __post_init__(self) -> None:
        t, c = self.temperatures, self.concentrations
        if t.shape != c.shape or t.size < 2 or not np.isfinite([t, c]).all():
            raise OutsideRange("a liquidus needs two finite rows or more")
        if c[0] != 1.0 or np.any(np.diff(c) <= 0.0) or np.any(np.diff(t) >= 0.0):
            raise OutsideRange("a liquidus starts at concentration 1, rises in it and gets colder")
        FREEZING_POINT.require(self.freezing_point)

    def __repr__(self) -> str:
        return f"Liquidus from {self.freezing_point:g} K"

    @property
    def freezing_point(self) -> float:
        """Temperature at which the first ice is in balance. [K]"""
        return float(self.temperatures[0])

    def liquid_fraction(self, temperature: Numbers) -> Floats:
        """Part of the freezable water that is liquid: 1 above the freezing point."""
        t = np.asarray(temperature, dtype=float)
        c = read_table(-t, -self.temperatures, self.concentrations)
        return 1.0 / c


def liquidus(
    freezing_point: Callable[[float], float],
    greatest_concentration: float = 40.0,
    rows: int = 160,
) -> Liquidus:
    """Table a function that gives the freezing point of a concentrated solution.

    Parameters
    ----------
    freezing_point : callable
        Takes the concentration (1 before any ice, 2 when half of the freezable water is ice)
        and returns the temperature in balance with ice. [K]
    greatest_concentration : float
        Where freezing stops: the solution has become a glass, or the function ends.
    rows : int
        Rows of the table at most.

    Returns
    -------
    Liquidus
        Down to 233.15 K or to the greatest concentration.

    Raises
    ------
    OutsideRange
        If the function does not fall, is not finite, or starts at 273.15 K or above.
    """
    if not greatest_concentration > 1.0 or rows < 2:
        raise OutsideRange("a liquidus needs a greatest concentration above 1 and two rows")
    concentrations, temperatures = [], []
    for c in np.geomspace(1.0, greatest_concentration, rows):
        concentrations.append(float(c))
        temperatures.append(float(freezing_point(float(c))))
        if temperatures[-1] < COLDEST:
            break
    return Liquidus(np.array(temperatures), np.array(concentrations))


def dilute_liquidus(freezing_point: float) -> Liquidus:
    """Freezing point depression in proportion to concentration.

    Parameters
    ----------
    freezing_point : float
        Temperature at which the first ice is in balance. [K]

    Returns
    -------
    Liquidus
        With t in degrees Celsius the liquid part is t_f / t.

    Raises
    ------
    OutsideRange
        If the freezing point is not in 233.15 K to just below 273.15 K.

    References
    ----------
    ashrae_refrigeration, chapter 19, equation 4; schwartzberg_1976.
    """
    FREEZING_POINT.require(freezing_point)
    depression = MELTING_POINT - freezing_point
    lowest = min(COLDEST - 10.0, freezing_point - 1.0)
    last = (MELTING_POINT - lowest) / depression
    return Liquidus(np.array([freezing_point, lowest]), np.array([1.0, last]))


def raoult_freezing_point(mole_ratio: float) -> float:
    """Freezing point of an ideal solution.

    Parameters
    ----------
    mole_ratio : float
        Moles of dissolved particles per mole of water.

    Returns
    -------
    float
        Temperature in balance with ice. [K]

    Raises
    ------
    OutsideRange
        If the ratio is not from 0 to 2.

    Notes
    -----
    ln x = -(6009.5 / R)(1/T - 1/T0). Against sucrose it is good to about 5 % at 10 % sugar and
    20 % short at 40 %.

    References
    ----------
    schwartzberg_1976.
    """
    Range("mole ratio", 0.0, 2.0, "mol/mol", "schwartzberg_1976").require(mole_ratio)
    molar_heat = LATENT_HEAT_FUSION * 18.01528e-3
    inverse = 1.0 / MELTING_POINT + 8.314462618 / molar_heat * np.log1p(mole_ratio)
    return float(1.0 / inverse)
