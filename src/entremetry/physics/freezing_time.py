"""Freezing times by closed formulas: a quick second opinion beside the kernel.

All take a piece that meets the same surroundings on every side and begins at one temperature, and
follow its thermal centre. `half` is the half thickness of a slab, a radius, or the shortest way
from the centre to the surface. The Stefan and the Plank number are the sensible heats of the
frozen and of the unfrozen food, over the latent heat in Pham's formula and over the heat from the
freezing point down to -10 °C in the others.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

from entremetry.errors import OutsideRange
from entremetry.sources.range import Range

MINUS_TEN = 263.15  # K
ZERO = 273.15


class Form(StrEnum):
    """The simple forms that the formulas were made for."""

    SLAB = "slab"
    CYLINDER = "cylinder"
    SPHERE = "sphere"


@dataclass(frozen=True, slots=True, kw_only=True)
class FreezingFood:
    """What the formulas know of a food: constants of its unfrozen and its frozen state.

    `freezing_point` in K; `warm_heat` and `cold_heat` are heat capacities per volume [J/(m3 K)],
    `latent` is the heat that its ice gives off, `heat_to_ten` all heat from the freezing point
    down to -10 °C [J/m3]; conductivities in W/(m K).
    """

    freezing_point: float
    warm_heat: float
    cold_heat: float
    latent: float
    heat_to_ten: float
    warm_conductivity: float
    cold_conductivity: float

    def __post_init__(self) -> None:
        heats = (self.warm_heat, self.cold_heat, self.latent, self.heat_to_ten)
        ways = (self.warm_conductivity, self.cold_conductivity)
        if not all(0.0 < part < math.inf for part in (*heats, *ways)):
            raise OutsideRange("heats and conductivities of a food that freezes are positive")
        if not MINUS_TEN < self.freezing_point <= ZERO:
            raise OutsideRange(
                f"a freezing point of {self.freezing_point} K is outside 263.15 to 273.15 K"
            )


# Ranges of the runs that each formula was fitted to
PHAM = (
    Range("Biot number", 0.02, 11.0, "-", "pham_1986"),
    Range("Stefan number", 0.11, 0.36, "-", "pham_1986"),
    Range("Plank number", 0.03, 0.61, "-", "pham_1986"),
)
SLAB = (
    Range("coefficient", 10.0, 500.0, "W/(m2 K)", "cleland_earle_1984"),
    Range("thickness", 0.0, 0.12, "m", "cleland_earle_1984"),
    Range("start", 233.15, 313.15, "K", "cleland_earle_1984"),
    Range("air", 228.15, 258.15, "K", "cleland_earle_1984"),
)
ROUND = (
    Range("Biot number", 0.5, 4.5, "-", "cleland_earle_1984"),
    Range("Stefan number", 0.155, 0.345, "-", "cleland_earle_1984"),
    Range("Plank number", 0.0, 0.55, "-", "cleland_earle_1984"),
)
CONDUCTIVITY = Range("frozen conductivity", 1.2, 2.2, "W/(m K)", "cleland_earle_1984")
DIMENSIONS = Range("dimensions of the heat's way", 1.0, 3.0, "-", "hossain_1992")


def pham_time(
    dimensions: float,
    half: float,
    coefficient: float,
    food: FreezingFood,
    *,
    start: float,
    air: float,
    end: float,
) -> float:
    """Time until the centre is frozen down to a temperature.

    Parameters
    ----------
    dimensions : float
        1 for a slab, 2 for a long cylinder, 3 for a sphere; between them by `heat_dimensions`.
    half : float
        Half thickness or radius. [m]
    coefficient : float
        From the food's surface to the air, walls and wrapping included. [W/(m2 K)]
    food : FreezingFood
        Its constants.
    start, air, end : float
        Temperatures at the beginning, around it, and of its centre at the end. [K]

    Returns
    -------
    float
        Time. [s]

    Raises
    ------
    OutsideRange
        Outside Biot 0.02 to 11, Stefan 0.11 to 0.36, Plank 0.03 to 0.61; if the temperatures do
        not fall from the start over the freezing point to the end and the air; or if the mean
        freezing temperature below lies above the freezing point, as in foods too sweet for it.

    Notes
    -----
    Two stages, down to the mean freezing temperature 1.8 + 0.263 t_end + 0.105 t_air (°C) and on
    from there, each with its heat and its mean span to the air. Made for moist foods that freeze
    from about -1 °C, of which it is within 10 %.

    References
    ----------
    pham_1986; the ranges are from_memory.
    """
    _require_falling(food, start, air, end)
    DIMENSIONS.require(dimensions)
    biot = biot_number(half, coefficient, food.cold_conductivity)
    require_all(PHAM, biot, *_sensible(food, start, air, food.latent))
    middle = ZERO + 1.8 + 0.263 * (end - ZERO) + 0.105 * (air - ZERO)
    if not end < middle <= food.freezing_point:
        raise OutsideRange(
            f"a mean freezing temperature of {middle:.2f} K is not between the end of {end} K and "
            f"the freezing point of {food.freezing_point:.2f} K (pham_1986)"
        )
    cooling = food.warm_heat * (start - middle) / (0.5 * (start + middle) - air)
    freezing = (food.latent + food.cold_heat * (middle - end)) / (middle - air)
    return half / (dimensions * coefficient) * (cooling + freezing) * (1.0 + 0.5 * biot)


def cleland_earle_time(
    form: Form,
    half: float,
    coefficient: float,
    food: FreezingFood,
    *,
    start: float,
    air: float,
    end: float,
) -> float:
    """Time until the centre is frozen down to a temperature; else as `pham_time`.

    Raises
    ------
    OutsideRange
        A slab outside 10 to 500 W/(m2 K), 0.12 m, 40 °C at the start, air of -45 to -15 °C; the
        others outside Biot (of the diameter) 0.5 to 4.5, Stefan 0.155 to 0.345, Plank 0 to 0.55;
        any whose frozen conductivity is outside 1.2 to 2.2 W/(m K); or if the temperatures do
        not fall from the start over the freezing point to the end and the air.

    Notes
    -----
    Plank's form with factors P and R fitted to runs down to -10 °C, and a logarithm for any other
    end. That logarithm is divided by the conductivity in W/(m K): it holds for foods that conduct
    as those it was fitted to (gel, beef, potato: 1.5 to 1.9), and in a foam it is 40 % long. The
    bounds of the conductivity are ours.

    References
    ----------
    cleland_earle_1984; ashrae_refrigeration, chapter 20.
    """
    _require_falling(food, start, air, end)
    thickness, k = 2.0 * half, food.cold_conductivity
    biot = biot_number(thickness, coefficient, k)
    CONDUCTIVITY.require(k)
    ste, pk = _sensible(food, start, air, food.heat_to_ten)
    if form is Form.SLAB:
        require_all(SLAB, coefficient, thickness, start, air)
    else:
        require_all(ROUND, biot, ste, pk)
    if not air < min(end, MINUS_TEN):
        raise OutsideRange(f"air of {air} K freezes nothing to {end} K and to -10 °C")
    p, r = _fitted(form, biot, ste, pk)
    further = 1.65 * ste / k * math.log((end - air) / (MINUS_TEN - air))
    plank = p * thickness / coefficient + r * thickness**2 / k
    return food.heat_to_ten / (food.freezing_point - air) * plank * (1.0 - further)


def _fitted(form: Form, biot: float, ste: float, pk: float) -> tuple[float, float]:
    """Factors of Plank's form, for a Biot number of the whole thickness."""
    if form is Form.SLAB:
        p = 0.5072 + 0.2018 * pk + ste * (0.3224 * pk + 0.0105 / biot + 0.0681)
        return p, 0.1684 + ste * (0.2740 * pk - 0.0135)
    if form is Form.CYLINDER:
        p = 0.3751 + 0.0999 * pk + ste * (0.4008 * pk + 0.0710 / biot - 0.5865)
        return p, 0.0133 + ste * (0.0415 * pk + 0.3957)
    p = 0.1084 + 0.0924 * pk + ste * (0.2310 * pk - 0.3114 / biot + 0.6739)
    return p, 0.0784 + ste * (0.0386 * pk - 0.1694)


def biot_number(length: float, coefficient: float, conductivity: float) -> float:
    """Resistance inside over that outside; OutsideRange unless length and coefficient are more."""
    if not (0.0 < length < math.inf and 0.0 < coefficient < math.inf):
        raise OutsideRange(
            f"a length of {length} m and a coefficient of {coefficient} W/(m2 K) must be positive"
        )
    return coefficient * length / conductivity


def _sensible(food: FreezingFood, start: float, air: float, heat: float) -> tuple[float, float]:
    """Stefan and Plank number of a freezing over a heat."""
    point = food.freezing_point
    return food.cold_heat * (point - air) / heat, food.warm_heat * (start - point) / heat


def _require_falling(food: FreezingFood, start: float, air: float, end: float) -> None:
    if not air < end < food.freezing_point < start < math.inf:
        raise OutsideRange(
            f"from {start} K over {food.freezing_point} K to {end} K in {air} K is no freezing"
        )


def require_all(ranges: tuple[Range, ...], *values: float) -> None:
    """Raise OutsideRange for the first value that leaves its range."""
    for one, value in zip(ranges, values, strict=True):
        one.require(value)
