"""Hands grow with the pieces as far as the work is done piece by piece."""

from __future__ import annotations

import pytest

from entremetry.agenda.hands_on import USUAL, hands_on
from entremetry.agenda.keeping import AFTER
from entremetry.method.step import KINDS
from unit.agenda.menus import step


def test_of_work_by_the_piece_a_fifth_stays_and_the_rest_grows() -> None:
    hands = hands_on(step(step="fill", hands_on="10 min"), 6)
    assert hands.minutes(6) == pytest.approx(10.0)
    assert hands.minutes(12) == pytest.approx(18.0)  # 2 + 8 · 2


def test_of_work_in_a_bowl_four_fifths_stay() -> None:
    hands = hands_on(step(step="whip", hands_on="10 min"), 6)
    assert hands.minutes(6) == pytest.approx(10.0)
    assert hands.minutes(12) == pytest.approx(12.0)  # 8 + 2 · 2


def test_without_a_statement_usual_hands_say_so() -> None:
    hands = hands_on(step(step="unmould"), 6)
    assert hands.minutes(6) == pytest.approx(4.0)  # 2 min and 6 · 20 s
    assert "no source" in hands.because


def test_no_hands_are_stated_as_none() -> None:
    assert hands_on(step(step="pour", hands_on="0 min"), 6).minutes(6) == 0.0


def test_serving_takes_no_hands_and_asks_for_no_statement() -> None:
    hands = hands_on(step(step="serve"), 6)
    assert (hands.minutes(6), hands.because) == (0.0, "")


def test_every_kind_of_step_has_usual_hands_and_a_usual_stop() -> None:
    assert set(USUAL) == set(AFTER) == set(KINDS)
