"""How warm things are when a step begins."""

from __future__ import annotations

import pytest

from entremetry.method.step import AnyStep
from entremetry.timings.start import BOILING, ready_temperature, stated_temperature
from timed_desserts import reckoning_of

STEPS = {c.id: c.steps for c in reckoning_of().dessert.components}


def test_a_frozen_insert_comes_frozen() -> None:
    temperature, how = ready_temperature(STEPS["heart"])
    assert temperature == pytest.approx(261.15)
    assert how == "frozen before"


def test_what_was_baked_has_the_temperature_of_the_room() -> None:
    assert ready_temperature(STEPS["crust"], 295.15) == (295.15, "baked and cooled to the room")


def test_a_glaze_has_what_it_was_cooled_to() -> None:
    temperature, how = ready_temperature(STEPS["glaze"])
    assert temperature == pytest.approx(305.15)
    assert how == "as it was cooled"


@pytest.mark.parametrize("steps", [(), STEPS["heart"][:1]])
def test_without_a_temperature_it_is_the_room(steps: tuple[AnyStep, ...]) -> None:
    assert ready_temperature(steps, 296.15) == (296.15, "at the room's temperature")
    assert stated_temperature(steps) is None


def test_a_simmer_boils() -> None:
    assert stated_temperature(STEPS["mousse"][:2]) == BOILING
