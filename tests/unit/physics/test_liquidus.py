from __future__ import annotations

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.physics.liquidus import (
    Liquidus,
    dilute_liquidus,
    liquidus,
    raoult_freezing_point,
)


def test_dilute_solution_keeps_the_ratio_of_temperatures() -> None:
    curve = dilute_liquidus(270.15)
    t = np.array([270.15, 267.15, 263.15, 233.15])
    assert curve.liquid_fraction(t) == pytest.approx([1.0, 3.0 / 6.0, 3.0 / 10.0, 3.0 / 40.0])


def test_nothing_freezes_above_the_freezing_point() -> None:
    assert float(dilute_liquidus(270.15).liquid_fraction(280.0)) == 1.0


def test_a_tabled_function_meets_the_function() -> None:
    def law(concentration: float) -> float:
        return raoult_freezing_point(0.03 * concentration)

    curve = liquidus(law)
    assert curve.freezing_point == pytest.approx(law(1.0))
    for concentration in (1.7, 4.3, 9.1):
        found = float(curve.liquid_fraction(law(concentration)))
        assert found == pytest.approx(1.0 / concentration, rel=1e-3)


def test_freezing_stops_where_the_solution_is_a_glass() -> None:
    curve = liquidus(lambda c: 273.15 - 2.0 * c, greatest_concentration=5.0)
    assert float(curve.liquid_fraction(240.0)) == pytest.approx(0.2)


@pytest.mark.parametrize(
    "law", [lambda c: 270.0, lambda c: 274.0 - c * 0.1, lambda c: float("nan"), lambda c: 269.0 + c]
)
def test_functions_that_are_no_freezing_points_are_refused(law: object) -> None:
    with pytest.raises(OutsideRange):
        liquidus(law)  # type: ignore[arg-type]


def test_a_fruit_that_would_freeze_above_zero_is_refused() -> None:
    """A published fit gives +0.45 °C for strawberry; nothing such may enter."""
    with pytest.raises(OutsideRange):
        dilute_liquidus(273.60)


def test_a_table_must_start_with_no_ice() -> None:
    with pytest.raises(OutsideRange):
        Liquidus(np.array([270.0, 260.0]), np.array([1.1, 2.0]))
