"""The mean molar mass of a starch syrup falls as its dextrose equivalent rises."""

from __future__ import annotations

import pytest

from entremetry.errors import OutsideRange
from entremetry.larder import mean_molar_mass
from entremetry.larder.syrup import RANGE


def test_pure_glucose_has_its_own_molar_mass() -> None:
    assert mean_molar_mass(100.0) == pytest.approx(0.18016)


def test_it_falls_over_the_whole_range() -> None:
    masses = [mean_molar_mass(float(de)) for de in range(1, 101)]
    assert masses == sorted(masses, reverse=True)


@pytest.mark.parametrize("value", [RANGE.low - 0.01, RANGE.high + 0.01, float("nan")])
def test_outside_the_range_it_is_refused(value: float) -> None:
    with pytest.raises(OutsideRange):
        mean_molar_mass(value)
