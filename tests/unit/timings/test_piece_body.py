"""The heat kernel's body of a piece against the shapes' own volumes and areas."""

from __future__ import annotations

import pytest

from entremetry.dessert.placed import Filled, Inclusion, Placed
from entremetry.errors import QuantityError
from entremetry.physics.material import constant_material
from entremetry.shapes import (
    Box,
    Cylinder,
    EllipsoidCap,
    Log,
    Revolution,
    Ring,
    Solid,
    Sphere,
    SphericalCap,
    TruncatedCone,
    hemisphere,
    measured_by_water,
    prism_from_svg,
    regular_prism,
)
from entremetry.store.shelf import built_in_moulds
from entremetry.timings.half_outline import Lie, lie_of
from entremetry.timings.piece_body import CLOSED_END, OPENING, WALL, PieceBody, alone, piece_body

STUFF = {name: constant_material(name, 0.4, 3e6) for name in ("soft", "other", "firm")}
SHAPES: dict[str, Solid] = {
    "half-sphere": hemisphere(0.07),
    "cap": SphericalCap(diameter=0.08, height=0.03),
    "past half": SphericalCap(diameter=0.05, height=0.06, past_half=True),
    "sphere": Sphere(diameter=0.05),
    "ellipsoid": EllipsoidCap(length=0.08, width=0.055, height=0.03),
    "cylinder": Cylinder(diameter=0.06, height=0.04),
    "cone": TruncatedCone(diameter=0.07, base_diameter=0.045, height=0.05),
    "pointed cone": TruncatedCone(diameter=0.07, base_diameter=0.0, height=0.05),
    "savarin": Ring(diameter=0.08, hole_diameter=0.03, height=0.02),
    "flat ring": Ring(diameter=0.2, hole_diameter=0.08, height=0.05, cross_section="flat"),
    "tower": Revolution(points=((0.03, 0.0), (0.03, 0.02), (0.02, 0.02), (0.02, 0.05))),
    "tube": Revolution(points=((0.01, 0.05), (0.015, 0.0), (0.04, 0.0), (0.05, 0.05))),
    "cube": Box(length=0.05, width=0.05, height=0.05, corner_radius=0.003),
    "tapered box": Box(length=0.2, width=0.15, height=0.05, corner_radius=0.02, taper=0.01),
    "heart": prism_from_svg("M0 0 L4 3 L6 6 L4 8 L0 6 L-4 8 L-6 6 L-4 3 Z", 0.03, 0.08),
    "hexagon": regular_prism(6, 0.08, 0.03),
    "measured": measured_by_water(75e-6, hemisphere(0.07)),
}


def plain(solid: Solid) -> PieceBody:
    return piece_body(alone(solid, "soft", "Soft"), STUFF)


@pytest.mark.parametrize("name", SHAPES)
def test_volume_and_wall_are_those_of_the_shape(name: str) -> None:
    solid, body = SHAPES[name], plain(SHAPES[name]).body
    wall = sum(body.area(face) for face in (CLOSED_END, WALL) if face in body.faces)
    assert lie_of(solid) is Lie.ROUND
    assert body.volume == pytest.approx(solid.volume, rel=3e-3)
    assert wall == pytest.approx(solid.wall_area, rel=3e-3)


@pytest.mark.parametrize("mould", sorted(built_in_moulds()))
def test_every_mould_of_the_shelf_keeps_its_volume(mould: str) -> None:
    solid = built_in_moulds()[mould].solid
    assert plain(solid).body.volume == pytest.approx(solid.volume, rel=3e-3)


@pytest.mark.parametrize(
    "solid",
    [
        Log(length=0.25, width=0.08, height=0.07, cross_section="rounded", corner_radius=0.025),
        Log(length=0.25, width=0.08, height=0.04),
        Box(length=0.3, width=0.2, height=0.04),
        Box(length=0.04, width=0.2, height=0.03),
    ],
)
def test_a_straight_body_has_both_halves_and_no_ends(solid: Solid) -> None:
    body = plain(solid).body
    around = sum(body.area(face) for face in (CLOSED_END, WALL, OPENING) if face in body.faces)
    ends = 2.0 * solid.volume / max(solid.length, solid.width)
    opening = solid.area_at(solid.height)
    assert body.volume == pytest.approx(solid.volume, rel=3e-3)
    assert around == pytest.approx(solid.wall_area + opening - ends, rel=3e-3)


def test_a_sphere_has_no_opening() -> None:
    assert OPENING not in plain(Sphere(diameter=0.05)).body.faces


def test_a_dome_has_no_flat_closed_end_and_a_box_has_one() -> None:
    assert CLOSED_END not in plain(hemisphere(0.07)).body.faces
    assert CLOSED_END in plain(Box(length=0.3, width=0.2, height=0.04)).body.faces


def test_the_heart_of_a_ring_lies_in_its_band() -> None:
    points = plain(SHAPES["flat ring"]).points
    assert points["heart"] == pytest.approx((0.07, 0.025))
    assert points["edge"][0] == pytest.approx(0.098)


