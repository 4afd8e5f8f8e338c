"""Logs of every section."""

from __future__ import annotations

import math

import numpy as np
import pytest

from entremetry.errors import OutsideRange, UnknownName
from entremetry.shapes import Log


def test_a_high_half_round_log_has_upright_walls() -> None:
    log = Log(length=0.25, width=0.08, height=0.06)
    assert log.volume == pytest.approx(0.25 * (math.pi * 0.04**2 / 2 + 0.08 * 0.02))


def test_a_rounded_log_lacks_its_corners() -> None:
    log = Log(length=0.25, width=0.08, height=0.06, cross_section="rounded", corner_radius=0.02)
    corners = 2 * (1 - math.pi / 4) * 0.02**2
    assert log.volume == pytest.approx(0.25 * (0.08 * 0.06 - corners))
    around = 0.04 + math.pi * 0.02 + 2 * 0.04
    ends = 2 * (0.08 * 0.06 - corners)
    assert log.wall_area == pytest.approx(0.25 * around + ends)


def test_a_rounded_log_without_radius_is_a_box() -> None:
    log = Log(length=0.25, width=0.08, height=0.06, cross_section="rounded")
    assert log.volume == pytest.approx(0.25 * 0.08 * 0.06)


def test_a_log_whose_corners_meet_is_half_round() -> None:
    one = Log(length=0.2, width=0.08, height=0.06, cross_section="rounded", corner_radius=0.04)
    assert one.volume == pytest.approx(Log(length=0.2, width=0.08, height=0.06).volume)


def test_clearance_counts_the_end_walls() -> None:
    log = Log(length=0.25, width=0.08, height=0.04)
    points = np.array([(0, 0, 0.03), (0.12, 0, 0.03), (0.13, 0, 0.03), (0, 0.03, 0.04)])
    assert log.clearance(points) == pytest.approx([0.03, 0.005, -0.005, 0.01])


def test_outside_an_edge_the_distance_is_to_the_edge() -> None:
    log = Log(length=0.2, width=0.08, height=0.06, cross_section="rounded")
    point = np.array([(0.103, 0.044, 0.03)])
    assert log.clearance(point) == pytest.approx([-0.005])


def test_a_section_along_is_a_rectangle_and_a_section_across_is_round() -> None:
    log = Log(length=0.25, width=0.08, height=0.04)
    assert log.section()[0].tolist() == [[-0.125, 0], [0.125, 0], [0.125, 0.04], [-0.125, 0.04]]
    (across,) = log.cross_outline()
    assert np.hypot(across[:, 0], across[:, 1] - 0.04) == pytest.approx(0.04)


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ({"height": 0.03}, "at least 40 mm, half the width"),
        ({"height": 0.05, "cross_section": "round-topped"}, "at most 40 mm"),
        ({"height": 0.05, "cross_section": "rounded", "corner_radius": 0.041}, "0 mm to 40 mm"),
        ({"height": 0.04, "corner_radius": 0.01}, "only the edges of a 'rounded' log"),
        ({"height": math.nan}, "height of the log"),
    ],
)
def test_sections_that_cannot_be_are_refused(arguments: dict[str, float], said: str) -> None:
    with pytest.raises(OutsideRange, match=said):
        Log(length=0.25, width=0.08, **arguments)  # type: ignore[arg-type]


def test_an_unknown_section_is_answered_with_the_nearest() -> None:
    with pytest.raises(UnknownName, match="did you mean .*round-topped"):
        Log(length=0.25, width=0.08, height=0.04, cross_section="round")  # type: ignore[arg-type]
