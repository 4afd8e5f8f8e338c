from dataclasses import replace

import numpy as np
import pytest

from entremetry.dessert.batch_sheet import DrawnPart, Position
from entremetry.publish.stage import stage
from unit.publish.sections import SECTIONS, dome, frame, glass, savarin


def test_a_dome_is_served_with_its_closed_end_on_top() -> None:
    scene = stage(dome())
    points = scene.cavity[0]
    top = points[np.argmin(points[:, 1])]
    assert top == pytest.approx([0.0, 0.0], abs=1e-9)
    assert scene.rim == pytest.approx(35.0)


def test_a_glass_stands_upright() -> None:
    scene = stage(glass())
    foot = scene.cavity[0][scene.cavity[0][:, 1] > 84.9]
    assert np.ptp(foot[:, 0]) == pytest.approx(48.0)
    assert scene.rim == 0.0


def test_the_base_of_a_ring_leaves_the_hole_open() -> None:
    scene = stage(savarin())
    base = next(shape for shape in scene.shapes if shape.part.position is Position.BASE)
    assert [(o[:, 0].min(), o[:, 0].max()) for o in base.outlines] == [
        (pytest.approx(-85.0), pytest.approx(-30.0)),
        (pytest.approx(30.0), pytest.approx(85.0)),
    ]


def test_only_a_very_wide_section_is_shortened_and_keeps_its_heights() -> None:
    scene = stage(frame())
    assert scene.width == pytest.approx(600.0)
    assert scene.right - scene.left == pytest.approx(600.0 - scene.hidden)
    assert scene.hidden > 0
    film = next(shape for shape in scene.shapes if shape.part.component == "glaze").outlines[0]
    assert [film[:, 1].min(), film[:, 1].max()] == pytest.approx([-2.0, 0.0])
    assert scene.bottom == pytest.approx(40.0)
    assert [stage(SECTIONS[name]()).hidden for name in ("dome", "savarin", "log", "glass")] == [
        0
    ] * 4


@pytest.mark.parametrize("name", SECTIONS)
def test_everything_drawn_lies_in_the_frame(name: str) -> None:
    scene = stage(SECTIONS[name]())
    for shape in scene.shapes:
        for outline in shape.outlines:
            assert outline[:, 0].min() >= scene.left - 1e-9
            assert outline[:, 0].max() <= scene.right + 1e-9
            assert outline[:, 1].min() >= scene.top - 1e-9
            assert outline[:, 1].max() <= scene.bottom + 1e-9


def test_the_order_of_painting_puts_inserts_and_bases_over_fillings() -> None:
    order = [shape.part.position for shape in stage(dome()).shapes]
    assert order == [
        Position.COATING,
        Position.FILLING,
        Position.INSERT,
        Position.BASE,
        Position.GARNISH,
    ]


def test_a_morsel_lies_on_the_film_and_not_in_the_part_left_out() -> None:
    scene = stage(frame())
    morsels = next(shape for shape in scene.shapes if shape.part.component == "nibs").outlines
    assert all(morsel[:, 0].min() > 0.0 and morsel[:, 0].max() < scene.right for morsel in morsels)
    assert all(-8.0 < morsel[:, 1].max() < 0.5 for morsel in morsels)


def test_a_coating_around_leaves_the_face_it_stands_on_bare_and_a_film_on_top_is_flat() -> None:
    around = {s.part.component: s.around for s in stage(dome()).shapes}
    assert around == {"mousse": False, "insert": False, "base": False, "glaze": True, "nuts": False}
    in_glass = replace(
        glass(),
        parts=(
            *glass().parts,
            DrawnPart(
                component="gel",
                name="Gel",
                kind="glaze",
                position=Position.COATING,
                thickness=0.003,
                top_only=True,
            ),
        ),
    )
    gel = next(s for s in stage(in_glass).shapes if s.part.component == "gel")
    assert gel.inside
    assert [gel.outlines[0][:, 1].min(), gel.outlines[0][:, 1].max()] == pytest.approx([8.0, 11.0])
