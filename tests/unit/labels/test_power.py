"""The estimate of energy, by hand."""

from __future__ import annotations

import pytest

from entremetry.labels.power import baking_energy, batch_energy, freezing_energy
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


def test_a_batch_bakes_its_crumble_and_freezes_its_mousse() -> None:
    reckoning = reckoned(DOCUMENT, "d", surroundings(None, "k"))
    required = reckoning.requirements(6)
    made = reckoning.makings["mousse"].mix
    frozen = freezing_energy(made.mass, made.constituents.water) * required["mousse"].factor
    assert batch_energy(reckoning, required) == pytest.approx(baking_energy(1200.0) + frozen)
