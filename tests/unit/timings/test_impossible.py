"""Impossible wishes are answered 'never' with the reason, or refused with what is accepted."""

from __future__ import annotations

import math

import numpy as np
import pytest

from entremetry.errors import EntremetryError, QuantityError
from entremetry.timings.step_temperatures import StepTemperatures
from timed_desserts import MOUSSE_ALONE, Swap, told

FREEZE = "id: freeze, temperature: -12 °C"
FREEZE_HEART = "id: freeze-heart, temperature: -12 °C"
THAW = "id: thaw, temperature: -2 °C, where: fridge, on: glass shelf"
COOL = "id: cool-base, temperature: 42 °C, ice_bath: true"
HEART = "formula: {raspberry-puree: 120 g, caster-sugar: 20 g, gelatine-sheet-gold: 1 sheet}"
UNSOAKED = (
    """      - {step: soak, what: [gelatine-sheet-gold], water: 10 g}
      - {step: melt, what: [raspberry-puree, caster-sugar, gelatine-sheet-gold], temperature: 60 °C}
      - {step: cool-to, id: cool-heart, temperature: 30 °C}
""",
    "",
)


def kitchen(words: str) -> str:
    return f"entremetry_kitchen: 1\nname: k\n{words}\n"


def sound(answer: StepTemperatures) -> bool:
    """Whether all numbers are finite, and what has no time says why."""
    times = [t for t in (answer.time, answer.low, answer.high) if t is not None]
    curves = [v for c in answer.curves for v in (c.times, c.temperatures)]
    facts = [fact.value for fact in answer.facts]
    finite = all(math.isfinite(n) for n in (*times, *facts))
    return finite and all(np.isfinite(c).all() for c in curves) and bool(times or answer.reason)


@pytest.mark.parametrize("celsius", [-40, -18, -18.001])
def test_no_piece_gets_colder_than_its_freezer(celsius: float) -> None:
    answer = told("freeze", (FREEZE, f"id: freeze, temperature: {celsius} °C"))
    assert answer.time is None and "gets colder" in answer.reason and sound(answer)


@pytest.mark.parametrize("celsius", [4, 50, 200])
def test_no_piece_gets_warmer_than_its_fridge(celsius: float) -> None:
    answer = told("thaw", (THAW, f"id: thaw, temperature: {celsius} °C, where: fridge"))
    assert answer.time is None and "gets warmer" in answer.reason and sound(answer)


def test_a_warm_freezer_freezes_nothing_and_what_comes_out_of_it_is_thawed() -> None:
    warm = kitchen("freezers: [{name: warm, temperature: 5 °C}]")
    answer = told("freeze", kitchen=warm)
    assert answer.time is None and "the warm has 5 °C" in answer.reason
    assert told("thaw", kitchen=warm).time == 0.0


@pytest.mark.parametrize("word", ["nan °C", "inf °C", "-inf °C", "NaN", "1e999 °C", "-300 °C"])
def test_a_temperature_that_is_none_is_refused(word: str) -> None:
    with pytest.raises(EntremetryError, match="accepted"):
        told("freeze", (FREEZE, f"id: freeze, temperature: {word}"))


@pytest.mark.parametrize("celsius", [-40, 100, 200])
def test_a_bowl_cools_to_what_is_a_liquid(celsius: float) -> None:
    with pytest.raises(QuantityError, match="accepted"):
        told("cool-base", (COOL, f"id: cool-base, temperature: {celsius} °C"))


@pytest.mark.parametrize("celsius", [-30, -19])
def test_a_bowl_in_air_whose_vapour_is_not_known_is_refused_in_words(celsius: float) -> None:
    with pytest.raises(QuantityError, match="a bowl in the room"):
        told("cool-base", kitchen=kitchen(f"room_temperature: {celsius} °C"))


def test_a_bowl_never_gets_colder_than_the_air_over_it() -> None:
    answer = told("cool-base", (COOL, "id: cool-base, temperature: 0 °C"))
    assert answer.time is None and answer.reason.startswith("never") and sound(answer)


@pytest.mark.parametrize(
    "formula",
    [
        "sunflower-oil: 100 g",
        "caster-sugar: 100 g",
        "water: 1 g, caster-sugar: 1000 g",
        "water: 50 g, table-salt: 50 g",
        "kirsch: 100 g",
        "dark-rum: 60 g, water: 40 g",
        "water: 100 g",
        "gelatine-powder-200: 100 g",
    ],
)
def test_a_heart_of_anything_has_a_time(formula: str) -> None:
    """No water, nothing dissolved, more dissolved than any rule knows, spirits."""
    answer = told("freeze-heart", (HEART, "formula: {" + formula + "}"), UNSOAKED)
    assert answer.time is not None and answer.low is not None and answer.high is not None
    assert 0.0 < answer.low < answer.time < answer.high < 24 * 3600.0 and sound(answer)


def mould(shape: str) -> Swap:
    return (
        "mould: hemisphere-70",
        "mould: {id: m, name: M, shape: {" + shape + "}, material: metal}",
    )


@pytest.mark.parametrize(
    "shape",
    [
        "kind: cylinder, diameter: 2 m, height: 2 m",
        "kind: cylinder, diameter: 2 m, height: 1 mm",
        "kind: cylinder, diameter: 1 mm, height: 2 m",
        "kind: box, length: 2 m, width: 1 mm, height: 1 mm",
        "kind: sphere, diameter: 5 m",
    ],
)
@pytest.mark.parametrize("step", ["freeze", "thaw"])
def test_giants_and_hairs_are_answered(shape: str, step: str) -> None:
    assert sound(told(step, *MOUSSE_ALONE, mould(shape)))


def test_what_takes_longer_than_days_is_said_to_be_still_warm() -> None:
    answer = told("freeze", *MOUSSE_ALONE, mould("kind: sphere, diameter: 2 m"))
    assert answer.time is None and "after 96 h the last place is still at" in answer.reason


def test_a_mould_of_a_millimetre_holds_nothing_of_a_dessert() -> None:
    with pytest.raises(EntremetryError, match="nothing is left"):
        told("freeze", *MOUSSE_ALONE, mould("kind: cylinder, diameter: 1 mm, height: 1 mm"))


def test_a_freezing_of_no_time_is_refused() -> None:
    with pytest.raises(EntremetryError, match="positive"):
        told("freeze", (FREEZE, "id: freeze, time: 0 min"))


def test_a_heart_of_a_millimetre_is_frozen_in_minutes_and_a_grain_is_refused() -> None:
    answer = told("freeze-heart", ("diameter: 40 mm", "diameter: 1 mm"))
    assert answer.time is not None and 0.0 < answer.time < 900.0 and sound(answer)
    with pytest.raises(QuantityError, match="grain"):
        told("freeze-heart", ("diameter: 40 mm", "diameter: 0.2 mm"))
