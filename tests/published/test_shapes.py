"""Solids, sections and cuttings against closed forms, Pappus, meshes and known packings."""

from __future__ import annotations

import csv
import math
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
import trimesh

from entremetry.shapes import (
    Box,
    Cylinder,
    EllipsoidCap,
    Log,
    Revolution,
    Ring,
    Solid,
    Sphere,
    TruncatedCone,
    cap_of_ellipsoid,
    cap_of_sphere,
    discs_in_rectangle,
    half_torus,
    hemisphere,
    mesh_from_stl,
    regular_prism,
    thinnest_wall,
)

HERE = Path(__file__).parent


def rows(name: str) -> list[dict[str, str]]:
    with (HERE / name).open(newline="") as file:
        return list(csv.DictReader(file))


def segment_log() -> Solid:
    half = math.sqrt(2 * 0.04 * 0.03 - 0.03**2)
    return Log(length=0.25, width=2 * half, height=0.03, cross_section="round-topped")


SOLIDS: dict[str, Callable[[], Solid]] = {
    "spherical cap": lambda: cap_of_sphere(0.16, 0.03),
    "hemisphere": lambda: hemisphere(0.16),
    "cone frustum": lambda: TruncatedCone(diameter=0.16, base_diameter=0.12, height=0.05),
    "square frustum": lambda: Box(length=0.1, width=0.1, height=0.04, taper=0.01),
    "cylinder": lambda: Cylinder(diameter=0.18, height=0.05),
    "half torus": lambda: half_torus(0.16, 0.08),
    "ellipsoid cap": lambda: cap_of_ellipsoid(0.08, 0.05, 0.04, 0.025),
    "half ellipsoid": lambda: EllipsoidCap(length=0.16, width=0.1, height=0.04),
    "half cylinder": lambda: Log(length=0.25, width=0.08, height=0.04),
    "cylinder segment": segment_log,
    "hexagonal prism": lambda: regular_prism(6, 0.05, 0.04),
    "annulus": lambda: Ring(diameter=0.12, hole_diameter=0.08, height=0.03, cross_section="flat"),
}


@pytest.mark.parametrize("row", rows("our_own_solids.csv"), ids=lambda row: row["solid"])
def test_volumes_match_the_closed_forms(row: dict[str, str]) -> None:
    volume = SOLIDS[row["solid"]]().volume * 1e9
    assert volume == pytest.approx(float(row["volume_mm3"]), abs=0.0005000001)


def test_every_row_of_the_table_has_its_solid() -> None:
    assert {row["solid"] for row in rows("our_own_solids.csv")} == set(SOLIDS)


def test_a_whole_torus_is_twice_its_half() -> None:
    # 2 pi2 R r2 with R 60, r 20
    assert 2 * half_torus(0.16, 0.08).volume * 1e9 == pytest.approx(473741.011, abs=0.001)


def test_pappus_gives_the_cone_from_a_turned_triangle() -> None:
    # triangle (0,0) (3,0) (0,4) about its upright side: 12 pi
    cone = Revolution(points=((0.0, 0.0), (0.03, 0.04)))
    assert cone.volume * 1e6 == pytest.approx(12 * math.pi, rel=1e-13)


@pytest.mark.parametrize(("middle", "tube"), [(0.06, 0.02), (0.05, 0.03), (0.09, 0.005)])
def test_pappus_gives_volume_and_wall_of_a_half_torus(middle: float, tube: float) -> None:
    ring = half_torus(2 * (middle + tube), 2 * (middle - tube))
    assert ring.volume == pytest.approx(2 * math.pi * middle * math.pi * tube**2 / 2, rel=1e-13)
    assert ring.wall_area == pytest.approx(2 * math.pi * middle * math.pi * tube, rel=1e-13)


