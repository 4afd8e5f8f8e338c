"""Gelatine by its grades, the other setting agents, sagging, sweetness, syrups out of range."""

from __future__ import annotations

import pytest

from entremetry.errors import OutsideRange, UnknownName
from entremetry.physics.gelatine import BloomRule, equivalent_mass, gel_modulus
from entremetry.physics.gels import GELS, starch_thickens_at
from entremetry.physics.sag import sag
from entremetry.physics.sweetness import RELATIVE, sweetness
from entremetry.physics.syrup import (
    boiling_elevation,
    sucrose_solubility,
    syrup_density,
    syrup_viscosity,
)
from entremetry.sources import BIBLIOGRAPHY


@pytest.mark.parametrize("rule", list(BloomRule))
def test_there_and_back_is_the_same_gelatine(rule: BloomRule) -> None:
    there = equivalent_mass(0.01, 200.0, 160.0, rule)
    assert equivalent_mass(there, 160.0, 200.0, rule) == pytest.approx(0.01, rel=1e-12)
    assert equivalent_mass(0.01, 200.0, 200.0, rule) == 0.01


def test_a_gel_of_stronger_gelatine_is_firmer() -> None:
    assert gel_modulus(250.0, 0.03) > gel_modulus(200.0, 0.03) > gel_modulus(200.0, 0.02)


@pytest.mark.parametrize("bloom", [0.0, 49.0, 351.0, float("nan")])
def test_what_is_no_bloom_is_refused(bloom: float) -> None:
    with pytest.raises(OutsideRange, match="Bloom"):
        equivalent_mass(0.01, bloom, 200.0)


def test_a_taller_or_softer_gel_sags_more() -> None:
    assert sag(0.05, 1000.0, 500.0) > sag(0.03, 1000.0, 500.0) > sag(0.03, 1000.0, 900.0) > 0.0


def test_nothing_can_sag_without_height() -> None:
    with pytest.raises(OutsideRange):
        sag(0.0, 1000.0, 500.0)


@pytest.mark.parametrize("gel", GELS.values(), ids=lambda gel: gel.name)
def test_an_agent_sets_below_where_it_melts_and_names_its_source(gel) -> None:  # type: ignore[no-untyped-def]
    assert gel.source in BIBLIOGRAPHY and gel.dose.source in BIBLIOGRAPHY
    assert 0.0 < gel.dose.low < gel.dose.high < 0.2
    assert gel.melts is None or gel.melts.high > gel.sets.low


def test_sugar_raises_the_temperature_of_starch_without_a_jump() -> None:
    found = [starch_thickens_at(n / 100) for n in range(66)]
    assert all(0.0 < b - a < 1.0 for a, b in zip(found, found[1:], strict=False))


@pytest.mark.parametrize("name", RELATIVE)
def test_the_usual_sweetness_lies_in_its_band(name: str) -> None:
    each = RELATIVE[name]
    assert each.low <= each.usual <= each.high and each.source in BIBLIOGRAPHY


def test_an_unknown_sugar_is_answered_with_the_nearest() -> None:
    with pytest.raises(UnknownName, match="glucose"):
        sweetness({"glucos": 1.0})


def test_syrups_are_refused_outside_their_range() -> None:
    for call in (
        lambda: syrup_density(0.9, 293.15),
        lambda: syrup_viscosity(0.5, 400.0),
        lambda: sucrose_solubility(250.0),
        lambda: boiling_elevation(0.95),
        lambda: starch_thickens_at(0.7),
    ):
        with pytest.raises(OutsideRange):
            call()


def test_a_stronger_syrup_is_denser_thicker_and_boils_higher() -> None:
    steps = [n / 50 for n in range(43)]
    for law in (
        lambda q: syrup_density(q, 293.15),
        lambda q: syrup_viscosity(q, 293.15),
        boiling_elevation,
    ):
        found = [law(q) for q in steps]
        assert all(a < b for a, b in zip(found, found[1:], strict=False))
