"""Laws of the times that whole steps take, whatever the numbers."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from entremetry.errors import EntremetryError
from entremetry.physics.material import constant_material
from entremetry.shapes import Solid
from entremetry.timings.piece_body import alone, piece_body
from entremetry.timings.step_temperatures import StepTemperatures
from properties.strategies_shapes import SOLIDS
from timed_desserts import told

FREEZE = "id: freeze, temperature: -12 °C"
THAW = "id: thaw, temperature: -2 °C, where: fridge, on: glass shelf"
STUFF = {"soft": constant_material("soft", 0.4, 3e6)}
CELSIUS = st.integers(-39, 60)
SUPPORT = st.sampled_from(["metal shelf", "wire shelf", "glass shelf", "board", "box"])


def sound(answer: StepTemperatures) -> None:
    """No NaN anywhere, ends around the middle, and a reason where there is no time."""
    assert math.isfinite(answer.balance_error)
    for curve in answer.curves:
        assert np.isfinite(curve.times).all() and np.isfinite(curve.temperatures).all()
    for fact in answer.facts:
        assert math.isfinite(fact.value)
    if answer.time is None:
        assert answer.reason and answer.low is None and answer.high is None
        return
    assert answer.low is not None and 0.0 <= answer.low <= answer.time
    assert answer.high is None or answer.time <= answer.high < math.inf


@settings(max_examples=15)
@given(CELSIUS, st.sampled_from(["freezer", "blast freezer", "fridge", "room"]), SUPPORT)
def test_freezing_always_ends_in_a_time_or_a_reason(celsius: int, where: str, on: str) -> None:
    sound(
        told("freeze", (FREEZE, f"id: freeze, temperature: {celsius} °C, where: {where}, on: {on}"))
    )


@settings(max_examples=15)
@given(CELSIUS, st.sampled_from(["freezer", "fridge", "room"]), SUPPORT)
def test_thawing_always_ends_in_a_time_or_a_reason(celsius: int, where: str, on: str) -> None:
    sound(told("thaw", (THAW, f"id: thaw, temperature: {celsius} °C, where: {where}, on: {on}")))


@settings(max_examples=25)
@given(st.integers(-30, 110), st.booleans(), st.booleans(), st.sampled_from(["room", "fridge"]))
def test_cooling_ends_in_a_time_a_reason_or_a_refusal(
    celsius: int, covered: bool, ice: bool, where: str
) -> None:
    step = (
        f"id: cool-heart, temperature: {celsius} °C, covered: {str(covered).lower()}, "
        f"ice_bath: {str(ice).lower()}, where: {where}"
    )
    try:
        answer = told("cool-heart", ("id: cool-heart, temperature: 30 °C", step))
    except EntremetryError as error:
        assert "nan" not in str(error)
        return
    sound(answer)


@settings(max_examples=10)
@given(st.integers(20, 55))
def test_pouring_ends_in_a_film_or_a_refusal(celsius: int) -> None:
    step = ("id: glaze-it, temperature: 30 °C", f"id: glaze-it, temperature: {celsius} °C")
    try:
        sound(told("glaze-it", step))
    except EntremetryError as error:
        assert not 23 <= celsius <= 50, error


@settings(max_examples=60)
@given(SOLIDS)
def test_a_body_keeps_the_volume_of_its_shape(solid: Solid) -> None:
    body = piece_body(alone(solid, "soft", "Soft"), STUFF).body
    assert body.volume == pytest.approx(solid.volume, rel=1e-2)
    assert (body.skin.area >= 0.0).all()