def test_wall_areas_match_the_closed_forms() -> None:
    assert hemisphere(0.07).wall_area == pytest.approx(2 * math.pi * 0.035**2, rel=1e-13)
    assert cap_of_sphere(0.16, 0.03).wall_area == pytest.approx(
        2 * math.pi * 0.08 * 0.03, rel=1e-13
    )
    assert Sphere(diameter=0.07).wall_area == pytest.approx(4 * math.pi * 0.035**2, rel=1e-13)
    cone = TruncatedCone(diameter=0.16, base_diameter=0.12, height=0.05)
    side = math.pi * (0.08 + 0.06) * math.hypot(0.02, 0.05)
    assert cone.wall_area == pytest.approx(side + math.pi * 0.06**2, rel=1e-13)


@pytest.mark.parametrize(("a", "c"), [(0.05, 0.01), (0.05, 0.04), (0.1, 0.01)])
def test_half_an_oblate_spheroid_has_its_known_area(a: float, c: float) -> None:
    e = math.sqrt(1 - (c / a) ** 2)
    half = math.pi * a**2 * (1 + (1 - e**2) / e * math.atanh(e))
    cap = EllipsoidCap(length=2 * a, width=2 * a, height=c)
    assert cap.wall_area == pytest.approx(half, rel=1e-9)


@pytest.mark.parametrize(("a", "c"), [(0.05, 0.01), (0.05, 0.04), (0.1, 0.01)])
def test_half_a_prolate_spheroid_has_its_known_area(a: float, c: float) -> None:
    e = math.sqrt(1 - (c / a) ** 2)
    half = math.pi * c**2 * (1 + a / (c * e) * math.asin(e))
    cap = EllipsoidCap(length=2 * a, width=2 * c, height=c)
    assert cap.wall_area == pytest.approx(half, rel=1e-9)


def dome_mesh(diameter: float, sides: int, steps: int) -> bytes:
    """STL in mm of a half-sphere, flat face up, that trimesh turned from its profile."""
    angles = np.linspace(0, math.pi / 2, steps + 1)
    radius = diameter * 500
    profile = np.column_stack([radius * np.sin(angles), radius * (1 - np.cos(angles))])
    mesh = trimesh.creation.revolve(np.vstack([profile, [0, radius]]), sections=sides)
    content = mesh.export(file_type="stl")
    assert isinstance(content, bytes)
    return content


@pytest.mark.parametrize("sides", [32, 64, 128])
def test_a_meshed_cylinder_is_low_by_the_known_factor(sides: int) -> None:
    # (N / 2 pi) sin(2 pi / N), printed to six digits
    printed = {32: 0.993587, 64: 0.998394, 128: 0.999598}
    profile = np.array([(0, 0), (40, 0), (40, 50), (0, 50)])
    mesh = trimesh.creation.revolve(profile, sections=sides)
    solid = mesh_from_stl(mesh.export(file_type="stl"))
    exact = Cylinder(diameter=0.08, height=0.05)
    assert solid.volume / exact.volume == pytest.approx(printed[sides], abs=6e-7)


def test_a_meshed_torus_is_low_by_the_product_of_both_factors() -> None:
    mesh = trimesh.creation.torus(60, 20, major_sections=64, minor_sections=32)
    solid = mesh_from_stl(mesh.export(file_type="stl"))
    assert solid.volume * 1e9 / 473741.011 == pytest.approx(0.991992, abs=6e-7)


