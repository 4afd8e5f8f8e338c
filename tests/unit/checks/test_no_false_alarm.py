"""What a pastry cook does every day must not fail."""

from __future__ import annotations

from typing import Any

from bench_texts import DOME, SOAK, bench_of, changed, verdicts_of
from entremetry.checks import Outcome, check

MERINGUE: dict[str, Any] = {
    "components/mousse/formula": {
        "gelatine-sheet-gold": "6 g",
        "lemon-juice": "40 g",
        "raspberry-puree": "160 g",
        "egg-white": "60 g",
        "caster-sugar": "100 g",
        "water": "30 g",
        "cream-35": "150 g",
    },
    "components/mousse/method": [
        SOAK | {"water": "30 g"},
        {
            "step": "melt",
            "what": ["raspberry-puree", "lemon-juice", "gelatine-sheet-gold"],
            "temperature": "55 °C",
            "bowl": "fruit",
        },
        {"step": "cool-to", "bowl": "fruit", "temperature": "40 °C", "time": "10 min"},
        {
            "step": "cook-to",
            "what": ["caster-sugar", "water"],
            "bowl": "syrup",
            "temperature": "118 °C",
        },
        {"step": "whip", "what": ["egg-white", "syrup"], "density": "0.3 g/ml"},
        {"step": "fold", "what": ["fruit"]},
        {"step": "whip", "what": ["cream-35"], "bowl": "cream", "overrun": "90 %"},
        {"step": "fold", "what": ["cream"]},
    ],
}
GANACHE: dict[str, Any] = {
    "components/insert/formula": {"cream-35": "100 g", "couverture-dark-66": "100 g"},
    "components/insert/method": [
        {"step": "cook-to", "what": ["cream-35"], "temperature": "80 °C"},
        {"step": "mix", "what": ["couverture-dark-66"]},
        {"step": "cool-to", "temperature": "32 °C", "time": "20 min"},
        {"step": "pour", "left_behind": "3 %"},
        {"step": "freeze-until", "temperature": "-15 °C", "time": "3 h"},
    ],
}
COCOA_GLAZE: dict[str, Any] = {
    "components/glaze/formula": {
        "gelatine-powder-200": "8 g",
        "water": "150 g",
        "caster-sugar": "200 g",
        "cocoa-powder-alkalised": "70 g",
        "cream-35": "130 g",
    },
    "components/glaze/method": [
        {"step": "soak", "what": ["gelatine-powder-200"], "water": "48 g", "time": "10 min"},
        {"step": "cook-to", "temperature": "103 °C", "evaporates": "40 g"},
        {"step": "cool-to", "temperature": "60 °C", "time": "20 min"},
        {"step": "mix", "what": ["gelatine-powder-200"]},
        {"step": "cool-to", "temperature": "32 °C", "left_behind": "4 %"},
    ],
}
MANGO: dict[str, Any] = {
    "components/insert/formula": {"gelatine-sheet-gold": "3 g", "mango": "150 g"},
    "components/insert/method": [
        SOAK | {"water": "15 g"},
        {"step": "melt", "what": ["mango", "gelatine-sheet-gold"], "temperature": "60 °C"},
        {"step": "cool-to", "temperature": "28 °C", "time": "10 min"},
        {"step": "pour", "left_behind": "4 %"},
        {"step": "freeze-until", "temperature": "-15 °C", "time": "3 h"},
    ],
}


def failing(changes: dict[str, Any]) -> list[str]:
    """Ids and sentences of what fails."""
    found = check(bench_of(changed(DOME, changes)).reckoning)
    return [f"{v.id}: {v.because}" for v in found if v.verdict is Outcome.FAIL]


def test_hot_syrup_on_whites_is_a_caution_and_no_failure() -> None:
    assert failing(MERINGUE) == []
    (egg,) = verdicts_of("raw-egg", bench_of(changed(DOME, MERINGUE)))[:1]
    assert egg.component == "mousse" and egg.verdict is Outcome.CAUTION


def test_a_ganache_of_one_to_one_is_sound() -> None:
    assert failing(GANACHE) == []


def test_a_glaze_of_cocoa_is_sound() -> None:
    assert failing(COCOA_GLAZE) == []


def test_raw_mango_is_a_caution_where_pineapple_fails() -> None:
    assert failing(MANGO) == []
    (mango,) = verdicts_of("raw-fruit-and-gelatine", bench_of(changed(DOME, MANGO)))
    assert mango.verdict is Outcome.CAUTION
    pineapple = changed(DOME, MANGO)
    pineapple["components"]["insert"]["formula"]["mango"] = {
        "ingredient": "pineapple",
        "amount": "150 g",
    }
    (raw,) = verdicts_of("raw-fruit-and-gelatine", bench_of(pineapple))
    assert raw.verdict is Outcome.FAIL


def test_an_insert_that_no_step_freezes_may_only_lack_the_words() -> None:
    untold = changed(DOME, {"components/insert/method/5": None})
    (insert,) = verdicts_of("insert-frozen", bench_of(untold))
    assert insert.verdict is Outcome.CAUTION


def test_a_method_without_any_heat_says_nothing_of_dissolving() -> None:
    bare = {
        "components/insert/formula": {"gelatine-sheet-gold": "2 g", "cream-35": "100 g"},
        "components/insert/method": [SOAK, {"step": "mix"}],
    }
    found = verdicts_of("gelatine-dissolved", bench_of(changed(DOME, bare)))
    assert "insert" not in {v.component for v in found}
