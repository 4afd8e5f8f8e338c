"""Gelatine: what one grade is worth of another, how firm it sets, when it sets and melts."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

from entremetry.sources.range import Range

MASS = Range("mass", 0.0, 1e6, "kg", "our_own")

BLOOM = Range("Bloom of a gelatine", 50.0, 350.0, "g", "ward_courts_1977")
CONCENTRATION = Range("gelatine in the water", 0.0, 0.10, "kg/kg", "our_own")
TEST_CONCENTRATION = 0.0667  # kg/kg, 7.5 g and 105 g of water: ward_courts_1977
GRAM_FORCE = 9.80665e-3  # N
PLUNGER_RADIUS = 0.00635  # m
PLUNGER_DEPTH = 0.004  # m
CRITICAL = 0.006  # kg/kg below which no gel holds together, 0.4 to 1 %: from_memory


class BloomRule(StrEnum):
    """How grades are converted: as the kitchen does, or as gel strength grows."""

    LINEAR = "linear"
    SQUARE_ROOT = "square root"


@dataclass(frozen=True, slots=True, kw_only=True)
class GelatineTemperatures:
    """Between which temperatures gelatine sets and melts. [K]"""

    sets_from: float
    sets_at: float
    melts_at: float
    melts_by: float


SETTING = GelatineTemperatures(sets_from=291.15, sets_at=293.15, melts_at=300.15, melts_by=306.15)
"""For 200 to 250 Bloom at 2 to 6 %: sets 18 to 25 °C, melts 27 to 33 °C (from_memory); 20 and
27 °C are what cooks are taught (common_practice). Both rise with Bloom and with concentration
(boran_2010)."""


def equivalent_mass(
    mass: float, bloom: float, wanted: float, rule: BloomRule = BloomRule.LINEAR
) -> float:
    """Mass of gelatine of another grade that does the same.

    Parameters
    ----------
    mass : float
        Mass at hand. [kg]
    bloom, wanted : float
        Its Bloom and the Bloom to convert to. [g]
    rule : BloomRule
        Linear: m1 B1 = m2 B2. Square root: m1 sqrt(B1) = m2 sqrt(B2).

    Returns
    -------
    float
        Mass of the other grade. [kg]

    Raises
    ------
    OutsideRange
        If a Bloom leaves 50 to 350, or the mass is negative or no number.

    Notes
    -----
    The square root follows from Bloom growing as the square of the concentration
    (ward_courts_1977: 7.5 to 7.6 g turns 175 into 179.7). The linear rule is that of the trade,
    and sheets are weighed by it. They part by more than 10 % once the grades differ by more
    than 21 %.

    References
    ----------
    ward_courts_1977 for the square root; common_practice for the linear rule.

    Examples
    --------
    >>> round(equivalent_mass(0.010, 200.0, 160.0) * 1e3, 2)
    12.5
    >>> round(equivalent_mass(0.010, 200.0, 160.0, BloomRule.SQUARE_ROOT) * 1e3, 2)
    11.18
    """
    MASS.require(mass)
    BLOOM.require(bloom)
    BLOOM.require(wanted)
    ratio = bloom / wanted
    return mass * (math.sqrt(ratio) if rule is BloomRule.SQUARE_ROOT else ratio)


def bloom_at(bloom: float, concentration: float) -> float:
    """Force on the plunger if the test gel had another concentration.

    Parameters
    ----------
    bloom : float
        Bloom of the gelatine. [g]
    concentration : float
        Gelatine as a part of gelatine and water together. [kg/kg]

    Returns
    -------
    float
        Force in the unit of Bloom. [g]

    Raises
    ------
    OutsideRange
        If the Bloom leaves 50 to 350 or the concentration 0 to 0.10.

    Notes
    -----
    Grows as the square of the concentration; near 0.4 to 1 % the exponent is above 2 and this is
    too much.

    References
    ----------
    ward_courts_1977, p. 509.

    Examples
    --------
    >>> round(bloom_at(175.0, TEST_CONCENTRATION * 7.6 / 7.5), 1)
    179.7
    """
    BLOOM.require(bloom)
    CONCENTRATION.require(concentration)
    return bloom * (concentration / TEST_CONCENTRATION) ** 2


def gel_modulus(bloom: float, concentration: float) -> float:
    """Shear modulus of a gelatine gel after a night at 10 °C, at most.

    Parameters
    ----------
    bloom : float
        Bloom of the gelatine. [g]
    concentration : float
        Gelatine as a part of gelatine and water together. [kg/kg]

    Returns
    -------
    float
        Shear modulus. [Pa]

    Raises
    ------
    OutsideRange
        As `bloom_at`.

    Notes
    -----
    A flat plunger pressed into an elastic half-space that keeps its volume: F = 8 a G d, so
    48.3 Pa per Bloom at 6.67 %; an upper bound, for the jar is finite and 4 mm is deep.

    References
    ----------
    our_own, from the terms of the Bloom test (ward_courts_1977).

    Examples
    --------
    >>> round(gel_modulus(200.0, TEST_CONCENTRATION))
    9652
    """
    force = bloom_at(bloom, concentration) * GRAM_FORCE
    return force / (8.0 * PLUNGER_RADIUS * PLUNGER_DEPTH)
