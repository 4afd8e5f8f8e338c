from __future__ import annotations

import pytest

from entremetry.adapt.written import time
from entremetry.quantities import parse_duration


@pytest.mark.parametrize("seconds", [300.0, 5400.0, 9900.0, 4900 * 3600.0, 8000 * 3600.0])
def test_a_time_that_is_written_can_be_read_back(seconds: float) -> None:
    assert parse_duration(time(seconds)) == pytest.approx(seconds)
