from __future__ import annotations

import numpy as np
import pytest

from entremetry.errors import FitError, OutsideRange, UnknownName
from entremetry.physics.conduction.box_body import Block, box_body
from entremetry.physics.conduction.outline import Outline, Region, arc, outline, rectangle
from entremetry.physics.conduction.section_body import plane_body, round_body
from entremetry.physics.material import constant_material

STUFF = constant_material("stuff", 0.3, 2e6)
OTHER = constant_material("other", 0.5, 3e6)


def dome(radius: float = 0.035) -> Outline:
    return outline(
        ("base", [(0, 0), (radius, 0)]),
        ("skin", arc((0, 0), radius, 0, np.pi / 2)),
        ("axis", [(0, radius), (0, 0)]),
    )


@pytest.mark.parametrize("spacing", [5e-3, 2e-3, 1e-3])
def test_a_dome_has_its_true_volume_and_surface(spacing: float) -> None:
    body = round_body(dome(), STUFF, spacing=spacing)
    assert body.volume == pytest.approx(2 / 3 * np.pi * 0.035**3, rel=2e-5)
    assert body.area("skin") == pytest.approx(2 * np.pi * 0.035**2, rel=2e-5)
    assert body.area("base") == pytest.approx(np.pi * 0.035**2, rel=1e-9)


def test_a_surface_on_a_grid_line_is_not_lost() -> None:
    """0.05 against ten times 0.005: exact clipping loses it."""
    edge = outline(
        ("base", [(0, 0), (0.05, 0)]),
        ("skin", [(0.05, 0), (0.05, 0.05), (0, 0.05)]),
        ("axis", [(0, 0.05), (0, 0)]),
    )
    body = round_body(edge, STUFF, spacing=0.005)
    assert body.area("skin") == pytest.approx(np.pi * (0.1 * 0.05 + 0.05**2), rel=1e-9)
    assert body.volume == pytest.approx(np.pi * 0.05**3, rel=1e-9)


def test_a_step_between_grid_lines_keeps_its_faces_apart() -> None:
    """A disc on a wider one: the ring between them faces the air and links to nothing above."""
    edge = outline(
        ("skin", [(0, 0), (0.04, 0), (0.04, 0.02), (0.02, 0.02), (0.02, 0.04), (0, 0.04)]),
        ("axis", [(0, 0.04), (0, 0)]),
    )
    body = round_body(edge, STUFF, spacing=0.005)
    assert body.volume == pytest.approx(np.pi * (0.04**2 * 0.02 + 0.02**2 * 0.02), rel=1e-9)
    up = body.cells.link1[body.cells.pad : -body.cells.pad].reshape(body.cells.shape)[0]
    assert np.all(up[3, 4:] == 0.0)
    assert np.all(up[3, :4] > 0.0)


def test_either_sense_of_the_outline_gives_the_same_body() -> None:
    one = dome()
    turned = Outline(one.points[::-1].copy(), (*one.faces[-2::-1], one.faces[-1]))
    a, b = (round_body(o, STUFF, spacing=2e-3) for o in (one, turned))
    assert a.volume == pytest.approx(b.volume, rel=1e-12)
    assert a.area("skin") == pytest.approx(b.area("skin"), rel=1e-12)


def test_regions_take_their_volume_from_what_they_lie_in() -> None:
    insert = Region(name="insert", material=OTHER, points=rectangle(0, 0.008, 0.0203, 0.0231))
    core = Region(
        name="core", material=STUFF, points=rectangle(0, 0.01, 0.005, 0.015), inside="insert"
    )
    body = round_body(dome(), STUFF, (insert, core), 1e-3)
    volumes = body.volumes.sum(axis=1)
    whole = np.pi * 0.0203**2 * 0.0151
    assert volumes[2] == pytest.approx(np.pi * 0.005**2 * 0.005, rel=1e-9)
    assert volumes[1] == pytest.approx(whole - volumes[2], rel=1e-9)
    assert volumes.sum() == pytest.approx(body.volume, rel=1e-12)


