"""Water activity and freezing points of mixed solutions, over their whole range."""

from __future__ import annotations

import math

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.physics.solution import (
    DEXTRIN,
    ETHANOL,
    FRUCTOSE,
    GLUCOSE,
    ICE,
    MILK_SALT,
    SUCROSE,
    Solute,
    freezing_point,
    ice_activity,
    water_activity,
)


@pytest.mark.parametrize("solute", [SUCROSE, GLUCOSE, FRUCTOSE, ETHANOL, DEXTRIN, MILK_SALT])
def test_the_more_is_dissolved_the_colder_it_freezes(solute: Solute) -> None:
    most = 0.3 * solute.molar_mass / 0.018015
    points = [freezing_point({solute: mass}, 1.0) for mass in np.linspace(0.0, most, 30)]
    assert points[0] == pytest.approx(273.15, abs=1e-9)
    assert np.all(np.diff(points) < 0.0)


@pytest.mark.parametrize("temperature", np.linspace(204.0, 273.1, 12).tolist())
def test_a_freezing_point_is_where_both_activities_agree(temperature: float) -> None:
    wanted = ice_activity(temperature)
    low, high = 0.0, 0.9 * SUCROSE.molar_mass / 0.018015
    for _ in range(80):
        middle = (low + high) / 2.0
        activity = water_activity({SUCROSE: middle}, 1.0)
        low, high = (middle, high) if activity > wanted else (low, middle)
    assert freezing_point({SUCROSE: low}, 1.0) == pytest.approx(temperature, abs=1e-8)


def test_ice_activity_rises_to_one() -> None:
    values = [ice_activity(t) for t in np.linspace(ICE.low, ICE.high, 200)]
    assert np.all(np.diff(values) > 0.0)
    assert values[-1] == 1.0


def test_for_dilute_solutions_moles_alone_count() -> None:
    """Blagden: 1.86 K for each mole of particles in a kilogram of water."""
    for solute in (SUCROSE, GLUCOSE, ETHANOL):
        depression = 273.15 - freezing_point({solute: 0.01 * solute.molar_mass}, 1.0)
        assert depression == pytest.approx(0.0186, rel=0.01)


@pytest.mark.parametrize(
    ("dissolved", "water"),
    [
        ({SUCROSE: -0.1}, 1.0),
        ({SUCROSE: math.nan}, 1.0),
        ({SUCROSE: 0.1}, 0.0),
        ({SUCROSE: 0.1}, math.nan),
        ({ETHANOL: 5.0}, 1.0),
    ],
)
def test_what_is_no_solution_is_refused(dissolved: dict[Solute, float], water: float) -> None:
    with pytest.raises(OutsideRange):
        freezing_point(dissolved, water)


@pytest.mark.parametrize("temperature", [203.0, 273.2, math.nan])
def test_ice_has_its_range(temperature: float) -> None:
    with pytest.raises(OutsideRange):
        ice_activity(temperature)
