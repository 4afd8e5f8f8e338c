"""A figure's interval lies evenly around its value."""

from __future__ import annotations

import pytest

from entremetry.sources import Figure


def test_the_interval_is_relative_to_the_value() -> None:
    density = Figure(value=500.0, unit="kg/m3", because="weighed", relative_error=0.1)
    assert (density.low, density.high) == pytest.approx((450.0, 550.0))


def test_a_figure_without_error_is_a_point() -> None:
    exact = Figure(value=2.0, unit="kg", because="given")
    assert exact.low == exact.value == exact.high
