"""When a curve passes a temperature."""

from __future__ import annotations

import numpy as np

from entremetry.physics.conduction.history import History


def crossing(history: History, curve: str, level: float, *, falling: bool) -> float | None:
    """When a curve first passes a temperature [s]; None if it begins past it or never does."""
    values, times = history.curve(curve), history.times
    past = values <= level if falling else values >= level
    if past[0] or not past.any():
        return None
    after = int(np.argmax(past))
    before = after - 1
    share = (level - values[before]) / (values[after] - values[before])
    return float(times[before] + share * (times[after] - times[before]))