def test_a_region_that_sticks_out_is_refused() -> None:
    with pytest.raises(FitError, match="insert"):
        round_body(
            dome(),
            STUFF,
            (Region(name="insert", material=OTHER, points=rectangle(0, 0.02, 0.03, 0.03)),),
        )


def test_regions_that_overlap_are_refused() -> None:
    one = Region(name="one", material=OTHER, points=rectangle(0, 0.0, 0.02, 0.01))
    two = Region(name="two", material=OTHER, points=rectangle(0, 0.005, 0.02, 0.015))
    with pytest.raises(FitError, match="two"):
        round_body(dome(), STUFF, (one, two), 2e-3)


def test_a_region_in_an_unknown_one_is_refused() -> None:
    lost = Region(name="lost", material=OTHER, points=rectangle(0, 0.0, 0.02, 0.01), inside="inset")
    with pytest.raises(UnknownName):
        round_body(dome(), STUFF, (lost,))


@pytest.mark.parametrize("spacing", [0.0, -1e-3, float("nan"), 1e-7])
def test_impossible_spacings_are_refused(spacing: float) -> None:
    with pytest.raises(OutsideRange):
        round_body(dome(), STUFF, spacing=spacing)


def test_pieces_of_an_outline_must_meet() -> None:
    with pytest.raises(OutsideRange, match="begins"):
        outline(("a", [(0, 0), (1, 0)]), ("b", [(1, 0.1), (0, 0)]))


def test_a_log_has_its_section_and_its_depth() -> None:
    edge = outline(("base", [(-0.03, 0), (0.03, 0)]), ("skin", arc((0, 0), 0.03, 0, np.pi)))
    body = plane_body(edge, STUFF, spacing=1e-3, depth=0.24)
    assert body.volume == pytest.approx(0.5 * np.pi * 0.03**2 * 0.24, rel=5e-5)
    assert body.area("skin") == pytest.approx(np.pi * 0.03 * 0.24, rel=5e-5)


def test_a_savarin_ring_is_a_torus_cut_in_half() -> None:
    edge = outline(("base", [(0.02, 0), (0.05, 0)]), ("skin", arc((0.035, 0), 0.015, 0, np.pi)))
    body = round_body(edge, STUFF, spacing=1e-3)
    assert body.volume == pytest.approx(np.pi * 0.015**2 / 2 * 2 * np.pi * 0.035, rel=5e-5)


def test_the_shell_of_a_dome_is_larger_outside() -> None:
    body = round_body(dome(), STUFF, spacing=1e-3)
    assert body.spread("skin", 0.002) == pytest.approx((0.037 / 0.035) ** 2, rel=1e-3)
    assert body.spread("base", 0.002) == pytest.approx(1.0, abs=1e-6)


def test_a_box_with_a_layer() -> None:
    layer = Block(name="layer", material=OTHER, low=(0, 0, 0.01), high=(0.08, 0.05, 0.013))
    body = box_body((0.08, 0.05, 0.02), STUFF, (layer,), 2.5e-3)
    assert body.volume == pytest.approx(0.08 * 0.05 * 0.02)
    assert body.volumes[1].sum() == pytest.approx(0.08 * 0.05 * 0.003)
    assert body.area("top") == pytest.approx(0.08 * 0.05)


def test_a_block_outside_the_box_is_refused() -> None:
    layer = Block(name="layer", material=OTHER, low=(0, 0, 0.01), high=(0.08, 0.05, 0.03))
    with pytest.raises(FitError):
        box_body((0.08, 0.05, 0.02), STUFF, (layer,))


def test_small_cells_are_joined_and_nothing_is_lost() -> None:
    body = round_body(dome(0.0351), STUFF, spacing=2e-3)
    filled = body.cells.volume[body.cells.volume > 0.0]
    assert filled.sum() == pytest.approx(2 / 3 * np.pi * 0.0351**3, rel=2e-5)
    assert np.all(body.cells.volume[body.skin.cell + body.cells.pad] > 0.0)
