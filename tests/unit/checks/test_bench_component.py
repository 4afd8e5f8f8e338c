"""Shares of a component: gelatine by its grade, through losses and through components in it."""

from __future__ import annotations

import pytest

from bench_texts import DOME, SOAK, bench_of, changed
from entremetry.checks.bench_component import is_gelatine
from entremetry.checks.strength import setting_index, weeping_share


def test_gelatine_counts_by_its_bloom() -> None:
    gold = bench_of(DOME).by_id["mousse"].gelatine
    silver = {
        "components/mousse/formula/gelatine-sheet-gold": {
            "ingredient": "gelatine-sheet-silver",
            "amount": "4 g",
        }
    }
    found = bench_of(changed(DOME, silver)).by_id["mousse"].gelatine
    assert found == pytest.approx(gold * 160.0 / 200.0, rel=1e-9)


def test_gelatine_mass_counts_what_is_dry_in_it() -> None:
    mass = {
        "components/insert/formula": {"gelatine-mass-200": "14 g", "cream-35": "100 g"},
        "components/insert/method": [{"step": "melt", "temperature": "50 °C"}],
    }
    found = bench_of(changed(DOME, mass)).by_id["insert"]
    assert found.gelatine == pytest.approx(2.0 / 114.0, rel=0.02)


def test_what_is_spilt_does_not_change_a_share() -> None:
    spilt = changed(DOME, {"components/mousse/method/5/left_behind": "40 %"})
    assert bench_of(spilt).by_id["mousse"].gelatine == pytest.approx(
        bench_of(DOME).by_id["mousse"].gelatine, rel=1e-9
    )


def test_what_boils_away_leaves_more_gelatine() -> None:
    dry = {"components/mousse/method/1/evaporates": "30 g"}
    assert (
        bench_of(changed(DOME, dry)).by_id["mousse"].gelatine
        > bench_of(DOME).by_id["mousse"].gelatine
    )


def test_a_component_in_a_component_brings_its_gelatine() -> None:
    nested = {
        "components/jelly": {
            "name": "Jelly",
            "kind": "insert",
            "formula": {"gelatine-sheet-gold": "4 g", "water": "96 g"},
            "method": [
                SOAK | {"water": "20 g"},
                {"step": "melt", "what": ["water", "gelatine-sheet-gold"], "temperature": "60 °C"},
            ],
        },
        "components/insert/formula": {
            "cream-35": "50 g",
            "jelly": {"component": "jelly", "amount": "50 g"},
        },
        "components/insert/method": [{"step": "mix"}],
    }
    bench = bench_of(changed(DOME, nested))
    found, jelly = bench.by_id["insert"], bench.by_id["jelly"]
    assert found.gelatine == pytest.approx(jelly.gelatine / 2.0, rel=1e-6)
    assert any(is_gelatine(each) for each in found.ingredients())


def test_only_agar_and_the_like_weep() -> None:
    dome = bench_of(DOME).by_id["insert"]
    assert weeping_share(dome) == 0.0
    assert {"gelatine", "egg"} <= set(setting_index(dome))


def test_a_crisp_base_is_known_by_its_rolling_pin() -> None:
    bench = bench_of(DOME)
    assert bench.by_id["base"].is_crisp
    sponge = changed(DOME, {"components/base/method/2": {"step": "whip", "overrun": "50 %"}})
    assert not bench_of(sponge).by_id["base"].is_crisp
