from __future__ import annotations

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.physics.bowl import Bowl, Liquid, Room, cool

CUSTARD = Liquid(mass=0.35, heat_capacity=3600.0, water_activity=0.97)
ROOM = Room(temperature=294.15)
PAN = Bowl(opening=0.031, coefficient=6.0)


def minutes(bowl: Bowl, end: float = 318.15, start: float = 356.15) -> float:
    found = cool(CUSTARD, bowl, ROOM, start, end)
    assert found.reached
    return float(found.times[-1]) / 60.0


def test_a_small_custard_stirred_in_a_wide_pan_takes_some_minutes() -> None:
    """Common practice, no source: about 45 °C in 4 to 5 min off the heat.

    200 g in a 20 cm pan, air moved by the stirring (8 W/(m2 K)), the pan's outside in air.
    """
    small = Liquid(mass=0.2, heat_capacity=3600.0, water_activity=0.97)
    pan = Bowl(opening=0.0314, coefficient=8.0, wall=0.05, wall_coefficient=9.0)
    found = cool(small, pan, ROOM, 356.15, 318.15)
    assert 3.0 < float(found.times[-1]) / 60.0 < 7.0


def test_an_ice_bath_is_faster_and_a_lid_is_slower() -> None:
    bath = Bowl(opening=0.031, coefficient=6.0, wall=0.06, wall_coefficient=200.0, bath=273.15)
    lid = Bowl(opening=0.031, coefficient=6.0, lid=True)
    assert minutes(bath) < 0.4 * minutes(PAN)
    assert minutes(lid) > 2.0 * minutes(PAN)


def test_syrup_evaporates_less() -> None:
    syrup = Liquid(mass=0.35, heat_capacity=3600.0, water_activity=0.7)
    slow = cool(syrup, PAN, ROOM, 356.15, 318.15)
    assert float(slow.times[-1]) / 60.0 > 1.1 * minutes(PAN)


def test_below_the_room_is_never() -> None:
    closed = Bowl(opening=0.031, lid=True)
    found = cool(CUSTARD, closed, ROOM, 320.15, 285.15)
    assert not found.reached
    assert found.reason.startswith(("never", "not within"))
    assert np.all(np.isfinite(found.temperatures))


def test_no_way_for_heat_is_never() -> None:
    found = cool(CUSTARD, Bowl(opening=0.0), ROOM, 350.15, 320.15)
    assert found.reason.startswith("never")


def test_warming_in_a_room() -> None:
    cold = cool(CUSTARD, Bowl(opening=0.031, lid=True), ROOM, 277.15, 288.15)
    assert cold.reached
    assert np.all(np.diff(cold.temperatures) > 0.0)


def test_temperatures_on_the_way_have_their_times() -> None:
    found = cool(CUSTARD, PAN, ROOM, 356.15, 318.15)
    assert 0.0 < found.time_at(333.15) < float(found.times[-1])
    with pytest.raises(OutsideRange):
        found.time_at(300.0)


@pytest.mark.parametrize("value", [float("nan"), 1000.0, 100.0])
def test_impossible_temperatures_are_refused(value: float) -> None:
    with pytest.raises(OutsideRange):
        cool(CUSTARD, PAN, ROOM, 350.15, value)


def test_impossible_liquids_and_bowls_are_refused() -> None:
    with pytest.raises(OutsideRange):
        Liquid(mass=0.0, heat_capacity=4000.0)
    with pytest.raises(OutsideRange):
        Liquid(mass=1.0, heat_capacity=4000.0, water_activity=1.2)
    with pytest.raises(OutsideRange):
        Bowl(opening=-1.0)
    with pytest.raises(OutsideRange):
        Room(temperature=293.15, humidity=1.5)