def filled(
    cavity: Solid, *inclusions: Inclusion, layers: tuple[tuple[str, float, float], ...]
) -> Placed:
    soft = tuple(
        Filled(
            component=component,
            name=component,
            low=low,
            high=high,
            volume=cavity.volume_below(high) - cavity.volume_below(low),
        )
        for component, low, high in layers
    )
    return Placed(
        cavity=cavity, inclusions=inclusions, filled=soft, walls=(), free_height=0.0, centred=()
    )


def region_volumes(piece: PieceBody) -> dict[str, float]:
    found: dict[str, float] = {}
    volumes = piece.body.volumes.sum(axis=1)
    for region, volume in zip(piece.body.regions, volumes, strict=True):
        component = piece.components[region]
        found[component] = found.get(component, 0.0) + float(volume)
    return found


@pytest.mark.parametrize("turned", [False, True])
def test_an_insert_across_two_layers_keeps_its_volume(turned: bool) -> None:
    cavity, insert = Cylinder(diameter=0.08, height=0.05), hemisphere(0.04)
    part = Inclusion(component="firm", name="Firm", solid=insert, low=0.01, turned=turned)
    piece = piece_body(
        filled(cavity, part, layers=(("other", 0.0, 0.02), ("soft", 0.02, 0.05))), STUFF
    )
    volumes = region_volumes(piece)
    point = insert.volume_below(0.01)
    lower = insert.volume - point if turned else point
    assert volumes["firm"] == pytest.approx(insert.volume, rel=3e-3)
    assert volumes["other"] == pytest.approx(cavity.volume_below(0.02) - lower, rel=3e-3)
    assert sum(volumes.values()) == pytest.approx(cavity.volume, rel=3e-3)


def test_a_turned_insert_is_widest_at_its_foot() -> None:
    part = Inclusion(component="firm", name="F", solid=hemisphere(0.04), low=0.01, turned=True)
    cavity = Cylinder(diameter=0.08, height=0.05)
    piece = piece_body(filled(cavity, part, layers=(("soft", 0.0, 0.05),)), STUFF)
    edges = piece.parts[0]
    assert edges[edges[:, 1].argmin(), 1] == pytest.approx(0.01)
    assert edges[edges[:, 1] < 0.011, 0].max() == pytest.approx(0.02)


def test_a_glass_is_as_full_as_its_layers_say() -> None:
    glass = Cylinder(diameter=0.065, height=0.075)
    piece = piece_body(filled(glass, layers=(("soft", 0.0, 0.03), ("other", 0.03, 0.05))), STUFF)
    assert piece.body.volume == pytest.approx(glass.volume_below(0.05), rel=1e-6)
    assert piece.points["edge"][1] == pytest.approx(0.045)
    assert region_volumes(piece)["other"] == pytest.approx(glass.volume_below(0.02), rel=1e-6)


def test_a_base_inside_is_a_part_of_its_own() -> None:
    cavity = hemisphere(0.07)
    base = Inclusion(
        component="firm",
        name="Base",
        solid=Cylinder(diameter=0.06, height=0.006),
        low=0.029,
        is_base=True,
    )
    piece = piece_body(filled(cavity, base, layers=(("soft", 0.0, 0.035),)), STUFF)
    assert region_volumes(piece)["firm"] == pytest.approx(base.solid.volume, rel=1e-6)
    assert set(piece.points) == {"heart", "edge"}


def test_what_lies_beside_the_middle_is_left_out_and_said() -> None:
    ring = Ring(diameter=0.2, hole_diameter=0.08, height=0.05, cross_section="flat")
    part = Inclusion(
        component="firm", name="Firm drop", solid=hemisphere(0.02), low=0.02, aside=0.07
    )
    piece = piece_body(filled(ring, part, layers=(("soft", 0.0, 0.05),)), STUFF)
    assert "Firm drop left out" in piece.roughly
    assert piece.body.volume == pytest.approx(ring.volume, rel=3e-3)
    assert piece.parts == ()


def test_of_two_inserts_side_by_side_the_larger_is_kept() -> None:
    box = Cylinder(diameter=0.16, height=0.05)
    small = Inclusion(component="other", name="Small", solid=hemisphere(0.02), low=0.02, aside=0.04)
    large = Inclusion(component="firm", name="Large", solid=hemisphere(0.03), low=0.02, aside=-0.04)
    piece = piece_body(filled(box, small, large, layers=(("soft", 0.0, 0.05),)), STUFF)
    assert "Small left out" in piece.roughly and "Large" not in piece.roughly
    assert region_volumes(piece)["firm"] == pytest.approx(hemisphere(0.03).volume, rel=3e-3)


def test_a_piece_with_nothing_soft_in_it_is_refused() -> None:
    with pytest.raises(QuantityError, match="a filling or a layer"):
        piece_body(filled(hemisphere(0.07), layers=()), STUFF)


def test_fewer_cells_keep_the_volume() -> None:
    coarse = piece_body(alone(hemisphere(0.07), "soft", "Soft"), STUFF, most_cells=160)
    assert (coarse.body.cells.volume > 0.0).sum() <= 160
    assert coarse.body.volume == pytest.approx(hemisphere(0.07).volume, rel=3e-3)
