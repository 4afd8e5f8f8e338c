"""Lines around what reaches a level enclose just that."""

from __future__ import annotations

import numpy as np
import pytest

from entremetry.publish.temperature_contour import closed_lines
from entremetry.publish.temperature_outline import smooth_outlines
from entremetry.publish.temperature_path import simplified
from entremetry.shapes import Floats

PLACES = np.linspace(-1.0, 1.0, 81)
X, Y = np.meshgrid(PLACES, PLACES)


def area(outline: Floats) -> float:
    x, y = outline.T
    return float(0.5 * (x @ np.roll(y, -1) - y @ np.roll(x, -1)))


def test_a_disc_is_enclosed_by_its_circle() -> None:
    (line,) = closed_lines(PLACES, PLACES, -np.hypot(X, Y), -0.6)
    assert np.hypot(*line.T) == pytest.approx(np.full(len(line), 0.6), abs=1e-3)
    assert abs(area(line)) == pytest.approx(np.pi * 0.36, rel=2e-3)


def test_a_ring_is_enclosed_by_two_lines_that_run_against_each_other() -> None:
    lines = closed_lines(PLACES, PLACES, -np.abs(np.hypot(X, Y) - 0.5), -0.2)
    assert sorted(abs(area(line)) for line in lines) == pytest.approx(
        [np.pi * 0.09, np.pi * 0.49], rel=5e-3
    )
    assert area(lines[0]) * area(lines[1]) < 0.0


def test_what_reaches_the_level_everywhere_is_the_whole_grid() -> None:
    (line,) = closed_lines(PLACES, PLACES, np.ones_like(X), 0.0)
    assert abs(area(line)) == pytest.approx(4.0, rel=1e-4)


def test_what_reaches_it_nowhere_has_no_line() -> None:
    assert closed_lines(PLACES, PLACES, np.zeros_like(X), 1.0) == ()


def test_two_corners_that_touch_across_a_cell_stay_closed() -> None:
    values = np.array([[1.0, 0.0], [0.0, 1.0]])
    lines = closed_lines(np.array([0.0, 1.0]), np.array([0.0, 1.0]), values, 0.5)
    assert len(lines) == 2


@pytest.mark.parametrize("radius", [0.4, 0.71, 0.9])
def test_stairs_around_a_disc_become_nearly_its_circle(radius: float) -> None:
    step = PLACES[1] - PLACES[0]
    (line,) = smooth_outlines(np.hypot(X, Y) <= radius, PLACES, PLACES)
    assert np.abs(np.hypot(*line.T) - radius).max() < 0.9 * step
    assert abs(area(line)) == pytest.approx(np.pi * radius**2, rel=0.02)


def test_a_box_keeps_its_corners() -> None:
    inside = (np.abs(X) < 0.51) & (np.abs(Y) < 0.31)
    (line,) = smooth_outlines(inside, PLACES, PLACES)
    assert abs(area(line)) == pytest.approx(1.025 * 0.625, rel=1e-6)


def test_a_line_with_few_points_still_follows_the_circle() -> None:
    angles = np.linspace(0.0, 2.0 * np.pi, 400, endpoint=False)
    circle = 100.0 * np.column_stack([np.cos(angles), np.sin(angles)])
    few = simplified(circle, 0.2)
    assert len(few) < 120
    assert abs(area(few)) == pytest.approx(np.pi * 1e4, rel=5e-3)


def test_corners_of_a_line_are_kept_though_points_lie_close_to_them() -> None:
    dense = 100.0 * np.linspace(0.0, 1.0, 300)[:, np.newaxis] ** 3
    one = np.column_stack([dense[:, 0], np.zeros(300)])
    back = np.column_stack([dense[::-1, 0], np.full(300, 50.0)])
    few = simplified(np.concatenate([one, back]))
    assert sorted(map(tuple, few.round(6).tolist())) == [(0, 0), (0, 50), (100, 0), (100, 50)]
