"""Caps and spheres: what they accept, and what they tell."""

from __future__ import annotations

import math

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.shapes import Sphere, SphericalCap, cap_of_sphere, hemisphere


def test_a_hemisphere_is_half_as_high_as_wide() -> None:
    dome = hemisphere(0.07)
    assert (dome.height, dome.length, dome.width) == (0.035, 0.07, 0.07)


@pytest.mark.parametrize("bad", [0.0, -0.07, math.nan, math.inf, 11.0])
def test_a_diameter_that_cannot_be_is_refused_in_millimetres(bad: float) -> None:
    with pytest.raises(OutsideRange, match=r"diameter of the cap: found .* mm; accepted"):
        SphericalCap(diameter=bad, height=0.01)


def test_a_cap_higher_than_its_sphere_allows_is_refused() -> None:
    with pytest.raises(OutsideRange, match="found 36 mm; accepted: at most 35 mm"):
        SphericalCap(diameter=0.07, height=0.036)
    with pytest.raises(OutsideRange, match="less than the sphere, 70 mm"):
        cap_of_sphere(0.07, 0.07)


def test_more_than_half_a_sphere_bulges_beyond_its_opening() -> None:
    cap = cap_of_sphere(0.08, 0.06)
    assert cap.past_half
    assert cap.length == pytest.approx(0.08)
    assert cap.diameter == pytest.approx(2 * math.sqrt(0.04**2 - 0.02**2))
    assert cap.area_at(0.04) == pytest.approx(math.pi * 0.04**2)


def test_half_a_sphere_is_not_past_half() -> None:
    with pytest.raises(OutsideRange, match="more than 35 mm"):
        SphericalCap(diameter=0.07, height=0.035, past_half=True)


def test_clearance_in_a_dome_is_radius_less_distance_from_its_middle() -> None:
    points = np.array([(0, 0, 0.035), (0, 0, 0.01), (0.03, 0, 0.035), (0, 0, -0.005)])
    expected = [0.035, 0.01, 0.005, -0.005]
    assert hemisphere(0.07).clearance(points) == pytest.approx(expected)


def test_above_the_rim_the_wall_goes_straight_up() -> None:
    points = np.array([(0.03, 0, 0.05), (0.04, 0, 0.05)])
    assert hemisphere(0.07).clearance(points) == pytest.approx([0.005, -0.005])


def test_small_fills_keep_their_digits() -> None:
    dome = hemisphere(0.07)
    for level in (1e-9, 1e-7, 1e-5):
        exact = math.pi * level**2 * (0.035 - level / 3)
        assert dome.volume_below(level) == pytest.approx(exact, rel=1e-12)
        assert dome.level_at(exact) == pytest.approx(level, rel=1e-12)


def test_a_sphere_is_closed_at_its_top() -> None:
    ball = Sphere(diameter=0.05)
    assert ball.area_at(0.05) == pytest.approx(0.0, abs=1e-15)
    assert ball.wall_area == pytest.approx(4 * math.pi * 0.025**2)
    assert ball.clearance(np.array([(0.0, 0.0, 0.06)])) == pytest.approx([-0.01])
    assert ball.level_at(ball.volume / 2) == pytest.approx(0.025)


def test_more_than_the_whole_cannot_be_filled_in() -> None:
    with pytest.raises(OutsideRange, match=r"found 90 ml; accepted: 0 to 89\.79"):
        hemisphere(0.07).level_at(90e-6)
    with pytest.raises(OutsideRange, match="volume to fill"):
        hemisphere(0.07).level_at(-1e-9)


def test_a_level_that_is_no_number_is_refused() -> None:
    with pytest.raises(OutsideRange, match="level: found not a number"):
        hemisphere(0.07).volume_below(math.nan)


def test_a_factor_must_be_above_zero() -> None:
    for solid in (hemisphere(0.07), Sphere(diameter=0.05)):
        with pytest.raises(OutsideRange, match="scaling factor"):
            solid.scaled(0.0)


def test_outlines_stay_within_a_twentieth_of_a_millimetre_of_the_curve() -> None:
    dome = hemisphere(0.3)
    (section,) = dome.section()
    middles = (section + np.roll(section, -1, axis=0)) / 2
    curved = middles[middles[:, 1] < 0.15 - 1e-9]
    short = 0.15 - np.hypot(curved[:, 0], curved[:, 1] - 0.15)
    assert short.min() >= 0.0 and short.max() < 5e-5
    (rim,) = dome.plan(0.15)
    middles = (rim + np.roll(rim, -1, axis=0)) / 2
    assert 0.15 - np.linalg.norm(middles, axis=1).min() < 5e-5


def test_surface_points_are_no_further_apart_than_asked() -> None:
    dome, spacing = hemisphere(0.04), 0.002
    points = dome.surface(spacing)
    away = np.linalg.norm(points[:, None] - points, axis=2)
    away[np.diag_indices(len(points))] = np.inf
    assert away.min(axis=1).max() <= spacing * (1 + 1e-9)
