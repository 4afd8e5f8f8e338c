"""Surface coefficients, dew, bowls and boiling against published formulas and numbers."""

from __future__ import annotations

import numpy as np
import pytest

from entremetry.physics.bowl import Bowl, Liquid, Room, cool, loss
from entremetry.physics.condensation import deposit
from entremetry.physics.conduction.surface import moisture
from entremetry.physics.conduction.surroundings import Surroundings
from entremetry.physics.convection import (
    forced_sphere,
    natural_level,
    natural_sphere,
    natural_wall,
    rayleigh,
    sphere_nusselt,
)
from entremetry.physics.radiation import radiative_coefficient
from entremetry.physics.reduction import reduce

ZERO = 273.15


def test_churchills_sphere_by_the_library() -> None:
    """Its documented example: Pr 0.7, Gr 1e7 gives 25.670869."""
    from ht import Nu_sphere_Churchill  # type: ignore[import-untyped]

    assert sphere_nusselt(0.7, 0.7e7) == pytest.approx(25.670869, rel=1e-7)
    for ra in np.logspace(2, 10, 9):
        theirs = Nu_sphere_Churchill(0.71, ra / 0.71)
        assert sphere_nusselt(0.71, float(ra)) == pytest.approx(theirs, rel=1e-12)


@pytest.mark.parametrize(
    ("surface", "air", "diameter", "convection", "radiation"),
    [
        (20, -18, 0.10, 5.897, 4.461),
        (-5, -18, 0.10, 4.640, 3.862),
        (-5, -18, 0.16, 4.053, 3.862),
        (20, 4, 0.10, 4.779, 5.000),
        (20, 4, 0.16, 4.159, 5.000),
        (10, 4, 0.10, 3.852, 4.738),
        (0, 20, 0.10, 5.036, 4.898),
    ],
)
def test_sphere_in_still_air(
    surface: float, air: float, diameter: float, convection: float, radiation: float
) -> None:
    """Churchill's sphere with the library's air at the film temperature, emissivity 0.95."""
    found = natural_sphere(surface + ZERO, air + ZERO, diameter)
    assert found == pytest.approx(convection, rel=0.01)
    glow = radiative_coefficient(surface + ZERO, air + ZERO)
    assert glow == pytest.approx(radiation, abs=6e-4)


def test_wall_and_disc_in_still_air() -> None:
    """Churchill and Chu, 5 cm; cold disc of 12 cm facing up: 0.27 Ra^(1/4)."""
    assert natural_wall(20 + ZERO, -18 + ZERO, 0.05) == pytest.approx(7.288, rel=0.01)
    area, edge = np.pi * 0.06**2, np.pi * 0.12
    assert rayleigh(4 + ZERO, 20 + ZERO, 0.03) == pytest.approx(5.092e4, rel=0.02)
    cold_up = natural_level(4 + ZERO, 20 + ZERO, area, edge, faces_up=True)
    assert cold_up == pytest.approx(3.417, rel=0.01)


def test_the_way_a_plate_faces_is_a_factor_of_two() -> None:
    area, edge = np.pi * 0.06**2, np.pi * 0.12
    up = natural_level(4 + ZERO, 20 + ZERO, area, edge, faces_up=True)
    down = natural_level(4 + ZERO, 20 + ZERO, area, edge, faces_up=False)
    hot_up = natural_level(20 + ZERO, 4 + ZERO, area, edge, faces_up=True)
    assert down == pytest.approx(2.0 * up, rel=1e-9)
    assert hot_up == pytest.approx(down, rel=1e-9)


@pytest.mark.parametrize(
    ("speed", "small", "large"),
    [(1, 12.8, 10.3), (2, 18.7, 15.3), (3, 23.5, 19.2), (5, 31.5, 25.7)],
)
def test_sphere_in_a_blast(speed: float, small: float, large: float) -> None:
    """Whitaker, wall -10, air -25 °C, 10 and 16 cm."""
    assert forced_sphere(263.15, 248.15, 0.10, speed) == pytest.approx(small, rel=0.015)
    assert forced_sphere(263.15, 248.15, 0.16, speed) == pytest.approx(large, rel=0.015)


@pytest.mark.parametrize(
    ("celsius", "grams", "watts"),
    [(8, 10.8, 7.4), (4, 39.5, 27.3), (0, 61.8, 42.9), (-10, 100.3, 78.9), (-18, 115.0, 90.5)],
)
def test_dew_and_frost_in_a_room(celsius: float, grams: float, watts: float) -> None:
    """20 °C, 50 %, convective 4.5 W/(m2 K), Lewis number 0.865; theirs with the steam tables."""
    found = deposit(celsius + ZERO, 293.15, 0.5, 4.5)
    assert found.mass_flux * 3.6e6 == pytest.approx(grams, rel=0.03, abs=0.5)
    assert found.heat_flux == pytest.approx(watts, rel=0.03, abs=0.35)
    assert found.frost == (celsius < 0)


