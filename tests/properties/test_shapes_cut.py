"""Cutting: pieces lie in the sheet, apart, and never more than the bound."""

from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from entremetry.shapes import bars_in_frame, discs_in_rectangle, rectangles_in_rectangle

SHEETS = st.floats(0.02, 0.6)
PIECES = st.floats(0.015, 0.2)
GAPS = st.floats(0.0, 0.01)
SLACK = 1e-8


@given(PIECES, SHEETS, SHEETS, GAPS)
def test_discs_lie_in_the_sheet_and_apart(
    d: float, length: float, width: float, gap: float
) -> None:
    cut = discs_in_rectangle(d, length, width, gap)
    assert cut.positions.shape == (cut.count, 2)
    assert cut.count <= cut.at_most
    assert np.all(cut.positions >= d / 2 - SLACK)
    assert np.all(cut.positions <= np.array([length, width]) - d / 2 + SLACK)
    away = np.linalg.norm(cut.positions[:, None] - cut.positions, axis=2)
    away[np.diag_indices(cut.count)] = np.inf
    assert np.all(away >= d + gap - SLACK)


@given(PIECES, SHEETS, SHEETS, GAPS)
def test_a_turned_sheet_gives_as_many(d: float, length: float, width: float, gap: float) -> None:
    lengthwise = discs_in_rectangle(d, length, width, gap)
    assert lengthwise.count == discs_in_rectangle(d, width, length, gap).count
    assert (lengthwise.count > 0) == (d <= min(length, width) + 1e-9 * d)


@given(PIECES, PIECES, SHEETS, SHEETS, GAPS)
def test_rectangles_lie_in_the_sheet_and_apart(
    a: float, b: float, length: float, width: float, gap: float
) -> None:
    cut = rectangles_in_rectangle(a, b, length, width, gap)
    assert cut.positions.shape == (cut.count, 2) and len(cut.turned) == cut.count
    assert cut.count <= cut.at_most
    turned = np.array(cut.turned, dtype=bool)[:, None]
    half = np.where(turned, (b / 2, a / 2), (a / 2, b / 2))
    assert np.all(cut.positions >= half - SLACK)
    assert np.all(cut.positions <= np.array([length, width]) - half + SLACK)
    apart = np.abs(cut.positions[:, None] - cut.positions) - half[:, None] - half
    apart = apart.max(axis=2)
    apart[np.diag_indices(cut.count)] = np.inf
    assert np.all(apart >= gap - SLACK)


@given(PIECES, PIECES, SHEETS, SHEETS)
def test_both_ways_of_naming_a_piece_give_as_many(
    a: float, b: float, length: float, width: float
) -> None:
    one, other = (rectangles_in_rectangle(*piece, length, width) for piece in ((a, b), (b, a)))
    assert one.count == other.count


@given(st.floats(0.1, 0.6), st.floats(0.1, 0.6), PIECES, PIECES, st.floats(0.0, 0.02))
def test_bars_keep_off_the_trim(
    length: float, width: float, a: float, b: float, trim: float
) -> None:
    cut = bars_in_frame(length, width, a, b, trim)
    assert cut.count <= cut.at_most
    assert len(set(cut.turned)) <= 1
    half = np.array([b, a] if cut.turned and cut.turned[0] else [a, b]) / 2
    assert np.all(cut.positions >= half + trim - SLACK)
    assert np.all(cut.positions <= np.array([length, width]) - half - trim + SLACK)
