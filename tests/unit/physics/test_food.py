from __future__ import annotations

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.physics.component_heat_capacity import component_enthalpy, component_heat_capacity
from entremetry.physics.composition import Composition
from entremetry.physics.effective_conductivity import effective_medium, maxwell_eucken
from entremetry.physics.food import (
    Food,
    Structure,
    conductivity,
    food_material,
    ice_fraction,
    specific_enthalpy,
)
from entremetry.physics.humid_air import dew_point, frost_pressure, saturation_pressure
from entremetry.physics.liquidus import dilute_liquidus
from entremetry.physics.melting_fat import COCOA_BUTTER, MILK_FAT, MeltingFat

MOUSSE = Composition(water=0.55, protein=0.04, fat=0.22, carbohydrate=0.18, ash=0.01)


def mousse(air: float = 0.4, structure: Structure = Structure.FOAM) -> Food:
    return Food(composition=MOUSSE, liquidus=dilute_liquidus(270.15), air=air, structure=structure)


def test_ice_of_the_mousse_at_minus_20() -> None:
    ice = float(ice_fraction(mousse(), np.array(253.15)))
    assert ice == pytest.approx((0.55 - 0.016) * 17.0 / 20.0)


def test_foam_lies_between_open_medium_and_maxwell_eucken() -> None:
    """Carson's bounds; our estimate for the mousse is near 0.224 W/(m K) at 4 °C."""
    dense = float(conductivity(mousse(0.0), np.array(277.15)))
    found = float(conductivity(mousse(), np.array(277.15)))
    assert float(effective_medium(dense, 0.0246, 0.4)) <= found
    assert found == pytest.approx(float(maxwell_eucken(dense, 0.0246, 0.4)), rel=2e-3)
    assert found == pytest.approx(0.224, abs=0.012)


def test_open_crumb_conducts_less_than_foam_when_cold() -> None:
    t = np.array(255.15)
    assert conductivity(mousse(0.7, Structure.CRUMB), t) < conductivity(mousse(0.7), t)


def test_moist_crumb_conducts_more_when_warm() -> None:
    t = np.array([278.15, 338.15])
    crumb = conductivity(mousse(0.7, Structure.CRUMB), t)
    assert crumb[1] > 1.5 * crumb[0]


def test_frozen_food_conducts_more() -> None:
    k = conductivity(mousse(), np.linspace(234.0, 270.0, 30))
    assert np.all(np.diff(k) < 0.0)


def test_enthalpy_is_continuous_at_the_freezing_point_and_at_zero() -> None:
    for t in (270.15, 273.15):
        step = np.diff(specific_enthalpy(mousse(), np.array([t - 1e-9, t + 1e-9])))
        assert abs(float(step[0])) < 1e-3


def test_component_enthalpy_is_the_integral_of_heat_capacity() -> None:
    t = np.linspace(233.15, 423.15, 4001)
    for heat, capacity in zip(component_enthalpy(t), component_heat_capacity(t), strict=True):
        steps = 0.5 * (capacity[1:] + capacity[:-1]) * np.diff(t)
        assert float(np.sum(steps)) == pytest.approx(float(heat[-1] - heat[0]), rel=2e-5)


def test_cocoa_butter_takes_its_latent_heat() -> None:
    bar = Composition(fat=0.4, carbohydrate=0.5, protein=0.1)
    plain = Food(composition=bar)
    melting = Food(composition=bar, melting_fats={COCOA_BUTTER: 0.36})
    t = np.array([283.15, 313.15])
    gain = np.diff(specific_enthalpy(melting, t)) - np.diff(specific_enthalpy(plain, t))
    assert float(gain[0]) == pytest.approx(0.36 * 157e3 * 0.90)


def test_milk_fat_is_all_liquid_at_40() -> None:
    assert float(MILK_FAT.solid_fraction(313.15)) == 0.0


def test_material_of_a_food_inverts_and_carries_its_freezing_point() -> None:
    made = food_material("mousse", mousse())
    t = np.linspace(233.15, 373.0, 999)
    assert np.max(np.abs(made.temperature(made.enthalpy(t)) - t)) < 1e-9
    assert made.freezing_point == 270.15


@pytest.mark.parametrize("air", [-0.1, 1.0, float("nan")])
def test_impossible_air_is_refused(air: float) -> None:
    with pytest.raises(OutsideRange):
        mousse(air)


def test_fractions_must_make_a_whole() -> None:
    with pytest.raises(OutsideRange):
        Composition(water=0.5, fat=0.2)
    with pytest.raises(OutsideRange):
        Composition(water=1.2, fat=-0.2)


def test_more_melting_fat_than_fat_is_refused() -> None:
    with pytest.raises(OutsideRange):
        Food(composition=MOUSSE, melting_fats={MILK_FAT: 0.3})


def test_a_fat_that_sets_on_warming_is_refused() -> None:
    with pytest.raises(OutsideRange):
        MeltingFat(latent_heat=1e5, temperatures=(280.0, 300.0), solid=(0.1, 0.9))


def test_dew_point_of_a_room() -> None:
    """20 °C and 50 % relative humidity: 9.27 °C by the steam tables."""
    assert dew_point(293.15, 0.5) - 273.15 == pytest.approx(9.27, abs=0.02)


def test_ice_and_water_share_the_pressure_at_zero() -> None:
    assert float(frost_pressure(273.15)) == pytest.approx(float(saturation_pressure(273.15)))
    assert float(frost_pressure(253.15)) < float(saturation_pressure(253.15))
