"""Laws of heat that hold for any food, body and surroundings."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from entremetry.physics import (
    Composition,
    Food,
    Part,
    density,
    food_material,
    ice_fraction,
    mixing_temperature,
    specific_enthalpy,
)
from entremetry.physics.conduction import Body, Stage, Surroundings, run
from entremetry.physics.effective_conductivity import (
    effective_medium,
    levy,
    maxwell_eucken,
    parallel,
    series,
)
from properties.strategies_physics import bodies, compositions, foods, surroundings

COLD = np.linspace(233.15, 313.15, 161)


@given(foods())
@settings(max_examples=40)
def test_enthalpy_rises_and_ice_falls_with_temperature(food: Food) -> None:
    assert np.all(np.diff(specific_enthalpy(food, COLD)) > 0.0)
    ice = ice_fraction(food, COLD)
    assert np.all(np.diff(ice) <= 1e-12)
    assert np.all((ice >= 0.0) & (ice <= food.composition.water))


@given(foods())
@settings(max_examples=25)
def test_materials_invert(food: Food) -> None:
    made = food_material("any", food)
    assert np.max(np.abs(made.temperature(made.enthalpy(COLD)) - COLD)) < 1e-9
    assert np.all(made.conductivities > 0.0)


@given(compositions(), st.floats(0.0, 0.9))
def test_air_only_dilutes(composition: Composition, air: float) -> None:
    dense = density(composition, 293.15)
    assert density(composition, 293.15, air) == pytest.approx(dense * (1.0 - air))
    assert 800.0 < dense < 2500.0


@given(st.floats(0.01, 5.0), st.floats(0.01, 5.0), st.floats(0.0, 1.0))
def test_every_model_lies_between_series_and_parallel(a: float, b: float, e: float) -> None:
    low, high = float(series(a, b, e)), float(parallel(a, b, e))
    for model in (maxwell_eucken, effective_medium, levy):
        assert low * (1.0 - 1e-9) <= float(model(a, b, e)) <= high * (1.0 + 1e-9)


@given(bodies(), surroundings(), surroundings(), st.floats(-35.0, 30.0), st.floats(-35.0, 30.0))
@settings(max_examples=25, deadline=None)
def test_heat_is_kept_and_nothing_is_not_a_number(
    body: Body, base: Surroundings, skin: Surroundings, outer: float, inner: float
) -> None:
    start = {"body": outer + 273.15, "insert": inner + 273.15}
    stage = Stage(surroundings={"base": base, "skin": skin}, duration=5400.0)
    history = run(body, start, [stage])
    assert np.all(np.isfinite(history.values))
    assert history.balance_error < 1e-10


@given(bodies(), st.floats(-35.0, 30.0), st.floats(-35.0, 30.0), st.floats(2.0, 100.0))
@settings(max_examples=20, deadline=None)
def test_no_place_passes_the_warmest_or_the_coldest_around(
    body: Body, start: float, around: float, coefficient: float
) -> None:
    """Maximum principle, with half a kelvin for the splitting of the axes."""
    air = Surroundings(temperature=around + 273.15, coefficient=coefficient)
    stage = Stage(surroundings={"base": air, "skin": air}, duration=7200.0)
    history = run(body, {"body": start + 273.15, "insert": start + 273.15}, [stage])
    low, high = sorted((start + 273.15, around + 273.15))
    assert history.curve("coldest").min() > low - 0.5
    assert history.curve("warmest").max() < high + 0.5
    assert abs(history.curve("mean")[-1] - around - 273.15) <= abs(start - around) + 0.02


@given(foods(), foods(), st.floats(0.1, 3.0), st.floats(240.0, 360.0), st.floats(240.0, 360.0))
@settings(max_examples=30)
def test_a_mix_keeps_its_heat(
    one: Food, two: Food, mass: float, first: float, second: float
) -> None:
    def heat(food: Food):
        return lambda t: float(specific_enthalpy(food, np.asarray(t, dtype=float)))

    parts = [
        Part(mass=1.0, temperature=first, enthalpy=heat(one)),
        Part(mass=mass, temperature=second, enthalpy=heat(two)),
    ]
    mix = mixing_temperature(parts)
    before = sum(p.mass * p.enthalpy(p.temperature) for p in parts)
    after = sum(p.mass * p.enthalpy(mix) for p in parts)
    assert after == pytest.approx(before, abs=1e-2)
    assert min(first, second) <= mix <= max(first, second)
