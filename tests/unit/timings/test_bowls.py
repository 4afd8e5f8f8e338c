"""Cooling in a bowl, folding, boiling down: what the method tells and what physics makes of it."""

from __future__ import annotations

import numpy as np
import pytest

from entremetry.errors import QuantityError
from entremetry.timings.bowl_content import bowl_content, mix_of, tags_of
from entremetry.words import speaking
from timed_desserts import KITCHEN, fact, reckoning_of, told

COOL = "id: cool-heart, temperature: 30 °C"


def test_a_bowl_holds_what_went_into_it() -> None:
    reckoning = reckoning_of()
    mousse = next(c for c in reckoning.dessert.components if c.id == "mousse")
    content = bowl_content(mousse, 5)
    assert set(content.before) == {"gelatine-sheet-gold", "whole-milk", "caster-sugar"}
    assert content.entering == ("cream-35",)
    assert bowl_content(mousse, 99).all == ()
    assert "whippable" in tags_of(reckoning, mousse, content.entering)
    assert (
        mix_of(reckoning, mousse, content.all).mass > mix_of(reckoning, mousse, content.before).mass
    )


def test_the_curve_falls_from_where_the_pan_was_to_the_target() -> None:
    answer = told("cool-heart")
    curve = answer.curves[0]
    assert curve.temperatures[0] == pytest.approx(333.15)
    assert curve.temperatures[-1] == pytest.approx(303.15)
    assert np.all(np.diff(curve.temperatures) < 0.0)
    assert answer.low is not None and answer.high is not None and answer.time is not None
    assert answer.low < answer.time < answer.high
    assert answer.mostly in answer.because


@pytest.mark.parametrize(
    ("how", "faster"),
    [("ice_bath: true", True), ("where: fridge", True), ("covered: true", False)],
)
def test_ice_and_the_fridge_help_and_a_lid_does_not(how: str, faster: bool) -> None:
    plain = told("cool-heart").time
    other = told("cool-heart", (COOL, f"{COOL}, {how}")).time
    assert plain is not None and other is not None
    assert (other < plain) is faster


@pytest.mark.parametrize("celsius", [4, -5, 15])
def test_colder_than_the_air_can_make_it_is_never_reached(celsius: int) -> None:
    answer = told("cool-heart", (COOL, f"id: cool-heart, temperature: {celsius} °C"))
    assert (answer.time, answer.low, answer.high) == (None, None, None)
    assert "no more heat flows" in answer.reason
    assert np.isfinite(answer.curves[0].temperatures).all()


def test_evaporation_cools_below_the_room_but_who_knows_when() -> None:
    answer = told("cool-heart", (COOL, "id: cool-heart, temperature: 19 °C"))
    assert answer.time is not None and answer.high is None


@pytest.mark.parametrize(
    ("swap", "words"),
    [
        ("temperature: 70 °C", "below what the bowl has"),
        ("temperature: -40 °C", "frozen rather than cooled"),
    ],
)
def test_cooling_to_where_it_cannot_go_is_refused(swap: str, words: str) -> None:
    with pytest.raises(QuantityError, match=words):
        told("cool-heart", (COOL, f"id: cool-heart, {swap}"))


def test_a_syrup_above_boiling_is_followed_from_a_hundred_degrees() -> None:
    answer = told("cool-glaze", ("temperature: 103 °C", "temperature: 118 °C"))
    assert answer.curves[0].temperatures[0] == pytest.approx(373.15)
    assert "starts at 100 °C" in answer.assumptions[-1]


def test_melted_chocolate_cools_without_giving_off_water() -> None:
    chocolate = (
        "formula: {raspberry-puree: 120 g, caster-sugar: 20 g, gelatine-sheet-gold: 1 sheet}",
        "formula: {couverture-white-30: 140 g}",
    )
    melt = (
        "[raspberry-puree, caster-sugar, gelatine-sheet-gold], temperature: 60 °C",
        "[couverture-white-30], temperature: 45 °C",
    )
    soak = ("      - {step: soak, what: [gelatine-sheet-gold], water: 10 g}\n", "")
    answer = told("cool-heart", chocolate, melt, soak)
    wet = told("cool-heart", ("temperature: 60 °C", "temperature: 45 °C"))
    assert answer.time is not None and wet.time is not None
    assert answer.time > wet.time


def test_the_kitchen_says_how_warm_the_room_is() -> None:
    warm, usual = told("cool-heart", kitchen=KITCHEN), told("cool-heart")
    assert warm.time is not None and usual.time is not None
    assert warm.time > usual.time


def test_a_fold_lands_between_the_base_and_the_cream() -> None:
    answer = told("fold-cream")
    assert answer.time is None and "lands" in answer.reason
    assert 6.0 < fact(answer, "temperature of the mix") < 42.0
    needed = fact(answer, "base needed for a mix of 25 °C")
    again = told("fold-cream", ("42 °C, ice_bath", f"{needed} °C, ice_bath"))
    assert fact(again, "temperature of the mix") == pytest.approx(25.0, abs=0.05)


def test_boiling_down_takes_heat_for_warming_and_for_the_water() -> None:
    less, more = told("simmer-milk"), told("simmer-milk", ("evaporates: 10 g", "evaporates: 40 g"))
    assert less.time is not None and more.time is not None
    assert less.low is not None and less.high is not None
    assert less.low < less.time < less.high
    for answer in (less, more):
        gone = fact(answer, "water to boil away") * 1e-3
        before = gone + fact(answer, "left in the pan") * 1e-3
        assert answer.time is not None
        heat = before * 3600.0 * 80.0 + gone * 2.257e6
        assert heat / answer.time == pytest.approx(31e3 * np.pi / 4.0 * 0.14**2, rel=1e-3)
    assert more.time > less.time
    assert "140 mm" in less.assumptions[0]


def test_boiling_down_takes_as_long_in_another_language() -> None:
    with speaking("fr"):
        french = told("simmer-milk")
    assert french.time == told("simmer-milk").time


def test_a_custard_is_heated_gently() -> None:
    boiling = told("simmer-milk", ("step: simmer", "step: cook-to\n        temperature: 95 °C"))
    custard = told("simmer-milk", ("step: simmer", "step: cook-to\n        temperature: 82 °C"))
    assert boiling.time is not None and custard.time is not None
    assert custard.time > 1.5 * boiling.time
