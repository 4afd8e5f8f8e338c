"""Cylinders and cones."""

from __future__ import annotations

import math

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.shapes import Cylinder, TruncatedCone


def test_a_cylinder_fills_evenly() -> None:
    ring = Cylinder(diameter=0.18, height=0.05)
    assert ring.level_at(ring.volume / 4) == pytest.approx(0.0125, rel=1e-14)
    assert ring.area_at(0.0) == pytest.approx(math.pi * 0.09**2)
    assert ring.area_at(0.05) == pytest.approx(math.pi * 0.09**2)


def test_a_cylinder_is_cleared_from_floor_and_side() -> None:
    points = np.array([(0, 0, 0.01), (0.085, 0, 0.03), (0.1, 0, 0.02), (0.093, 0, -0.004)])
    expected = [0.01, 0.005, -0.01, -0.005]
    assert Cylinder(diameter=0.18, height=0.05).clearance(points) == pytest.approx(expected)


def test_a_cone_with_its_tip_down_is_a_third_of_its_cylinder() -> None:
    cone = TruncatedCone(diameter=0.06, base_diameter=0.0, height=0.09)
    assert cone.volume == pytest.approx(math.pi * 0.03**2 * 0.09 / 3)
    assert cone.level_at(cone.volume / 8) == pytest.approx(0.045, rel=1e-12)
    assert cone.wall_area == pytest.approx(math.pi * 0.03 * math.hypot(0.03, 0.09))


def test_a_cone_may_narrow_towards_its_rim() -> None:
    cone = TruncatedCone(diameter=0.06, base_diameter=0.1, height=0.05)
    assert cone.length == pytest.approx(0.1)
    outside = cone.clearance(np.array([(0.045, 0.0, 0.06)]))
    assert outside == pytest.approx([-0.015])


@pytest.mark.parametrize("bad", [-0.01, math.nan])
def test_a_base_that_cannot_be_is_refused(bad: float) -> None:
    with pytest.raises(OutsideRange, match="closed end"):
        TruncatedCone(diameter=0.06, base_diameter=bad, height=0.05)
