"""Temperatures of all watched points at even times, for whoever reads numbers."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from entremetry.publish.temperature_scale import time_step
from entremetry.publish.temperature_wording import FREEZING_POINT, roughly, spoken
from entremetry.publish.typography import MINUS, NO_BREAK
from entremetry.timings.step_temperatures import Curve, StepTemperatures
from entremetry.words import decimal

HALF_HOUR = 1800.0
MOST_ROWS = 24
FEWEST_ROWS = 6
UNKNOWN = "–"


@dataclass(frozen=True, slots=True, kw_only=True)
class TableRow:
    """One moment: the time in words, each point's temperature, and whether the step is done."""

    time: str
    cells: tuple[str, ...]
    done: bool


def table(result: StepTemperatures) -> tuple[TableRow, ...]:
    """Rows at each half hour, closer or wider where that makes too few or too many, and the end."""
    if not result.curves:
        return ()
    end = max(float(curve.times[-1]) for curve in result.curves)
    return tuple(_row(result, time) for time in _moments(end, result.time))


def _row(result: StepTemperatures, time: float) -> TableRow:
    done = time == result.time
    return TableRow(
        time=roughly(time) if done else spoken(time),
        cells=tuple(_at(curve, time) for curve in result.curves),
        done=done,
    )


def _moments(end: float, done: float | None) -> list[float]:
    step = HALF_HOUR
    if end < FEWEST_ROWS * HALF_HOUR:
        step = time_step(end, 2 * FEWEST_ROWS)
    elif end > MOST_ROWS * HALF_HOUR:
        step = time_step(end, MOST_ROWS)
    times = {step * k for k in range(int(end / step + 1e-9) + 1)}
    return sorted(times | ({done} if done is not None and done <= end else set()))


def _at(curve: Curve, time: float) -> str:
    """Temperature of a point at a time to a tenth of a degree; a dash where none is known."""
    if not curve.times[0] <= time <= curve.times[-1]:
        return UNKNOWN
    value = float(np.interp(time, curve.times, curve.temperatures)) - FREEZING_POINT
    if not math.isfinite(value):
        return UNKNOWN
    text = f"{value:.1f}".replace("-0.0", "0.0")
    return f"{decimal(text)}{NO_BREAK}°C".replace("-", MINUS)
