"""Dimensions are checked before anything is computed."""

from __future__ import annotations

import math

import pytest

from entremetry.errors import OutsideRange
from entremetry.shapes import (
    Box,
    EllipsoidCap,
    Log,
    Prism,
    Solid,
    hemisphere,
    thinnest_wall,
)

SOLIDS = (
    hemisphere(0.07),
    Log(length=0.25, width=0.08, height=0.04),
    Box(length=0.1, width=0.06, height=0.04),
    EllipsoidCap(length=0.1, width=0.06, height=0.03),
    Prism(outline=((0.0, 0.0), (0.06, 0.0), (0.0, 0.06)), height=0.03),
)


@pytest.mark.parametrize("solid", SOLIDS, ids=lambda solid: type(solid).__name__)
@pytest.mark.parametrize("spacing", [0.0, -0.001, 1e-9, math.nan])
def test_more_points_than_can_be_held_are_refused(solid: Solid, spacing: float) -> None:
    with pytest.raises(OutsideRange, match="spacing of points on the surface"):
        solid.surface(spacing)


@pytest.mark.parametrize("solid", SOLIDS, ids=lambda solid: type(solid).__name__)
@pytest.mark.parametrize("factor", [0.0, -1.0, math.nan, math.inf])
def test_a_factor_that_cannot_be_is_refused(solid: Solid, factor: float) -> None:
    with pytest.raises(OutsideRange, match="scaling factor"):
        solid.scaled(factor)


@pytest.mark.parametrize("solid", SOLIDS, ids=lambda solid: type(solid).__name__)
def test_a_level_that_is_no_number_is_refused_everywhere(solid: Solid) -> None:
    for ask in (solid.volume_below, solid.area_at, solid.plan):
        with pytest.raises(OutsideRange, match="not a number"):
            ask(math.nan)
    with pytest.raises(OutsideRange, match="volume to fill"):
        solid.level_at(math.nan)


def test_an_insert_must_lie_somewhere() -> None:
    with pytest.raises(OutsideRange, match="place of an insert"):
        thinnest_wall(hemisphere(0.07), hemisphere(0.04), level=math.nan)
