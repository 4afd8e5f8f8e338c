"""Pieces out of sheets and frames."""

from __future__ import annotations

import math

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.shapes import bars_in_frame, discs_in_rectangle, rectangles_in_rectangle
from entremetry.shapes.cutting import most_discs


def test_a_grid_where_discs_fit_exactly() -> None:
    cut = discs_in_rectangle(0.1, 0.4, 0.3)
    assert (cut.count, cut.pattern) == (12, "grid")
    assert cut.positions[0] == pytest.approx([0.05, 0.05])


def test_staggered_rows_where_they_hold_more() -> None:
    # seven rows of 10 and 9 in place of six rows of 10: 6 x 0.866 + 1 = 6.196 diameters
    cut = discs_in_rectangle(0.06, 0.6, 0.372)
    assert (cut.count, cut.pattern) == (67, "staggered")


def test_either_way_round_is_tried() -> None:
    assert discs_in_rectangle(0.06, 0.372, 0.6).count == 67


def test_stretched_rows_move_closer_together() -> None:
    # rows of 2, 1, 2 in a square of 1 / 0.207106781 radii: only stretched rows reach 5
    assert discs_in_rectangle(0.0414, 0.1, 0.1).count == 5


def test_no_disc_where_none_fits() -> None:
    cut = discs_in_rectangle(0.1, 0.4, 0.09)
    assert cut.count == cut.at_most == 0
    assert cut.positions.shape == (0, 2)


def test_one_disc_in_its_own_square() -> None:
    cut = discs_in_rectangle(0.06, 0.06, 0.06)
    assert cut.count == cut.at_most == 1


def test_the_bound_tends_to_the_density_of_the_plane() -> None:
    share = most_discs(0.001, 5.0, 5.0) * math.pi * 0.0005**2 / 25.0
    assert share == pytest.approx(math.pi / (2 * math.sqrt(3)), rel=1e-3)


def test_discs_in_a_strip_of_one_row_meet_the_bound() -> None:
    cut = discs_in_rectangle(0.05, 0.52, 0.05)
    assert cut.count == cut.at_most == 10


def test_mixed_pieces_where_they_hold_more() -> None:
    cut = rectangles_in_rectangle(0.03, 0.02, 0.07, 0.05)
    assert cut.count == 5 and cut.pattern == "mixed"
    assert 0 < sum(cut.turned) < cut.count
    plain = rectangles_in_rectangle(0.03, 0.02, 0.06, 0.04)
    assert (plain.count, plain.pattern, plain.at_most) == (4, "grid", 4)


def test_gaps_between_rectangles_take_room() -> None:
    assert rectangles_in_rectangle(0.05, 0.05, 0.103, 0.103, 0.003).count == 4
    assert rectangles_in_rectangle(0.05, 0.05, 0.102, 0.103, 0.003).count == 2


def test_a_frame_is_trimmed_then_cut() -> None:
    # 400 x 300 mm less 10 mm all round: 380 x 280, bars of 90 x 30
    cut = bars_in_frame(0.4, 0.3, 0.09, 0.03, 0.01)
    assert cut.count == 4 * 9
    assert cut.positions.min(axis=0) == pytest.approx([0.055, 0.025])
    assert np.unique(cut.positions[:, 0]) == pytest.approx([0.055, 0.145, 0.235, 0.325])


def test_bars_lie_crosswise_if_that_gives_more() -> None:
    cut = bars_in_frame(0.3, 0.1, 0.09, 0.03)
    assert cut.count == 10 and all(cut.turned)


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ((0.0, 0.4, 0.3), "diameter of the disc"),
        ((0.06, -0.4, 0.3), "length of the sheet"),
        ((0.06, 0.4, math.nan), "width of the sheet"),
        ((0.06, 0.4, 0.3, -0.001), "gap between pieces"),
        ((0.0001, 5.0, 5.0), "pieces from one sheet: about"),
    ],
)
def test_sheets_and_discs_that_cannot_be_are_refused(
    arguments: tuple[float, ...], said: str
) -> None:
    with pytest.raises(OutsideRange, match=said):
        discs_in_rectangle(*arguments)


def test_a_trim_that_leaves_nothing_is_refused() -> None:
    with pytest.raises(OutsideRange, match="trim: found 160 mm; accepted: 0 mm to 150 mm"):
        bars_in_frame(0.4, 0.3, 0.09, 0.03, 0.16)
