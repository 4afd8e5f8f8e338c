"""Filling: volumes rise from nothing to the whole, and levels answer to them."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from entremetry.shapes import Solid
from entremetry.shapes.outline import enclosed_area
from properties.strategies_shapes import ROUND, SHARES, SOLIDS


@given(SOLIDS)
def test_nothing_lies_below_the_closed_end_and_all_below_the_rim(solid: Solid) -> None:
    assert solid.volume > 0.0
    assert solid.volume_below(0.0) == 0.0
    assert solid.volume_below(-1.0) == 0.0
    assert solid.volume_below(solid.height) == pytest.approx(solid.volume, rel=1e-12)
    assert solid.volume_below(solid.height + 1.0) == pytest.approx(solid.volume, rel=1e-12)


@given(SOLIDS, SHARES, SHARES)
def test_volume_rises_with_the_level(solid: Solid, one: float, other: float) -> None:
    low, high = sorted((one * solid.height, other * solid.height))
    slack = 1e-13 * solid.volume
    assert solid.volume_below(low) <= solid.volume_below(high) + slack


@given(SOLIDS, SHARES)
def test_the_level_of_a_volume_holds_that_volume(solid: Solid, share: float) -> None:
    volume = share * solid.volume
    level = solid.level_at(volume)
    assert 0.0 <= level <= solid.height
    assert solid.volume_below(level) == pytest.approx(volume, rel=1e-9, abs=1e-13 * solid.volume)


@given(SOLIDS, st.floats(0.02, 0.98))
def test_area_is_the_growth_of_volume(solid: Solid, share: float) -> None:
    level, step = share * solid.height, 1e-4 * solid.height
    edges = np.linspace(level - step, level + step, 3)
    below = [solid.volume_below(float(edge)) for edge in edges]
    areas = [solid.area_at(float(edge)) for edge in edges]
    slack = 1e-9 * solid.volume / step
    low, high = min(areas) - slack, max(areas) + slack
    assert low * (1 - 2e-4) <= (below[2] - below[0]) / (2 * step) <= high * (1 + 2e-4)


@given(SOLIDS, st.floats(0.05, 0.95))
def test_the_plan_encloses_the_area(solid: Solid, share: float) -> None:
    level = share * solid.height
    outer, *holes = (abs(enclosed_area(line)) for line in solid.plan(level))
    around = sum(float(np.ptp(line)) * math.pi for line in solid.plan(level))
    assert outer - sum(holes) == pytest.approx(solid.area_at(level), abs=around * 5e-5)


@given(ROUND)
def test_the_section_of_a_turned_body_sweeps_its_volume(solid: Solid) -> None:
    swept = 0.0
    for line in solid.section():
        right = np.maximum(line, (0.0, -math.inf))
        (r0, z0), (r1, z1) = right.T, np.roll(right, -1, axis=0).T
        both = np.sum((z1 - z0) * (r0 * r0 + r0 * r1 + r1 * r1)) / 3.0
        swept += math.pi * abs(float(both))
    error = 5e-5 * solid.wall_area
    assert swept == pytest.approx(solid.volume, abs=error)


@given(SOLIDS)
def test_outlines_are_finite_and_stay_within_the_body(solid: Solid) -> None:
    for line in solid.section():
        assert np.all(np.isfinite(line))
        assert np.all(np.abs(line[:, 0]) <= solid.length / 2 * (1 + 1e-9))
        assert np.all((line[:, 1] >= -1e-12) & (line[:, 1] <= solid.height * (1 + 1e-9)))
