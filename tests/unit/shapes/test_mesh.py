"""Meshes from STL files."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
import trimesh

from entremetry.errors import OutsideRange
from entremetry.shapes import Box, TruncatedCone, mesh_from_stl, thinnest_wall


def stl(mesh: Any) -> bytes:
    """Content of a binary STL file."""
    content = mesh.export(file_type="stl")
    assert isinstance(content, bytes)
    return content


def cup(sides: int = 64) -> Any:
    """A truncated cone, 60 mm across below, 80 mm at the rim, 50 mm high."""
    profile = np.array([(0, 0), (30, 0), (40, 50), (0, 50)])
    return trimesh.creation.revolve(profile, sections=sides)


def test_a_box_is_exact_in_everything() -> None:
    mesh = mesh_from_stl(stl(trimesh.creation.box((60, 100, 40))))
    box = Box(length=0.1, width=0.06, height=0.04)
    points = np.random.default_rng(8).uniform(-0.07, 0.08, (800, 3))
    assert mesh.clearance(points) == pytest.approx(box.clearance(points), abs=1e-12)
    assert (mesh.length, mesh.width, mesh.height) == pytest.approx((0.1, 0.06, 0.04))
    assert mesh.volume == pytest.approx(box.volume)
    assert mesh.wall_area == pytest.approx(box.wall_area)
    assert mesh.level_at(box.volume / 4) == pytest.approx(0.01)
    assert mesh.area_at(0.04) == mesh.area_at(0.0) == pytest.approx(0.006)
    for outline in (mesh.section()[0], mesh.plan(0.01)[0]):
        assert np.ptp(outline[:, 0]) == pytest.approx(0.1)


def test_volume_below_a_level_is_exact_for_a_cut_cone_of_flat_sides() -> None:
    mesh, factor = mesh_from_stl(stl(cup(64))), 64 / (2 * math.pi) * math.sin(2 * math.pi / 64)
    cone = TruncatedCone(diameter=0.08, base_diameter=0.06, height=0.05)
    for level in (0.0001, 0.01, 0.0333, 0.05):
        volume, area = factor * cone.volume_below(level), factor * cone.area_at(level)
        assert mesh.volume_below(level) == pytest.approx(volume, rel=1e-6)
        assert mesh.area_at(level) == pytest.approx(area, rel=1e-5)


def test_the_larger_flat_end_is_the_opening_unless_told() -> None:
    upside_down = cup()
    upside_down.apply_transform(trimesh.transformations.rotation_matrix(math.pi, [1, 0, 0]))
    for mesh in (cup(), upside_down):
        solid = mesh_from_stl(stl(mesh))
        assert solid.area_at(0.05) > solid.area_at(0.0)
    told = mesh_from_stl(stl(cup()), opening="bottom")
    assert told.area_at(0.05) < told.area_at(0.0)


def test_text_and_binary_give_the_same_body() -> None:
    text = trimesh.exchange.stl.export_stl_ascii(cup()).encode()
    assert mesh_from_stl(text).volume == pytest.approx(mesh_from_stl(stl(cup())).volume, rel=1e-6)


def test_a_mesh_turned_inside_out_is_turned_right() -> None:
    inverted = cup()
    inverted.invert()
    assert mesh_from_stl(stl(inverted)).volume == pytest.approx(mesh_from_stl(stl(cup())).volume)


def test_a_unit_may_be_given() -> None:
    in_inches = mesh_from_stl(stl(cup()), unit=0.0254 / 10)
    assert in_inches.height == pytest.approx(0.127)


def test_a_ring_shows_its_hole() -> None:
    ring = mesh_from_stl(stl(trimesh.creation.annulus(r_min=30, r_max=90, height=40, sections=96)))
    assert len(ring.plan(0.02)) == 2 and len(ring.section()) == 2
    assert ring.clearance(np.array([(0.0, 0.0, 0.02), (0.06, 0.0, 0.03)]))[0] < 0.0


def test_a_closed_body_has_no_opening() -> None:
    ball = mesh_from_stl(stl(trimesh.creation.icosphere(subdivisions=4, radius=30)))
    # 5 120 faces: 0.997839 of the sphere
    assert ball.volume / (4 / 3 * math.pi * 0.03**3) == pytest.approx(0.997839, abs=1e-6)
    above = ball.clearance(np.array([(0.0, 0.0, 0.07)]))
    assert above == pytest.approx([-0.01], abs=1e-4)


def test_an_insert_in_a_mesh_is_measured() -> None:
    wall = thinnest_wall(
        mesh_from_stl(stl(trimesh.creation.box((100, 60, 40)))),
        Box(length=0.08, width=0.05, height=0.02),
        level=0.012,
    )
    assert wall.thinnest == pytest.approx(0.005)
    assert wall.towards == "side"


def test_scaling_and_the_surface() -> None:
    solid = mesh_from_stl(stl(cup()))
    assert solid.scaled(2.0).volume == pytest.approx(8 * solid.volume)
    points = solid.surface(0.004)
    assert points.min(axis=0)[2] == pytest.approx(0.0)
    in_opening = np.isclose(points[:, 2], 0.05)
    assert np.hypot(*points[in_opening, :2].T).min() < 0.004


def without_a_face() -> bytes:
    mesh = cup()
    mesh.update_faces(np.arange(len(mesh.faces)) != 7)
    return stl(mesh)


def partly_flipped() -> bytes:
    mesh = cup()
    faces = mesh.faces.copy()
    faces[:20] = faces[:20, ::-1]
    return stl(trimesh.Trimesh(mesh.vertices, faces, process=False))


def two_bodies() -> bytes:
    return stl(trimesh.util.concatenate([cup(), cup().apply_translation([200, 0, 0])]))


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (without_a_face(), "its surface has holes; accepted: a closed mesh"),
        (partly_flipped(), "some faces point inward"),
        (two_bodies(), "found 2 bodies; accepted: one"),
        (b"", "no STL file"),
        (b"junk", "no STL file"),
        (stl(cup())[:500], "no STL file"),
        (b"\x00" * 84, "mesh: "),
        (b"solid x\nfacet rubbish", "mesh: "),
        (stl(trimesh.creation.box((20_000, 10, 10))), "length of the mesh: found 20000 mm"),
    ],
)
def test_what_is_no_closed_body_is_refused(content: bytes, said: str) -> None:
    with pytest.raises(OutsideRange, match=said):
        mesh_from_stl(content)
