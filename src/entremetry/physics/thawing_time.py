"""Thawing time by a closed formula; else as the freezing times."""

from __future__ import annotations

from entremetry.errors import OutsideRange
from entremetry.physics.freezing_time import (
    DIMENSIONS,
    ZERO,
    FreezingFood,
    biot_number,
    require_all,
)
from entremetry.sources.range import Range

THAWING = (
    Range("Biot number", 0.6, 57.3, "-", "cleland_1986"),
    Range("Stefan number", 0.085, 0.768, "-", "cleland_1986"),
    Range("Plank number", 0.065, 0.272, "-", "cleland_1986"),
)


def cleland_thawing_time(
    dimensions: float,
    half: float,
    coefficient: float,
    food: FreezingFood,
    *,
    start: float,
    air: float,
) -> float:
    """Time until the centre has come up to 0 °C; else as `pham_time`.

    Raises
    ------
    OutsideRange
        Outside Biot 0.6 to 57.3, Stefan 0.085 to 0.768, Plank 0.065 to 0.272, or if the start is
        not below the freezing point and the air not above 0 °C.

    Notes
    -----
    Within 10 % of 104 measured runs. The second bracket is halved: without that it is 38 % long.

    References
    ----------
    cleland_1986; the ranges are from_memory.
    """
    if not start < food.freezing_point <= ZERO < air:
        raise OutsideRange(f"nothing that begins at {start} K thaws to 0 °C in {air} K")
    DIMENSIONS.require(dimensions)
    heat, k = food.heat_to_ten, food.warm_conductivity
    biot = biot_number(half, coefficient, k)
    ste = food.warm_heat * (air - food.freezing_point) / heat
    pk = food.cold_heat * (food.freezing_point - start) / heat
    require_all(THAWING, biot, ste, pk)
    first = 0.7754 + 2.2828 * ste * pk
    second = 0.5 * (0.4271 + 2.1220 * ste - 1.4847 * ste**2)
    return half**2 * food.warm_heat / (dimensions * k * ste) * (first / biot + second)
