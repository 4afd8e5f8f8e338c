"""Half sections: walls, closed outlines, slices."""

from __future__ import annotations

import numpy as np
import pytest

from entremetry.shapes import Box, Cylinder, Log, Ring, Solid, Sphere, hemisphere
from entremetry.timings.half_outline import (
    Lie,
    between,
    closed,
    enclosed,
    half_wall,
    is_ring,
    lie_of,
    mirrored,
)

LOG = Log(length=0.25, width=0.08, height=0.04)


@pytest.mark.parametrize(
    ("solid", "lie"),
    [
        (hemisphere(0.07), Lie.ROUND),
        (LOG, Lie.ALONG_LENGTH),
        (Box(length=0.05, width=0.05, height=0.05), Lie.ROUND),
        (Box(length=0.12, width=0.04, height=0.03), Lie.ALONG_LENGTH),
        (Box(length=0.04, width=0.12, height=0.03), Lie.ALONG_WIDTH),
        (Box(length=0.3, width=0.2, height=0.04), Lie.ALONG_LENGTH),
    ],
)
def test_long_and_flat_boxes_are_cut_across_their_longer_side(solid: Solid, lie: Lie) -> None:
    assert lie_of(solid) is lie


def test_a_cylinder_needs_three_points_only() -> None:
    wall = half_wall(Cylinder(diameter=0.06, height=0.04), Lie.ROUND)
    assert wall == pytest.approx(np.array([[0.0, 0.0], [0.03, 0.0], [0.03, 0.04]]))


def test_a_wall_ends_where_the_filling_does() -> None:
    wall = half_wall(Cylinder(diameter=0.06, height=0.04), Lie.ROUND, top=0.03)
    assert wall[-1] == pytest.approx([0.03, 0.03])


def test_a_half_section_has_the_area_of_half_the_section() -> None:
    assert enclosed(closed(half_wall(LOG, Lie.ALONG_LENGTH))) == pytest.approx(
        np.pi * 0.04**2 / 4.0, rel=1e-4
    )


def test_a_ring_closes_across_its_opening_and_a_sphere_along_its_axis() -> None:
    ring = half_wall(Ring(diameter=0.08, hole_diameter=0.03, height=0.02), Lie.ROUND)
    ball = half_wall(Sphere(diameter=0.05), Lie.ROUND)
    assert is_ring(ring) and len(closed(ring)) == len(ring)
    assert not is_ring(ball) and len(closed(ball)) == len(ball)


@pytest.mark.parametrize("solid", [hemisphere(0.07), LOG, Sphere(diameter=0.07)])
def test_slices_add_up_to_the_whole(solid: Solid) -> None:
    lie = lie_of(solid)
    cut = 0.4 * solid.height
    parts = enclosed(between(solid, 0.0, cut, lie)) + enclosed(
        between(solid, cut, solid.height, lie)
    )
    assert parts == pytest.approx(enclosed(closed(half_wall(solid, lie))), rel=1e-12)


def test_a_mirrored_slice_keeps_its_area_and_hangs_from_its_top() -> None:
    part = between(hemisphere(0.04), 0.0, 0.02, Lie.ROUND)
    turned = mirrored(part, 0.03)
    assert enclosed(turned) == pytest.approx(enclosed(part), rel=1e-12)
    assert turned[:, 1].min() == pytest.approx(0.01)
    assert turned[:, 1].max() == pytest.approx(0.03)


def test_a_box_lying_across_keeps_its_other_side() -> None:
    box = Box(length=0.04, width=0.2, height=0.03, taper=0.005)
    wall = half_wall(box, Lie.ALONG_WIDTH)
    assert wall[0] == pytest.approx([0.015, 0.0])
    assert wall[-1] == pytest.approx([0.02, 0.03])
