"""The estimate of energy, by hand."""

from __future__ import annotations

import pytest

from entremetry.errors import OutsideRange
from entremetry.labels import power
from entremetry.labels.power import baking_energy, batch_energy, freezing_energy, stages
from entremetry.method.cooking import CoolTo
from entremetry.method.waiting import FreezeUntil
from entremetry.usecases.batch import reckoned, surroundings

DOCUMENT = """entremetry: 1
id: dome
name: Dome
pieces: 6
mould: hemisphere-70
components:
  mousse: {name: Mousse, kind: mousse, formula: {cream-35: 100 g}}
  crumble:
    name: Crumble
    kind: crumble
    formula: {plain-flour: 50 g, butter-unsalted: 50 g}
    method: [{step: bake, at: 160 °C, loss: 5 %, time: 20 min}]
placement:
  - {component: mousse, as: filling}
  - {component: crumble, as: garnish, mass: 5 g}
assembly: [{step: fill}, {step: freeze-until, time: 6 h}]
"""


def test_an_oven_is_heated_for_a_quarter_of_an_hour_and_then_runs_at_half_power() -> None:
    assert baking_energy(1200.0) == pytest.approx(2500.0 * (900.0 + 600.0))


def test_freezing_takes_the_warmth_and_the_ice_out() -> None:
    heat = 1.0 * 3.0e3 * 38.0 + 0.6 * 0.75 * 334e3
    assert freezing_energy(1.0, 0.6) == pytest.approx(heat / 1.5)


def test_the_heat_of_freezing_water_is_that_of_the_tables() -> None:
    # 4.19 kJ/(kg K) x 20 K + 334 kJ/kg + 2.05 kJ/(kg K) x 18 K = 455 kJ/kg, for 1.5 times the work
    text = DOCUMENT.replace("{cream-35: 100 g}", "{water: 100 g}")
    reckoning = reckoned(text, "d", surroundings(None, "k"))
    required = reckoning.requirements(6)
    mass = reckoning.makings["mousse"].mix.mass * required["mousse"].factor
    found = batch_energy(reckoning, required)
    frozen = found.joules - baking_energy(1200.0)
    assert frozen == pytest.approx(mass * 455e3 / 1.5, rel=0.03)
    assert "computed from its composition" in found.because


def test_a_mousse_gives_off_less_than_water_and_about_what_the_rule_of_thumb_says() -> None:
    reckoning = reckoned(DOCUMENT, "d", surroundings(None, "k"))
    required = reckoning.requirements(6)
    made = reckoning.makings["mousse"].mix
    thumb = freezing_energy(made.mass, made.constituents.water) * required["mousse"].factor
    frozen = batch_energy(reckoning, required).joules - baking_energy(1200.0)
    assert frozen == pytest.approx(thumb, rel=0.25)


def test_a_component_frozen_before_is_not_frozen_twice() -> None:
    freeze = FreezeUntil.model_construct(step="freeze-until", temperature=258.15)
    last = FreezeUntil.model_construct(step="freeze-until", temperature=255.15)
    cool = CoolTo.model_construct(step="cool-to", temperature=298.15)
    assert stages((cool, freeze), (last,), filled=True) == ((298.15, 258.15), (258.15, 255.15))
    assert stages((cool,), (last,), filled=True) == ((298.15, 255.15),)
    assert stages((cool,), (last,), filled=False) == ()


def test_what_cannot_be_computed_goes_by_the_rule_of_thumb_and_says_so(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def outside(*args: object) -> None:
        raise OutsideRange("no food")

    monkeypatch.setattr(power, "component_food", outside)
    reckoning = reckoned(DOCUMENT, "d", surroundings(None, "k"))
    required = reckoning.requirements(6)
    made = reckoning.makings["mousse"].mix
    frozen = freezing_energy(made.mass, made.constituents.water) * required["mousse"].factor
    found = batch_energy(reckoning, required)
    assert found.joules == pytest.approx(baking_energy(1200.0) + frozen)
    assert "rule of thumb" in found.because and "Mousse" in found.because
