"""The books of a making close, whatever the method does."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from entremetry.formula import density, liquid_density
from entremetry.larder.constituents import NAMES
from entremetry.method import make, peaks, scaled_made, scaled_steps, sentences
from properties.strategies_formula import factors
from properties.strategies_method import Recipe, recipes


@given(recipes())
def test_mass_in_is_mass_out_and_losses(recipe: Recipe) -> None:
    made = make(recipe.lines, recipe.steps, component_name="any", kind=recipe.kind)
    lost = sum(change.mass for change in made.changes if change.mass < 0.0)
    assert made.mix.mass == pytest.approx(made.mass_in + lost, abs=1e-12)
    assert made.loss == pytest.approx(-lost, abs=1e-12)


@given(recipes())
def test_mass_in_is_the_lines_and_what_they_took_up(recipe: Recipe) -> None:
    made = make(recipe.lines, recipe.steps, component_name="any", kind=recipe.kind)
    gained = sum(change.mass for change in made.changes if change.mass > 0.0)
    weighed = sum(line.mass for line in recipe.lines.values())
    assert made.mass_in == pytest.approx(weighed + gained, abs=1e-12)
    assert gained == pytest.approx(sum(water for _, water in made.soaking_water), abs=1e-12)


@given(recipes())
def test_gas_is_never_negative_and_never_makes_a_mix_heavier(recipe: Recipe) -> None:
    mix = make(recipe.lines, recipe.steps, component_name="any", kind=recipe.kind).mix
    assert mix.gas >= 0.0
    assert density(mix) <= liquid_density(mix) * (1.0 + 1e-12)


@given(recipes())
def test_nothing_but_water_is_ever_gained(recipe: Recipe) -> None:
    made = make(recipe.lines, recipe.steps, component_name="any", kind=recipe.kind)
    for name in NAMES:
        before = sum(getattr(line.constituents, name) for line in recipe.lines.values())
        taken_up = sum(water for _, water in made.soaking_water) if name == "water" else 0.0
        assert getattr(made.mix.constituents, name) <= before + taken_up + 1e-12


@given(recipes())
def test_what_is_kept_of_each_line_makes_up_all_but_the_water(recipe: Recipe) -> None:
    made = make(recipe.lines, recipe.steps, component_name="any", kind=recipe.kind)
    assert set(made.kept) == set(recipe.lines)
    for name in NAMES:
        held = sum(getattr(p.constituents, name) * made.kept[n] for n, p in recipe.lines.items())
        if name != "water":
            assert getattr(made.mix.constituents, name) == pytest.approx(held, abs=1e-12)


@given(recipes(), factors)
def test_scaling_commutes_with_making(recipe: Recipe, factor: float) -> None:
    made = make(recipe.lines, recipe.steps, component_name="any", kind=recipe.kind)
    lines = {name: line.scaled(factor) for name, line in recipe.lines.items()}
    steps = scaled_steps(recipe.steps, factor)
    larger = make(lines, steps, component_name="any", kind=recipe.kind)
    expected = scaled_made(made, factor)
    assert larger.mass_in == pytest.approx(expected.mass_in, rel=1e-9)
    assert larger.mix.gas == pytest.approx(expected.mix.gas, rel=1e-9, abs=1e-15)
    assert larger.density.value == pytest.approx(expected.density.value, rel=1e-9)
    for name in NAMES:
        one, other = larger.mix.constituents, expected.mix.constituents
        assert getattr(one, name) == pytest.approx(getattr(other, name), rel=1e-9, abs=1e-12)
    for one_change, other_change in zip(larger.changes, expected.changes, strict=True):
        assert one_change.mass == pytest.approx(other_change.mass, rel=1e-6, abs=1e-12)


@given(recipes(), st.floats(min_value=100.0, max_value=1500.0))
def test_a_measured_density_is_kept_unless_nothing_could_be_so_heavy(
    recipe: Recipe, measured: float
) -> None:
    made = make(recipe.lines, recipe.steps, component_name="any", density=measured)
    assert made.density.value == measured
    heaviest = liquid_density(made.mix)
    assert density(made.mix) == pytest.approx(min(measured, heaviest), rel=1e-9)


@given(recipes())
def test_every_line_has_a_peak_and_every_step_a_sentence(recipe: Recipe) -> None:
    names = tuple(recipe.lines)
    assert set(peaks(names, recipe.steps, component="any")) == set(names)
    told = sentences(names, recipe.steps, component="any", names={})
    assert len(told) == len(recipe.steps)
    assert all(text[0].isupper() and text.endswith(".") for text in told)
