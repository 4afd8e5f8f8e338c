from __future__ import annotations

import math

import pytest

from entremetry.errors import OutsideRange
from entremetry.physics.heat_dimensions import heat_dimensions

BAD = [math.nan, math.inf, -math.inf, -1.0, 0.0]


@pytest.mark.parametrize("biot", [0.01, 1.0, 100.0])
def test_a_sphere_has_three_dimensions_a_long_cylinder_two_and_a_wide_slab_one(biot: float) -> None:
    half = 0.02
    circle = math.pi * half**2
    assert heat_dimensions(half, circle, 4.0 / 3.0 * circle * half, biot) == pytest.approx(3.0)
    assert heat_dimensions(half, circle, 1e6 * circle, biot) == pytest.approx(2.0, abs=1e-5)
    length = 1e4
    slab = heat_dimensions(half, 2.0 * half * length, 2.0 * half * length**2, biot)
    assert slab == pytest.approx(1.0, abs=1e-3)


def test_the_less_heat_the_surface_passes_the_more_its_area_counts() -> None:
    half, section, volume = 0.0175, math.pi * 0.035**2 / 2.0, 2.0 / 3.0 * math.pi * 0.035**3
    found = [heat_dimensions(half, section, volume, biot) for biot in (0.01, 1.0, 100.0)]
    assert 1.0 < found[2] < found[1] < found[0] < 2.25  # surface times half over volume


@pytest.mark.parametrize("bad", BAD)
@pytest.mark.parametrize("place", range(4))
def test_a_body_has_sizes(bad: float, place: int) -> None:
    sizes = [0.02, 1e-3, 1e-4, 1.0]
    sizes[place] = bad
    with pytest.raises(OutsideRange):
        heat_dimensions(*sizes)
