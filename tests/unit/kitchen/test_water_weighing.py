"""A mould measured with water: by the jug or on the scales."""

from __future__ import annotations

import pytest

from entremetry.errors import QuantityError
from entremetry.kitchen.water_weighing import water_volume


@pytest.mark.parametrize(
    ("text", "millilitres"), [("75 ml", 75.0), ("1.2 l", 1200.0), ("998.2 g", 1000.0)]
)
def test_volume_of_the_water(text: str, millilitres: float) -> None:
    assert water_volume(text) * 1e6 == pytest.approx(millilitres)


@pytest.mark.parametrize("text", ["75", "75 mm", "-75 ml", "0 g", "full"])
def test_what_is_no_water_is_refused(text: str) -> None:
    with pytest.raises(QuantityError, match="a volume"):
        water_volume(text)
