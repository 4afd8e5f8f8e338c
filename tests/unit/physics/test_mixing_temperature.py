from __future__ import annotations

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.physics.composition import Composition
from entremetry.physics.food import Food, specific_enthalpy
from entremetry.physics.melting_fat import COCOA_BUTTER
from entremetry.physics.mixing_temperature import (
    Part,
    constant_heat,
    mixing_temperature,
    temperature_needed,
)
from entremetry.physics.reduction import mass_at_solids, reduce

WATER = constant_heat(4180.0)


def test_equal_parts_meet_in_the_middle() -> None:
    parts = [Part(mass=1.0, temperature=t, enthalpy=WATER) for t in (283.15, 313.15)]
    assert mixing_temperature(parts) == pytest.approx(298.15, abs=1e-8)


def test_a_warm_base_and_cold_cream() -> None:
    """Common practice, no source: base at 40 to 45 °C, cream at 6 °C, mix about 30 °C or less."""
    base = Part(mass=0.30, temperature=315.15, enthalpy=constant_heat(2900.0))
    cream = Part(mass=0.25, temperature=279.15, enthalpy=constant_heat(3300.0))
    mix = mixing_temperature([base, cream])
    assert 297.15 < mix < 303.15
    assert temperature_needed([cream], base, mix) == pytest.approx(315.15, abs=1e-6)


def test_solid_chocolate_cools_a_custard_more_by_melting() -> None:
    bar = Composition(fat=0.4, carbohydrate=0.5, protein=0.1)

    def heat(food: Food):
        return lambda t: float(specific_enthalpy(food, np.asarray(t, dtype=float)))

    custard = Part(mass=0.3, temperature=355.15, enthalpy=constant_heat(3600.0))
    plain, melting = (
        mixing_temperature([custard, Part(mass=0.2, temperature=293.15, enthalpy=heat(food))])
        for food in (Food(composition=bar), Food(composition=bar, melting_fats={COCOA_BUTTER: 0.4}))
    )
    assert plain - melting > 5.0


def test_what_cannot_be_reached_is_refused() -> None:
    cream = Part(mass=1.0, temperature=279.15, enthalpy=WATER)
    drop = Part(mass=0.01, temperature=300.0, enthalpy=WATER)
    with pytest.raises(OutsideRange):
        temperature_needed([cream], drop, 313.15)
    with pytest.raises(OutsideRange):
        mixing_temperature([])
    with pytest.raises(OutsideRange):
        Part(mass=-1.0, temperature=300.0, enthalpy=WATER)


def test_boiling_a_syrup_down_to_its_solids() -> None:
    left = mass_at_solids(1.0, 0.4, 0.6)
    assert left == pytest.approx(2.0 / 3.0)
    done = reduce(1.0, left, 900.0)
    assert done.evaporated == pytest.approx(1.0 / 3.0)
    assert done.time == pytest.approx(done.heating_time + done.boiling_time)


@pytest.mark.parametrize(
    ("mass", "end", "power"), [(1.0, 1.2, 900.0), (1.0, 0.5, 0.0), (0.0, 0.0, 900.0)]
)
def test_impossible_reductions_are_refused(mass: float, end: float, power: float) -> None:
    with pytest.raises(OutsideRange):
        reduce(mass, end, power)


def test_losses_that_eat_the_power_are_never() -> None:
    with pytest.raises(OutsideRange, match="never"):
        reduce(1.0, 0.5, 300.0, losses=300.0)


def test_solids_do_not_fall_by_boiling() -> None:
    with pytest.raises(OutsideRange):
        mass_at_solids(1.0, 0.6, 0.4)