def test_a_meshed_hemisphere_approaches_the_exact_one_by_the_square_of_its_sides() -> None:
    exact = hemisphere(0.07)
    missing = []
    for sides in (32, 64, 128):
        solid = mesh_from_stl(dome_mesh(0.07, sides, sides // 4))
        missing.append(1 - solid.volume / exact.volume)
    orders = [math.log2(a / b) for a, b in zip(missing, missing[1:], strict=False)]
    assert missing[-1] < 0.002
    assert orders == pytest.approx([2.0, 2.0], abs=0.02)


def test_a_meshed_hemisphere_tells_what_the_exact_one_tells() -> None:
    exact, solid = hemisphere(0.07), mesh_from_stl(dome_mesh(0.07, 128, 64))
    assert solid.wall_area == pytest.approx(exact.wall_area, rel=1e-3)
    for level in (0.005, 0.02, 0.03):
        assert solid.volume_below(level) == pytest.approx(exact.volume_below(level), rel=2e-3)
        assert solid.area_at(level) == pytest.approx(exact.area_at(level), rel=2e-3)
    points = np.random.default_rng(3).uniform(-0.04, 0.05, (2000, 3))
    assert solid.clearance(points) == pytest.approx(exact.clearance(points), abs=3e-5)


PACKINGS = rows("friedman_packing_center_squares.csv")
LAST_DIGIT = 1e-9
IN_ROWS = (1, 2, 4, 5, 6, 9, 12, 16, 18, 20, 25, 27, 30)


@pytest.mark.parametrize("row", PACKINGS, ids=lambda row: row["circles"])
def test_no_cutting_beats_the_best_known_packing(row: dict[str, str]) -> None:
    count, radius = int(row["circles"]), float(row["radius"])
    assert discs_in_rectangle(2 * (radius + 2 * LAST_DIGIT), 1.0, 1.0).count < count


@pytest.mark.parametrize("row", PACKINGS, ids=lambda row: row["circles"])
def test_the_bound_allows_the_best_known_packing(row: dict[str, str]) -> None:
    count, radius = int(row["circles"]), float(row["radius"])
    assert discs_in_rectangle(2 * (radius - LAST_DIGIT), 1.0, 1.0).at_most >= count


@pytest.mark.parametrize("count", IN_ROWS)
def test_packings_that_lie_in_rows_are_found(count: int) -> None:
    radius = float(PACKINGS[count - 1]["radius"])
    assert discs_in_rectangle(2 * (radius - LAST_DIGIT), 1.0, 1.0).count == count


def test_a_gap_between_discs_is_as_wider_discs_in_a_larger_sheet() -> None:
    # d 57, g 3, L 297: the same as 60 in 300, 25 discs
    assert discs_in_rectangle(0.057, 0.297, 0.297, 0.003).count == 25
    assert discs_in_rectangle(0.060, 0.300, 0.300).count == 25


@pytest.mark.parametrize(
    ("insert", "wall_mm", "share_percent"), [(0.04, 9.0, 18.7), (0.05, 4.0, 36.4)]
)
def test_an_insert_on_its_base_disc_in_a_dome(
    insert: float, wall_mm: float, share_percent: float
) -> None:
    # dome of 7 cm, base disc of 6 mm at the rim: offset spheres, R - offset - r
    dome, inside = hemisphere(0.07), hemisphere(insert)
    wall = thinnest_wall(dome, inside, level=0.035 - 0.006 - insert / 2)
    assert wall.thinnest * 1000 == pytest.approx(wall_mm, abs=1e-6)
    assert wall.towards == "closed end"
    assert inside.volume / dome.volume * 100 == pytest.approx(share_percent, abs=0.05)


def test_the_volumes_makers_reckon_with() -> None:
    # ring 18 x 5 cm, dome of 7 cm, inserts of 4 and 5 cm, disc of 6 cm x 6 mm
    assert Cylinder(diameter=0.18, height=0.05).volume * 1e6 == pytest.approx(1272, abs=0.5)
    assert hemisphere(0.07).volume * 1e6 == pytest.approx(89.8, abs=0.05)
    assert hemisphere(0.04).volume * 1e6 == pytest.approx(16.8, abs=0.05)
    assert hemisphere(0.05).volume * 1e6 == pytest.approx(32.7, abs=0.05)
    assert Cylinder(diameter=0.06, height=0.006).volume * 1e6 == pytest.approx(17.0, abs=0.05)
    assert Cylinder(diameter=0.2, height=0.045).volume * 1e6 == pytest.approx(1413.7, abs=0.05)
