"""A closed formula beside the computed time, where the piece is simple enough."""

from __future__ import annotations

import pytest

from entremetry.timings.step_temperatures import StepTemperatures
from timed_desserts import MOUSSE_ALONE, told

FREEZE_HEART = "id: freeze-heart, temperature: -12 °C"
CYLINDER = ("kind: hemisphere, diameter: 40 mm", "kind: cylinder, diameter: 50 mm, height: 15 mm")
DISC = [
    ("120 g, caster-sugar: 20 g", "120 g, caster-sugar: 5 g"),
    (FREEZE_HEART, f"{FREEZE_HEART}, where: blast freezer"),
    ("mould: hemisphere-70", "mould: cylinder-70"),
    ("kind: hemisphere, diameter: 40 mm", "kind: cylinder, diameter: 60 mm, height: 12 mm"),
]
CUP = ("mould: hemisphere-70", "mould: coupe")
THAW = "id: thaw, temperature: -2 °C, where: fridge, on: glass shelf"


def opinions(answer: StepTemperatures) -> dict[str, float]:
    return {f.name: f.value for f in answer.facts if f.name.startswith("time by")}


def test_a_small_heart_of_fruit_has_phams_time_beside_its_own() -> None:
    answer = told("freeze-heart")
    assert answer.time is not None
    found = opinions(answer)
    assert set(found) == {"time by Pham's formula"}
    assert found["time by Pham's formula"] == pytest.approx(answer.time / 3600.0, rel=0.25)
    words = next(f.because for f in answer.facts if f.name in found)
    assert "one body" in words
    assert answer.sources[-1] == "pham_1986"
    assert any(f.name == "pieces at once that do no harm" for f in answer.facts)


@pytest.mark.parametrize(
    "swaps",
    [
        [(FREEZE_HEART, "id: freeze-heart, temperature: -15 °C")],  # too close to the air
        [CYLINDER],  # on a shelf that takes more heat than the air
        [
            (
                "raspberry-puree: 120 g, caster-sugar: 20 g",
                "raspberry-puree: 80 g, caster-sugar: 60 g",
            )
        ],
        [(FREEZE_HEART, "id: freeze-heart, time: 2 h")],  # no target
        [(FREEZE_HEART, "id: freeze-heart, temperature: -25 °C")],  # never
    ],
)
def test_what_no_formula_is_made_for_has_none(swaps: list[tuple[str, str]]) -> None:
    assert opinions(told("freeze-heart", *swaps)) == {}


def test_a_piece_of_several_parts_has_none() -> None:
    assert opinions(told("freeze")) == {}
    assert opinions(told("thaw")) == {}


def test_juicy_fruit_in_a_blast_has_cleland_and_earles_time() -> None:
    answer = told("freeze-heart", *DISC)
    assert answer.time is not None
    found = opinions(answer)
    assert "time by Cleland and Earle's formula" in found
    for hours in found.values():
        assert hours == pytest.approx(answer.time / 3600.0, rel=0.25)


@pytest.mark.parametrize("place", ["fridge", "room"])
def test_a_cup_of_mousse_that_thaws_to_nought_has_clelands_time(place: str) -> None:
    """The cup hardly touches what it stands on; to -2 °C there is no formula."""
    thawed = told(
        "thaw", *MOUSSE_ALONE, CUP, (THAW, f"id: thaw, temperature: 0 °C, where: {place}")
    )
    assert thawed.time is not None
    assert opinions(thawed) == {
        "time by Cleland's formula": pytest.approx(thawed.time / 3600.0, rel=0.25)
    }
    soft = told("thaw", *MOUSSE_ALONE, CUP, (THAW, f"id: thaw, temperature: -1 °C, where: {place}"))
    assert opinions(soft) == {}
