"""Bases out of sheets: counts, dough and offcuts by hand."""

from __future__ import annotations

import math

import pytest

from dessert_texts import DOME, sheet_of
from entremetry.dessert.batch_sheet import CutOuts
from entremetry.errors import FitError

DISC = math.pi * 0.030**2


def cut(sheet_entry: str, pieces: int = 6) -> CutOuts:
    text = DOME.replace("thickness: 6 mm}", f"thickness: 6 mm, sheet: {sheet_entry}}}")
    return sheet_of(text, pieces).cut_outs[0]


def test_kept_offcuts_cost_each_base_its_share_of_the_sheet() -> None:
    found = cut("{length: 300 mm, width: 300 mm, offcuts: kept}", 50)
    assert (found.per_sheet, found.sheets) == (25, 2)
    assert found.rolled_mass == pytest.approx(2 * 0.3 * 0.3 * 0.006 * 600.0)


def test_re_rolled_once_a_share_of_the_rest_is_used_too() -> None:
    found = cut("{length: 300 mm, width: 300 mm, offcuts: re-rolled}")
    used = 25 * DISC / 0.09
    bases = 6 * DISC * 0.006 * 600.0
    assert found.rolled_mass == pytest.approx(bases / (1.0 - (1.0 - used) ** 2))
    assert found.offcut_mass == pytest.approx(found.rolled_mass - bases)


def test_a_gap_between_discs_leaves_fewer() -> None:
    """63 mm pitch in 300 mm: staggered rows of 4, 53.1 mm apart, so 5 of them."""
    assert cut("{length: 297 mm, width: 297 mm, gap: 3 mm}").per_sheet == 20
    assert cut("{length: 312 mm, width: 312 mm, gap: 3 mm}").per_sheet == 25


def test_a_sheet_smaller_than_a_base_is_refused_with_the_millimetres() -> None:
    with pytest.raises(FitError, match="not one Shortcrust fits") as caught:
        cut("{length: 300 mm, width: 50 mm}")
    assert caught.value.missing == pytest.approx(0.010)
