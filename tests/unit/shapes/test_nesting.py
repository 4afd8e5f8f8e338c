"""Inserts in cavities."""

from __future__ import annotations

import math

import numpy as np
import pytest

from entremetry.shapes import (
    Box,
    Cylinder,
    Log,
    Ring,
    Sphere,
    TruncatedCone,
    gap_between,
    half_torus,
    hemisphere,
    placed_section,
    thinnest_wall,
    volume_within,
)

RING = Cylinder(diameter=0.18, height=0.05)


def test_an_insert_in_a_ring_is_nearest_to_side_or_closed_end() -> None:
    insert = Cylinder(diameter=0.16, height=0.015)
    side = thinnest_wall(RING, insert, level=0.02)
    assert (side.thinnest, side.towards) == (pytest.approx(0.01), "side")
    below = thinnest_wall(RING, insert, level=0.006)
    assert (below.thinnest, below.towards) == (pytest.approx(0.006), "closed end")
    assert below.at[2] == pytest.approx(0.006)


def test_an_insert_off_the_middle_has_a_thinner_side() -> None:
    insert = Cylinder(diameter=0.14, height=0.015)
    wall = thinnest_wall(RING, insert, level=0.02, offset=(0.003, 0.004))
    assert wall.thinnest == pytest.approx(0.02 - 0.005, abs=2e-6)
    assert math.atan2(wall.at[1], wall.at[0]) == pytest.approx(math.atan2(4, 3), abs=0.05)


def test_an_insert_too_wide_sticks_into_the_wall() -> None:
    wall = thinnest_wall(RING, Cylinder(diameter=0.2, height=0.01), level=0.02)
    assert wall.thinnest == pytest.approx(-0.01)


def test_an_insert_that_stands_proud_is_no_error_but_told() -> None:
    wall = thinnest_wall(hemisphere(0.07), hemisphere(0.06), level=0.02)
    assert wall.towards == "rim"
    assert wall.thinnest == pytest.approx(0.005)


def test_an_insert_turned_over_has_its_flat_side_below() -> None:
    dome, insert = hemisphere(0.08), hemisphere(0.04)
    upright = thinnest_wall(dome, insert, level=0.012)
    turned = thinnest_wall(dome, insert, level=0.012, turned=True)
    assert upright.thinnest == pytest.approx(0.012)
    # corner of the flat side: 20 mm from the axis, 28 mm below the middle of the dome
    assert turned.thinnest == pytest.approx(0.04 - math.hypot(0.02, 0.028))


def test_a_ring_insert_in_a_savarin_is_measured_on_both_sides() -> None:
    insert = Ring(diameter=0.14, hole_diameter=0.1, height=0.01, cross_section="flat")
    wall = thinnest_wall(half_torus(0.18, 0.06), insert, level=0.02)
    assert wall.thinnest == pytest.approx(0.03 - math.hypot(0.01, 0.01))
    shifted = thinnest_wall(half_torus(0.18, 0.06), insert, level=0.02, offset=(0.004, 0.0))
    assert shifted.thinnest == pytest.approx(0.03 - math.hypot(0.014, 0.01), abs=1e-6)


def test_a_log_insert_counts_the_end_walls() -> None:
    wall = thinnest_wall(
        Log(length=0.25, width=0.08, height=0.06),
        Log(length=0.24, width=0.04, height=0.02),
        level=0.03,
    )
    assert (wall.thinnest, wall.towards) == (pytest.approx(0.005), "side")
    assert abs(wall.at[0]) == pytest.approx(0.12)


def test_a_coarser_spacing_gives_a_wall_at_most_as_much_thicker() -> None:
    dome, insert = hemisphere(0.07), TruncatedCone(diameter=0.04, base_diameter=0.03, height=0.01)
    exact = 0.035 - math.hypot(0.015 + 0.004, 0.035 - 0.012)
    for spacing in (0.004, 0.001, 0.0002):
        wall = thinnest_wall(dome, insert, level=0.012, offset=(0.004, 0.0), spacing=spacing)
        assert exact - 1e-12 <= wall.thinnest <= exact + spacing


def test_gaps_between_balls_are_those_of_their_middles() -> None:
    ball = Sphere(diameter=0.04)
    apart = gap_between(ball, 0.0, (0.0, 0.0), ball, 0.03, (0.04, 0.0))
    assert apart == pytest.approx(0.05 - 0.04, abs=1e-6)
    over = gap_between(ball, 0.0, (0.0, 0.0), ball, 0.0, (0.03, 0.0))
    assert over == pytest.approx(-0.01, abs=1e-6)


def test_an_insert_within_another_overlaps_it() -> None:
    # half-way up the ring a point lies 25 mm from either face, nearer than from the side
    small = Cylinder(diameter=0.02, height=0.01)
    gap = gap_between(RING, 0.0, (0.0, 0.0), small, 0.02, (0.0, 0.0), spacing=0.005)
    assert gap == pytest.approx(-0.025)


def test_stacked_inserts_are_as_far_as_their_faces() -> None:
    upper = Box(length=0.1, width=0.05, height=0.01)
    gap = gap_between(RING, 0.0, (0.0, 0.0), upper, 0.053, (0.0, 0.0))
    assert gap == pytest.approx(0.003)


def test_inserts_that_pass_by_corner_to_corner_are_apart_by_the_corner() -> None:
    one, other = Cylinder(diameter=0.04, height=0.01), Cylinder(diameter=0.04, height=0.01)
    gap = gap_between(one, 0.0, (0.0, 0.0), other, 0.014, (0.043, 0.0))
    assert gap == pytest.approx(0.005, abs=1e-6)


def test_turning_both_inserts_counts() -> None:
    dome = hemisphere(0.04)
    flat_to_flat = gap_between(dome, 0.0, (0.0, 0.0), dome, 0.025, (0.0, 0.0), turned_b=True)
    assert flat_to_flat == pytest.approx(0.005)


def test_a_placed_section_is_moved_and_turned() -> None:
    (upright,) = placed_section(hemisphere(0.04), 0.01, (0.005, 0.0))
    assert upright.min(axis=0) == pytest.approx([-0.015, 0.01])
    assert upright.max(axis=0) == pytest.approx([0.025, 0.03])
    (turned,) = placed_section(hemisphere(0.04), 0.01, turned=True)
    widest = turned[np.argmax(turned[:, 0])]
    assert widest == pytest.approx([0.02, 0.01])


def test_volume_within_two_levels_follows_the_insert() -> None:
    dome = hemisphere(0.04)
    lower = dome.volume_below(0.005)
    assert volume_within(dome, 0.01, False, 0.0, 0.015) == pytest.approx(lower)
    assert volume_within(dome, 0.01, True, 0.025, 1.0) == pytest.approx(lower)
    assert volume_within(dome, 0.01, False, 0.0, 0.01) == 0.0
    assert volume_within(dome, 0.01, True, 0.0, 1.0) == pytest.approx(dome.volume)
