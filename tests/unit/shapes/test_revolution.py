"""Bodies turned from points or from a table."""

from __future__ import annotations

import math

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.shapes import (
    Cylinder,
    Revolution,
    Ring,
    TruncatedCone,
    hemisphere,
    revolution_from_table,
)


def test_a_first_radius_at_the_closed_end_means_a_flat_end() -> None:
    cup = Revolution(points=((0.03, 0.0), (0.04, 0.06)))
    cone = TruncatedCone(diameter=0.08, base_diameter=0.06, height=0.06)
    assert cup.volume == pytest.approx(cone.volume)
    assert cup.wall_area == pytest.approx(cone.wall_area)


def test_points_may_run_from_the_rim_down() -> None:
    cup = Revolution(points=((0.04, 0.06), (0.03, 0.0)))
    assert cup.volume == Revolution(points=((0.03, 0.0), (0.04, 0.06))).volume


def test_a_profile_from_rim_to_rim_is_a_ring() -> None:
    points = ((0.03, 0.04), (0.03, 0.0), (0.09, 0.0), (0.09, 0.04))
    flat = Ring(diameter=0.18, hole_diameter=0.06, height=0.04, cross_section="flat")
    for drawn in (points, points[::-1]):
        ring = Revolution(points=drawn)
        assert ring.volume == pytest.approx(flat.volume)
        assert ring.wall_area == pytest.approx(flat.wall_area)
        assert len(ring.section()) == 2


def test_a_line_along_the_rim_is_the_opening_and_no_wall() -> None:
    drawn = Revolution(points=((0.0, 0.0), (0.03, 0.0), (0.03, 0.05), (0.0, 0.05)))
    assert drawn.wall_area == pytest.approx(Cylinder(diameter=0.06, height=0.05).wall_area)


def test_a_raised_middle_is_left_out_of_the_volume() -> None:
    hump = Revolution(points=((0.0, 0.02), (0.03, 0.0), (0.05, 0.0), (0.05, 0.04)))
    cone = math.pi * 0.03**2 * 0.02 / 3
    assert hump.volume == pytest.approx(math.pi * 0.05**2 * 0.04 - cone)
    assert hump.area_at(0.01) == pytest.approx(math.pi * (0.05**2 - 0.015**2))
    outside = hump.clearance(np.array([(0.0, 0.0, 0.005), (0.0, 0.0, 0.03)]))
    assert outside[0] < 0.0 < outside[1]


def test_an_undercut_is_counted() -> None:
    points = ((0.03, 0.0), (0.03, 0.02), (0.05, 0.02), (0.05, 0.01), (0.06, 0.01), (0.06, 0.04))
    solid = Revolution(points=points)
    pocket = math.pi * (0.06**2 - 0.05**2) * 0.01
    rest = math.pi * (0.03**2 * 0.02 + 0.06**2 * 0.02)
    assert solid.volume == pytest.approx(rest + pocket)
    assert solid.area_at(0.015) == pytest.approx(math.pi * (0.06**2 - 0.05**2 + 0.03**2))


def test_a_fine_table_of_a_dome_approaches_the_dome() -> None:
    dome = hemisphere(0.07)
    rows = [(0.035 * step / 200, 0.0) for step in range(201)]
    rows = [(z, 2 * math.sqrt(max(z * (0.07 - z), 0.0))) for z, _ in rows]
    table = revolution_from_table(rows)
    assert table.volume == pytest.approx(dome.volume, rel=1e-3)
    assert table.volume < dome.volume
    assert table.scaled(2.0).volume == pytest.approx(8 * table.volume)


@pytest.mark.parametrize(
    ("points", "said"),
    [
        (((0.0, 0.0),), "found 1; accepted: 2 to 2000"),
        (((0.03, 0.01), (0.04, 0.05)), "lowest level of the profile: found 10 mm"),
        (((0.03, 0.0), (0.04, -0.05)), "level in the profile: found -50 mm"),
        (((0.03, 0.0), (math.nan, 0.05)), "radius in the profile: found nan"),
        (((-0.03, 0.0), (0.04, 0.05)), "radius in the profile: found -30 mm"),
        (((0.03, 0.01), (0.02, 0.0), (0.04, 0.05)), "first level of the profile: found 10 mm"),
        (((0.0, 0.0), (0.0, 0.05)), "encloses no volume"),
        (((0.03, 0.0), (0.0, 0.02), (0.03, 0.04)), "only at its first or last point"),
        (((0.03, 0.0), (0.06, 0.03), (0.06, 0.01), (0.02, 0.03), (0.02, 0.05)), "cross or touch"),
        (((0.03, 0.0), (0.03, 0.04), (0.03, 0.02), (0.05, 0.05)), "cross or touch"),
        (((0.03, 0.0), (0.05, 0.05), (0.05, 0.01)), "last level of the profile: found 10 mm"),
    ],
)
def test_profiles_that_cannot_be_are_refused(
    points: tuple[tuple[float, float], ...], said: str
) -> None:
    with pytest.raises(OutsideRange, match=said):
        Revolution(points=points)


def test_levels_of_a_table_must_rise() -> None:
    with pytest.raises(OutsideRange, match="level in the table: found 10 mm; .* before, 20 mm"):
        revolution_from_table([(0.0, 0.05), (0.02, 0.06), (0.01, 0.07)])
