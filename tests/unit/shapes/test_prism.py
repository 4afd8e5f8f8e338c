"""Upright walls over polygons."""

from __future__ import annotations

import math

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.shapes import Box, Prism, regular_prism

FRAME = ((0.0, 0.0), (0.08, 0.0), (0.08, 0.06), (0.0, 0.06))
HOLE = ((0.03, 0.02), (0.05, 0.02), (0.05, 0.04), (0.03, 0.04))


def test_a_prism_over_a_rectangle_tells_what_a_box_tells() -> None:
    prism, box = Prism(outline=FRAME, height=0.03), Box(length=0.08, width=0.06, height=0.03)
    points = np.random.default_rng(7).uniform(-0.05, 0.06, (400, 3))
    assert prism.clearance(points) == pytest.approx(box.clearance(points), abs=1e-15)
    assert (prism.length, prism.width) == pytest.approx((0.08, 0.06))
    assert prism.volume == pytest.approx(box.volume)
    assert prism.wall_area == pytest.approx(box.wall_area)
    assert prism.section()[0] == pytest.approx(box.section()[0])


def test_a_hole_takes_volume_and_adds_wall() -> None:
    prism = Prism(outline=FRAME, holes=(HOLE,), height=0.03)
    assert prism.volume == pytest.approx((0.08 * 0.06 - 0.02 * 0.02) * 0.03)
    assert prism.wall_area == pytest.approx(0.0044 + 0.03 * (0.28 + 0.08))
    assert prism.level_at(0.0044 * 0.01) == pytest.approx(0.01)
    inside_hole, beside = prism.clearance(np.array([(0.0, 0.0, 0.01), (0.025, 0.0, 0.01)]))
    assert (inside_hole, beside) == pytest.approx((-0.01, 0.01))
    assert len(prism.section()) == 2 and len(prism.plan(0.01)) == 2


def test_a_tall_outline_is_turned_to_lie_along_x() -> None:
    prism = Prism(outline=tuple((y, x) for x, y in FRAME), height=0.03)
    assert (prism.length, prism.width) == pytest.approx((0.08, 0.06))


def test_a_regular_prism_approaches_a_cylinder() -> None:
    sides = 720
    prism = regular_prism(sides, 2 * 0.03 * math.sin(math.pi / sides), 0.04)
    assert prism.volume == pytest.approx(math.pi * 0.03**2 * 0.04, rel=2e-5)


@pytest.mark.parametrize(
    ("outline", "holes", "said"),
    [
        (FRAME[:2], (), "found 2 points; accepted: 3 or more"),
        ((FRAME[0], FRAME[2], FRAME[1], FRAME[3]), (), "lines 1 and 3 cross or touch"),
        ((*FRAME, FRAME[-1]), (), "a point is repeated"),
        (((0.0, 0.0), (0.08, 0.0), (0.04, 0.0)), (), "width of the outline: found 0 mm"),
        (((0.0, 0.0), (0.08, math.nan), (0.0, 0.06)), (), "a point that is not a number"),
        (FRAME, (tuple((x + 1, y) for x, y in HOLE),), "a hole lies outside"),
        (FRAME, (tuple((x + 0.03, y) for x, y in HOLE),), "cross or touch"),
        (
            FRAME,
            (HOLE, tuple((x / 2 + 0.02, y / 2 + 0.015) for x, y in HOLE)),
            "a hole lies in a hole",
        ),
        (((0.0, 0.0), (0.08, 0.0), (0.02, 0.0), (0.02, 0.06)), (), "cross or touch"),
    ],
)
def test_outlines_that_cannot_be_are_refused(
    outline: tuple[tuple[float, float], ...],
    holes: tuple[tuple[tuple[float, float], ...], ...],
    said: str,
) -> None:
    with pytest.raises(OutsideRange, match=said):
        Prism(outline=outline, holes=holes, height=0.03)


def test_an_outline_with_too_many_points_is_refused() -> None:
    with pytest.raises(OutsideRange, match="found 5000; accepted: up to 4000"):
        regular_prism(5000, 0.0001, 0.03)
