"""Moulds known by the water they hold."""

from __future__ import annotations

import math

import pytest

from entremetry.errors import OutsideRange
from entremetry.shapes import SphericalCap, hemisphere, measured_by_water


def test_the_body_is_similar_and_holds_the_water() -> None:
    measured = measured_by_water(75e-6, hemisphere(0.07))
    assert measured.volume == pytest.approx(75e-6, rel=1e-14)
    assert isinstance(measured, SphericalCap)
    assert measured.height == pytest.approx(measured.length / 2)


@pytest.mark.parametrize("bad", [0.0, -75e-6, math.nan, math.inf, 2.0])
def test_a_volume_that_cannot_be_is_refused(bad: float) -> None:
    with pytest.raises(OutsideRange, match="volume measured by water: found .* ml"):
        measured_by_water(bad, hemisphere(0.07))
