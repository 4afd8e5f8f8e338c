"""Scaling: lengths by f, areas by its square, volumes by its cube."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from entremetry.shapes import Solid, measured_by_water
from properties.strategies_shapes import PLAIN, SHARES, SOLIDS

FACTORS = st.floats(0.2, 2.0)


@given(SOLIDS, FACTORS)
def test_a_scaled_body_is_similar(solid: Solid, factor: float) -> None:
    scaled = solid.scaled(factor)
    assert scaled.height == pytest.approx(solid.height * factor, rel=1e-9)
    assert scaled.length == pytest.approx(solid.length * factor, rel=1e-9)
    assert scaled.width == pytest.approx(solid.width * factor, rel=1e-9)
    assert scaled.wall_area == pytest.approx(solid.wall_area * factor**2, rel=1e-9)
    assert scaled.volume == pytest.approx(solid.volume * factor**3, rel=1e-9)


@given(SOLIDS, FACTORS, SHARES)
def test_scaling_and_filling_commute(solid: Solid, factor: float, share: float) -> None:
    level = share * solid.height
    scaled = solid.scaled(factor).volume_below(level * factor)
    assert scaled == pytest.approx(
        solid.volume_below(level) * factor**3, rel=1e-9, abs=1e-12 * scaled
    )


@given(PLAIN, FACTORS)
def test_clearance_scales_like_a_length(solid: Solid, factor: float) -> None:
    box = np.array([solid.length, solid.width, solid.height])
    points = np.random.default_rng(1).uniform(-0.6, 0.6, (40, 3)) * box + (0, 0, box[2] / 2)
    scaled = solid.scaled(factor).clearance(points * factor)
    scale = factor * float(box.max())
    assert scaled == pytest.approx(solid.clearance(points) * factor, abs=1e-8 * scale)


@given(PLAIN, st.floats(1e-6, 1e-3))
def test_a_mould_measured_by_water_holds_that_water(solid: Solid, volume: float) -> None:
    assert measured_by_water(volume, solid).volume == pytest.approx(volume, rel=1e-9)
