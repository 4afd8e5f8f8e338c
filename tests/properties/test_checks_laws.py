"""Laws of the bench checks for any dessert and any number."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from bench_texts import DOME, changed, reckoned_bench
from entremetry.checks import SYMPTOMS, Band, Outcome, check, diagnose
from entremetry.physics.gelatine import BloomRule, equivalent_mass
from entremetry.physics.syrup import sucrose_solubility, syrup_density, syrup_viscosity
from properties.strategies_checks import bands, spoilt

FEW = settings(max_examples=30)
CELSIUS = st.floats(273.15, 373.15)


@given(bands(), st.floats(-1e6, 1e6))
def test_outcome_and_margin_agree(band: Band, value: float) -> None:
    margin = band.margin(value)
    if band.outcome(value) is Outcome.PASS:
        assert margin >= 0.0
    else:
        assert margin <= 0.0


@given(bands(), st.floats(-1e6, 1e6))
def test_the_limit_is_an_end_of_what_is_good(band: Band, value: float) -> None:
    assert band.limit(value) in (band.low, band.high)


@FEW
@given(spoilt())
def test_any_dessert_is_checked_without_fault(changes: dict[str, Any]) -> None:
    found = check(reckoned_bench(changed(DOME, changes)))
    assert all(v.low <= v.value <= v.high and v.because.endswith(".") for v in found)
    assert all(bool(v.advice) == (v.verdict is not Outcome.PASS) for v in found)


@FEW
@given(spoilt(), st.integers(2, 7))
def test_a_batch_as_it_is_written_or_larger_gets_the_same_verdicts(
    changes: dict[str, Any], factor: int
) -> None:
    small = changed(DOME, changes)
    large = changed(small, {"pieces": 6 * factor})
    of_size = {"dose-can-be-weighed"}

    def told(document: dict[str, Any]) -> list[tuple[str, str, str]]:
        return [
            (v.id, v.component, v.verdict)
            for v in check(reckoned_bench(document))
            if v.id not in of_size
        ]

    assert told(small) == told(large)


@FEW
@given(spoilt(), st.sampled_from(SYMPTOMS))
def test_likelihoods_of_a_diagnosis_add_up(changes: dict[str, Any], symptom: Any) -> None:
    found = diagnose(symptom, check(reckoned_bench(changed(DOME, changes))))
    assert found.suspects
    assert abs(sum(s.likelihood for s in found.suspects) - 1.0) < 1e-9


@given(st.floats(1e-4, 1.0), st.floats(50, 350), st.floats(50, 350), st.sampled_from(BloomRule))
def test_the_square_root_rule_asks_for_less_change(
    mass: float, bloom: float, wanted: float, rule: BloomRule
) -> None:
    found = equivalent_mass(mass, bloom, wanted, rule)
    assert abs(equivalent_mass(found, wanted, bloom, rule) - mass) < 1e-12
    linear = equivalent_mass(mass, bloom, wanted)
    root = equivalent_mass(mass, bloom, wanted, BloomRule.SQUARE_ROOT)
    assert abs(root - mass) <= abs(linear - mass) + 1e-15


@given(st.floats(0.0, 0.85), CELSIUS)
def test_syrup_is_dense_and_thick(sucrose: float, temperature: float) -> None:
    assert 950.0 < syrup_density(sucrose, temperature) < 1500.0
    assert 2e-4 < syrup_viscosity(sucrose, temperature) < 1e9


@given(CELSIUS, st.floats(0.01, 5.0))
def test_more_sugar_dissolves_in_warmer_water(temperature: float, step: float) -> None:
    warmer = min(temperature + step, 373.15)
    assert sucrose_solubility(warmer) >= sucrose_solubility(temperature)
