from __future__ import annotations

import numpy as np
import pytest

from entremetry.physics.conduction.body import Body
from entremetry.physics.conduction.outline import Region, arc, outline, rectangle
from entremetry.physics.conduction.run import Course, run
from entremetry.physics.conduction.section_body import plane_body
from entremetry.physics.conduction.stage import Stage
from entremetry.physics.conduction.surroundings import Surroundings
from entremetry.physics.material import Material, material

ZERO = 273.15
POINTS = {"edge": (0.0266, 0.0266), "top": (0.001, 0.038), "bottom": (0.005, 0.002)}
FRIDGE = Surroundings(temperature=277.15, coefficient=6.0, emissivity=0.9)
THAW = Stage(surroundings={"flat": FRIDGE, "round": FRIDGE}, duration=6 * 3600.0)


def food(name: str, density: float, point: float, water: float, k: tuple[float, float]) -> Material:
    def ice(t: np.ndarray) -> np.ndarray:
        return 1.0 - point / np.minimum(t - ZERO, point)

    return material(
        name,
        lambda t: density * (3100 * (t - ZERO) - water * ice(t) * (2130 * (t - ZERO) + 333600)),
        lambda t: k[0] + k[1] * ice(t),
        freezing_point=ZERO + point,
    )


def half_log() -> Body:
    """Half a log of 40 mm radius around a bar of fruit."""
    edge = outline(
        ("flat", [(0.0, 0.0), (0.04, 0.0)]),
        ("round", arc((0.0, 0.0), 0.04, 0.0, np.pi / 2)),
        ("middle", [(0.0, 0.04), (0.0, 0.0)]),
    )
    fruit = food("fruit", 1080.0, -1.8, 0.75, (0.50, 1.20))
    heart = Region(name="fruit", material=fruit, points=rectangle(0.0, 0.008, 0.020, 0.023))
    return plane_body(edge, food("mousse", 600.0, -3.5, 0.534, (0.23, 0.30)), (heart,), 2e-3)


@pytest.mark.parametrize("longest_step", [300.0, 1200.0])
@pytest.mark.parametrize("accuracy", [0.01, 0.04])
def test_a_thawing_log_warms_without_swings_where_its_ice_ends(
    accuracy: float, longest_step: float
) -> None:
    course = Course(accuracy=accuracy, longest_step=longest_step)
    found = run(half_log(), {"body": 255.15}, [THAW], POINTS, course)
    for name in ("warmest", "coldest", "mean", *POINTS):
        assert np.diff(found.curve(name)).min() > -1e-3, name
    assert found.balance_error < 1e-12


@pytest.mark.parametrize("point", POINTS)
def test_long_steps_follow_the_course_of_short_ones_past_the_end_of_the_ice(point: str) -> None:
    courses = (Course(), Course(accuracy=0.01, longest_step=20.0))
    long, short = (run(half_log(), {"body": 255.15}, [THAW], POINTS, c) for c in courses)
    between = np.interp(long.times, short.times, short.curve(point))
    assert np.abs(long.curve(point) - between).max() < 0.1