def test_nothing_settles_above_the_dew_point() -> None:
    assert deposit(283.15, 293.15, 0.5, 4.5).mass_flux == 0.0


@pytest.mark.parametrize("celsius", [8.0, 4.0, 0.5, -10.0, -18.0])
def test_the_kernel_has_the_same_dew(celsius: float) -> None:
    air = Surroundings(temperature=293.15, coefficient=4.5, humidity=0.5)
    heat, slope = moisture(air.row(), celsius + ZERO)
    assert heat == pytest.approx(deposit(celsius + ZERO, 293.15, 0.5, 4.5).heat_flux, rel=0.06)
    above = moisture(air.row(), celsius + ZERO + 0.01)[0]
    assert slope == pytest.approx((heat - above) / 0.01, rel=0.02)


CASE = Bowl(
    opening=np.pi * 0.09**2,
    coefficient=5.0,
    emissivity=0.95,
    analogy=0.90,
    air_heat=1.10 * 1007.0,
    drift=False,
    mass_is_lost=False,
)
DRIFTING = Bowl(
    opening=np.pi * 0.09**2,
    coefficient=5.0,
    emissivity=0.95,
    analogy=0.90,
    air_heat=1.10 * 1007.0,
    mass_is_lost=False,
)
CUSTARD = Liquid(mass=0.8, heat_capacity=4180.0)
ROOM = Room(temperature=293.15, humidity=0.5)


@pytest.mark.parametrize(
    ("celsius", "convection", "radiation", "evaporation", "drifting"),
    [
        (80, 300.000, 440.034, 3311.670, 5254.443),
        (60, 200.000, 265.754, 1436.741, 2075.794),
        (40, 100.000, 120.191, 511.260, 754.109),
    ],
)
def test_ways_of_loss(
    celsius: float, convection: float, radiation: float, evaporation: float, drifting: float
) -> None:
    """Worked from the flux law with h 5, emissivity 0.95, 50 % at 20 °C, Le^(2/3) 0.90."""
    found = loss(CUSTARD, CASE, ROOM, celsius + ZERO)
    area = CASE.opening
    assert found.convection / area == pytest.approx(convection, rel=1e-6)
    assert found.radiation / area == pytest.approx(radiation, rel=1e-5)
    assert found.evaporation / area == pytest.approx(evaporation, rel=1e-5)
    total = loss(CUSTARD, DRIFTING, ROOM, celsius + ZERO).total / area
    assert total == pytest.approx(drifting, rel=1e-5)


@pytest.mark.parametrize(
    ("celsius", "time", "grams", "drifting"),
    [
        (60, 959.16, 22.54, 829.13),
        (40, 3213.72, 42.87, 2975.17),
        (35, 4262.16, 47.70, 3995.80),
        (30, 5733.07, 52.54, 5435.64),
    ],
)
def test_custard_in_a_bowl(celsius: float, time: float, grams: float, drifting: float) -> None:
    """0.8 kg in an 18 cm bowl from 80 °C, only the surface loses heat (ODE solved apart)."""
    found = cool(CUSTARD, CASE, ROOM, 353.15, celsius + ZERO)
    assert float(found.times[-1]) == pytest.approx(time, rel=2e-4)
    assert float(found.evaporated[-1]) * 1e3 == pytest.approx(grams, abs=0.01)
    with_drift = cool(CUSTARD, DRIFTING, ROOM, 353.15, celsius + ZERO)
    assert float(with_drift.times[-1]) == pytest.approx(drifting, rel=2e-4)


def test_without_evaporation_it_takes_four_times_as_long() -> None:
    """The same bowl loses 70 to 82 % by evaporation; without it 40 °C is reached at 12 529 s."""
    dry = Liquid(mass=0.8, heat_capacity=4180.0, water_activity=0.0)
    room = Room(temperature=293.15, humidity=0.0)
    found = cool(dry, CASE, room, 353.15, 313.15)
    assert float(found.times[-1]) == pytest.approx(12529.0, rel=1e-3)


def test_boiling_is_limited_by_heat() -> None:
    """1.595 kg/h for a net kilowatt at 2257 kJ/kg."""
    done = reduce(2.0, 2.0 - 1.595, 1000.0, start=373.15)
    assert done.boiling_time == pytest.approx(3600.0, rel=5e-4)
