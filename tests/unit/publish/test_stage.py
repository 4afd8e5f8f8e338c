import numpy as np
import pytest

from entremetry.dessert.batch_sheet import Position
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
    assert scene.bottom - scene.top == pytest.approx(40.0)
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
