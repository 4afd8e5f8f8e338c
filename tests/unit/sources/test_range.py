"""A range covers its ends, and refuses with the words a person needs."""

from __future__ import annotations

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.sources import Range

WARM = Range("temperature", 273.15, 423.15, "K", "choi_okos_1986")


@pytest.mark.parametrize("inside", [273.15, 300.0, 423.15, np.array([273.15, 423.15])])
def test_both_ends_are_covered(inside: object) -> None:
    assert WARM.covers(inside)
    WARM.require(inside)


@pytest.mark.parametrize("outside", [273.1, 423.2, float("nan"), float("inf")])
def test_what_lies_outside_is_refused(outside: float) -> None:
    assert not WARM.covers(outside)
    with pytest.raises(OutsideRange):
        WARM.require(outside)


def test_one_value_outside_condemns_an_array() -> None:
    assert not WARM.covers(np.array([300.0, 500.0]))


def test_the_refusal_names_quantity_limits_and_source() -> None:
    with pytest.raises(OutsideRange, match=r"temperature 500.* K .*273\.15 to 423\.15 K"):
        WARM.require(500.0)
