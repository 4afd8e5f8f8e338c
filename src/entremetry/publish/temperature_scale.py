"""Round numbers on the axes of temperature and of time."""

from __future__ import annotations

import math

from entremetry.publish.temperature_wording import FREEZING_POINT, spoken

DEGREES = (1.0, 2.0, 5.0, 10.0, 20.0, 25.0, 50.0, 100.0)
SECONDS = (1.0, 2.0, 5.0, 10.0, 15.0, 30.0)
MINUTES = (1.0, 2.0, 5.0, 10.0, 15.0, 20.0, 30.0)
HOURS = (1.0, 2.0, 3.0, 4.0, 6.0, 12.0, 24.0, 48.0, 96.0, 168.0)
PERIODS = (*SECONDS, *(60.0 * m for m in MINUTES), *(3600.0 * h for h in HOURS))


def degree_step(low: float, high: float, most: int) -> float:
    """Round step in degrees that gives at most so many steps between two temperatures."""
    return next((step for step in DEGREES if (high - low) / step <= most), DEGREES[-1])


def round_temperatures(low: float, high: float, most: int) -> tuple[float, ...]:
    """Round temperatures [K] from the last one not above `low` to the first not below `high`."""
    step = degree_step(low, high, most)
    first = math.floor((low - FREEZING_POINT) / step + 1e-9)
    last = max(math.ceil((high - FREEZING_POINT) / step - 1e-9), first + 1)
    return tuple(FREEZING_POINT + step * k for k in range(first, last + 1))


def time_step(end: float, most: int) -> float:
    """Round period [s] that fits at most so many times."""
    return next((step for step in PERIODS if end / step <= most), PERIODS[-1])


def round_times(end: float, most: int) -> tuple[float, ...]:
    """Round times [s] from the start on, none after `end`."""
    step = time_step(end, most)
    return tuple(step * k for k in range(int(end / step + 1e-9) + 1))


def time_label(time: float) -> str:
    """A round time as it stands under an axis."""
    return "0" if time == 0.0 else spoken(time)
