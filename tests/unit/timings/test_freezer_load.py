"""What a batch does to its freezer."""

from __future__ import annotations

import pytest

from timed_desserts import fact, told

SMALL = """
entremetry_kitchen: 1
name: Small
freezers: [{name: ice box, temperature: -18 °C, volume: 15 l, freezes_per_day: 2 kg}]
"""
MOST = "pieces at once that do no harm"
AIR = "warmest air in the freezer"
LATER = "time in the air so warmed"


def test_six_domes_do_not_warm_a_usual_freezer() -> None:
    answer = told("freeze")
    assert fact(answer, AIR) == pytest.approx(-18.0, abs=0.2)
    assert LATER not in [f.name for f in answer.facts]


def test_a_small_freezer_gets_warm_and_the_batch_takes_longer() -> None:
    answer = told("freeze", kitchen=SMALL)
    assert fact(answer, AIR) > -17.0
    assert answer.time is not None
    assert fact(answer, LATER) * 3600.0 > answer.time
    assert fact(answer, MOST) < fact(told("freeze"), MOST)


def test_the_load_without_harm_does_not_hang_on_the_batch() -> None:
    few = told("freeze", kitchen=SMALL)
    many = told("freeze", ("pieces: 6", "pieces: 60"), kitchen=SMALL)
    assert fact(few, MOST) == fact(many, MOST)
    assert fact(many, AIR) > fact(few, AIR)


def test_far_too_many_pieces_are_said_to_be_so() -> None:
    answer = told("freeze", ("pieces: 6", "pieces: 2000"))
    words = next(f.because for f in answer.facts if f.name == MOST)
    assert "2000 at once are far too much" in words


def test_a_freezer_in_a_colder_room_has_no_load_to_speak_of() -> None:
    cold = "entremetry_kitchen: 1\nname: k\nroom_temperature: -30 °C\n"
    assert told("freeze", kitchen=cold).facts == ()
