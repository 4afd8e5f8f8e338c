"""Prisms from SVG path data."""

from __future__ import annotations

import math

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.shapes import prism_from_svg

HEART = "M50 90 C10 60 0 30 25 15 C40 8 50 25 50 30 C50 25 60 8 75 15 C100 30 90 60 50 90 Z"


def test_one_unit_is_a_millimetre() -> None:
    prism = prism_from_svg("M0 0 H60 V40 H0 Z", 0.03)
    assert prism.volume == pytest.approx(0.06 * 0.04 * 0.03)


def test_a_width_scales_the_drawing() -> None:
    prism = prism_from_svg("M0 0 h6 v3 h-6 z", 0.03, width=0.12)
    assert (prism.length, prism.width) == pytest.approx((0.12, 0.06))


def test_further_lines_inside_are_holes_in_any_order() -> None:
    outer, hole = "M0 0 H60 V40 H0 Z ", "M10 10 h10 v10 h-10 z "
    for text in (outer + hole, hole + outer):
        assert prism_from_svg(text, 0.03).volume == pytest.approx((0.0024 - 0.0001) * 0.03)


def test_an_arc_is_drawn_within_a_hundredth_of_a_millimetre() -> None:
    circle = prism_from_svg("M-30 0 A30 30 0 0 1 30 0 A30 30 0 0 1 -30 0 Z", 0.04)
    (outline,) = circle.plan(0.0)
    middles = (outline + np.roll(outline, -1, axis=0)) / 2
    assert np.abs(np.linalg.norm(middles, axis=1) - 0.03).max() < 1e-5
    assert circle.volume == pytest.approx(math.pi * 0.03**2 * 0.04, rel=3e-4)


def test_curves_make_a_heart() -> None:
    heart = prism_from_svg(HEART, 0.04, width=0.08)
    assert max(heart.length, heart.width) == pytest.approx(0.08, abs=1e-4)
    assert 0.5 < heart.volume / (heart.length * heart.width * 0.04) < 0.9


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "SVG path data, such as"),
        ("heart", "SVG path data, such as"),
        ("<svg><path d='M0 0'/></svg>", "SVG path data, such as"),
        ("M0 0 H10 V10 Z; url(#a)", "SVG path data, such as"),
        ("L4 4 Z", "SVG path data, such as"),
        ("M", "complete SVG path data"),
        ("M0 0 C1 Z", "complete SVG path data"),
        ("M0 0", "no length"),
        ("M0 0 L10 0 L10 10", "not closed"),
        ("M0 0 L10 10 L10 0 L0 10 Z", "cross or touch"),
        ("M0 0 L1e999 4 L3 3 Z", "not a number"),
        ("M0 0 H10 V10 H0 Z M20 20 h5 v5 h-5 z", "a hole lies outside"),
        ("M0 0 h5e6 v1 z", "length of the outline"),
        ("M" + "0" * 60_000, "found 60001 characters"),
    ],
)
def test_what_draws_no_outline_is_refused(text: str, said: str) -> None:
    with pytest.raises(OutsideRange, match=said):
        prism_from_svg(text, 0.03)


def test_a_line_without_width_cannot_be_scaled() -> None:
    with pytest.raises(OutsideRange, match="no width"):
        prism_from_svg("M0 0 V10 V5 Z", 0.03, width=0.1)
