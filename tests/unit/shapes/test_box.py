"""Boxes and frames."""

from __future__ import annotations

import math

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.shapes import Box


def test_a_frame_with_round_corners_lacks_them() -> None:
    frame = Box(length=0.3, width=0.2, height=0.04, corner_radius=0.02)
    plan = 0.3 * 0.2 - (4 - math.pi) * 0.02**2
    assert frame.volume == pytest.approx(plan * 0.04)
    around = 2 * (0.3 + 0.2) - 8 * 0.02 + 2 * math.pi * 0.02
    assert frame.wall_area == pytest.approx(plan + around * 0.04)
    assert frame.level_at(plan * 0.01) == pytest.approx(0.01, rel=1e-14)


def test_corners_shrink_down_a_leaning_wall() -> None:
    box = Box(length=0.1, width=0.1, height=0.04, corner_radius=0.01, taper=0.02)
    assert box.area_at(0.0) == pytest.approx(0.06**2)
    assert box.area_at(0.02) == pytest.approx(0.08**2)
    assert box.area_at(0.04) == pytest.approx(0.1**2 - (4 - math.pi) * 0.01**2)
    levels = np.linspace(0.0, 0.04, 4001)
    areas = np.array([box.area_at(float(level)) for level in levels])
    assert box.volume == pytest.approx(float(np.trapezoid(areas, levels)), rel=1e-7)


def test_the_wall_of_a_pyramid_is_four_triangles() -> None:
    box = Box(length=0.1, width=0.1, height=0.04, taper=0.05)
    assert box.volume == pytest.approx(0.1 * 0.1 * 0.04 / 3)
    assert box.wall_area == pytest.approx(4 * 0.1 * math.hypot(0.05, 0.04) / 2)
    assert np.all(np.isfinite(box.surface(0.005)))


def test_clearance_is_to_the_nearest_of_side_corner_and_floor() -> None:
    box = Box(length=0.1, width=0.06, height=0.04, corner_radius=0.02)
    corner = (0.05 - 0.02 + 0.015 / math.sqrt(2), 0.03 - 0.02 + 0.015 / math.sqrt(2), 0.03)
    points = np.array([(0, 0, 0.01), (0.045, 0, 0.03), corner, (0.055, 0, 0.03), (0, 0, -0.003)])
    assert box.clearance(points) == pytest.approx([0.01, 0.005, 0.005, -0.005, -0.003])


def test_clearance_from_a_leaning_wall_is_square_to_it() -> None:
    box = Box(length=0.2, width=0.2, height=0.04, taper=0.03)
    point = np.array([(0.07, 0.0, 0.04)])
    assert box.clearance(point) == pytest.approx([0.03 * 0.04 / 0.05])


def test_the_floor_is_sampled_too() -> None:
    points = Box(length=0.05, width=0.04, height=0.02).surface(0.004)
    floor = points[points[:, 2] == 0.0]
    assert np.any(np.hypot(floor[:, 0], floor[:, 1]) < 0.003)
    assert np.any(points[:, 2] == 0.02)


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ({"corner_radius": 0.031}, "corner radius of the box: found 31 mm; accepted: 0 mm to 30"),
        ({"corner_radius": -0.001}, "corner radius"),
        ({"taper": 0.04}, "taper of the box"),
        ({"taper": math.nan}, "taper of the box"),
        ({"width": 0.0}, "width of the box"),
    ],
)
def test_boxes_that_cannot_be_are_refused(arguments: dict[str, float], said: str) -> None:
    with pytest.raises(OutsideRange, match=said):
        Box(**{"length": 0.1, "width": 0.06, "height": 0.04} | arguments)
