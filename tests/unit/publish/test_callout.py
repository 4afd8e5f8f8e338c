from itertools import combinations

import pytest

from entremetry.publish.anchor import anchors, seen
from entremetry.publish.callout import LETTER, LINE, Callout, spread, wrapped
from entremetry.publish.drawing import WIDTH, laid_out
from entremetry.publish.stage import stage
from unit.publish.sections import SECTIONS


def box(callout: Callout) -> tuple[float, float, float, float]:
    """Left, top, right, bottom of a label, its letters taken as wide."""
    wide = LETTER * max(len(line) for line in callout.lines)
    top = callout.y - 10.0
    return callout.x, top, callout.x + wide, top + LINE * len(callout.lines)


def segments(callout: Callout):  # type: ignore[no-untyped-def]
    return list(zip(callout.leader[:-1], callout.leader[1:], strict=True))


def turn(a, b, c) -> float:  # type: ignore[no-untyped-def]
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def cross(first, second) -> bool:  # type: ignore[no-untyped-def]
    (a, b), (c, d) = first, second
    return turn(a, b, c) * turn(a, b, d) < 0 and turn(c, d, a) * turn(c, d, b) < 0


@pytest.mark.parametrize("name", SECTIONS)
def test_labels_never_overlap_and_stay_on_the_drawing(name: str) -> None:
    plate = laid_out(stage(SECTIONS[name]()), labelled=True)
    boxes = [box(callout) for callout in plate.callouts]
    for (l1, t1, r1, b1), (l2, t2, r2, b2) in combinations(boxes, 2):
        assert r1 <= l2 or r2 <= l1 or b1 <= t2 or b2 <= t1
    for left, top, right, bottom in boxes:
        assert left >= 0 and top >= 0 and right <= WIDTH and bottom <= plate.height


@pytest.mark.parametrize("name", SECTIONS)
def test_every_part_has_one_label_and_no_leaders_cross(name: str) -> None:
    section = SECTIONS[name]()
    plate = laid_out(stage(section), labelled=True)
    assert sorted(c.component for c in plate.callouts) == sorted(
        part.component for part in section.parts
    )
    for one, other in combinations(plate.callouts, 2):
        assert not any(cross(s, t) for s in segments(one) for t in segments(other))


@pytest.mark.parametrize("name", SECTIONS)
@pytest.mark.parametrize("sideways", [True, False])
def test_an_anchor_lies_where_its_part_is_seen(name: str, sideways: bool) -> None:
    scene = stage(SECTIONS[name]())
    grid, across, down = seen(scene)
    for anchor in anchors(scene, sideways=sideways):
        row = int(abs(down - anchor.y).argmin())
        column = int(abs(across - anchor.x).argmin())
        assert scene.shapes[grid[row, column]].part.component == anchor.component


def test_boxes_are_spread_without_overlap_and_near_their_wishes() -> None:
    tops = spread([10.0, 12.0, 90.0], [20.0, 20.0, 20.0], 0.0, 100.0)
    assert tops == [0.0, 20.0, 80.0]
    assert spread([5.0, 5.0], [30.0, 30.0], 0.0, 10.0) == [0.0, 30.0]


def test_long_names_are_cut_to_three_lines() -> None:
    lines = wrapped("very " * 40, 12)
    assert len(lines) == 3
    assert all(len(line) <= 12 for line in lines)
    assert max(len(line) for line in wrapped("x" * 200, 10)) <= 10
