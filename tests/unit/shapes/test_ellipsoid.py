"""Caps of an ellipsoid."""

from __future__ import annotations

import math

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.shapes import EllipsoidCap, cap_of_ellipsoid, hemisphere
from entremetry.shapes.ellipsoid_area import cap_area
from entremetry.shapes.ellipsoid_distance import nearest_on_ellipsoid


def test_a_round_cap_tells_what_a_hemisphere_tells() -> None:
    cap, dome = EllipsoidCap(length=0.07, width=0.07, height=0.035), hemisphere(0.07)
    points = np.random.default_rng(5).uniform(-0.04, 0.05, (500, 3))
    assert cap.clearance(points) == pytest.approx(dome.clearance(points), abs=1e-12)
    assert cap.volume == pytest.approx(dome.volume)
    assert cap.wall_area == pytest.approx(dome.wall_area, rel=1e-12)
    assert cap.volume_below(0.01) == pytest.approx(dome.volume_below(0.01))


def test_a_flatter_cap_opens_at_the_given_size() -> None:
    cap = EllipsoidCap(length=0.1, width=0.06, height=0.02, half_depth=0.03)
    (rim,) = cap.plan(0.02)
    assert np.ptp(rim, axis=0) == pytest.approx([0.1, 0.06])
    (section,) = cap.section()
    assert np.ptp(section, axis=0) == pytest.approx([0.1, 0.02])
    assert cap.plan(0.0) == ()


def test_the_nearest_point_of_an_ellipse_is_square_to_it() -> None:
    points = np.random.default_rng(6).uniform(-0.1, 0.1, (200, 2))
    nearest = nearest_on_ellipsoid(points, (0.08, 0.03))
    assert np.sum((nearest / (0.08, 0.03)) ** 2, axis=1) == pytest.approx(1.0)
    normal, away = nearest / np.square((0.08, 0.03)), points - nearest
    turn = normal[:, 0] * away[:, 1] - normal[:, 1] * away[:, 0]
    size = np.linalg.norm(normal, axis=1) * np.linalg.norm(away, axis=1)
    assert np.abs(turn / size).max() < 1e-6
    around = np.linspace(0, 2 * math.pi, 20001)
    ellipse = np.column_stack([0.08 * np.cos(around), 0.03 * np.sin(around)])
    sampled = np.linalg.norm(points[:20, None] - ellipse, axis=2).min(axis=1)
    assert np.linalg.norm(away[:20], axis=1) == pytest.approx(sampled, abs=1e-6)


def test_from_the_middle_the_nearest_point_lies_on_the_shortest_axis() -> None:
    nearest = nearest_on_ellipsoid(np.zeros((1, 3)), (0.08, 0.03, 0.05))
    assert np.linalg.norm(nearest) == pytest.approx(0.03, rel=1e-9)


def test_the_area_of_a_low_cap_agrees_with_a_fine_mesh() -> None:
    a, b, c, height = 0.08, 0.05, 0.04, 0.025
    t, p = np.meshgrid(
        np.linspace(0, math.acos(1 - height / c), 801), np.linspace(0, 2 * math.pi, 1601)
    )
    x, y, z = a * np.sin(t) * np.cos(p), b * np.sin(t) * np.sin(p), -c * np.cos(t)
    grid = np.stack([x, y, z], axis=-1)
    u, v = grid[1:, 1:] - grid[:-1, :-1], grid[1:, :-1] - grid[:-1, 1:]
    meshed = 0.5 * np.linalg.norm(np.cross(u, v), axis=2).sum()
    assert cap_area(a, b, c, height) == pytest.approx(meshed, rel=1e-5)


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ({"half_depth": 0.019}, "upright semi-axis: found 19 mm; accepted: 20 mm"),
        ({"width": -0.01}, "width of the ellipsoid cap"),
        ({"height": math.inf}, "height of the ellipsoid cap"),
    ],
)
def test_caps_that_cannot_be_are_refused(arguments: dict[str, float], said: str) -> None:
    with pytest.raises(OutsideRange, match=said):
        EllipsoidCap(**{"length": 0.1, "width": 0.06, "height": 0.02} | arguments)


def test_a_cap_higher_than_its_half_ellipsoid_is_refused() -> None:
    with pytest.raises(OutsideRange, match="height of the ellipsoid cap: found 45 mm"):
        cap_of_ellipsoid(0.08, 0.05, 0.04, 0.045)
