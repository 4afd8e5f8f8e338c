"""When a curve passes a temperature."""

from __future__ import annotations

import numpy as np
import pytest

from entremetry.physics.conduction.history import History
from entremetry.timings.crossing import crossing

HISTORY = History(
    times=np.array([0.0, 100.0, 200.0]),
    values=np.array([[290.0, 280.0, 285.0], [280.0, 270.0, 275.0], [270.0, 265.0, 268.0]]),
    heats=np.zeros(3),
    points=(),
    ends=(),
    snapshots=(),
    heat=0.0,
    balance_error=0.0,
    steps=2,
    skin={},
)


@pytest.mark.parametrize(
    ("level", "falling", "time"),
    [
        (285.0, True, 50.0),
        (275.0, True, 150.0),
        (295.0, True, None),
        (260.0, True, None),
        (295.0, False, None),
        (285.0, False, None),
    ],
)
def test_the_first_crossing_lies_between_two_steps(
    level: float, falling: bool, time: float | None
) -> None:
    assert crossing(HISTORY, "warmest", level, falling=falling) == time
