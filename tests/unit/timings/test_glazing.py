"""Glazing a frozen piece."""

from __future__ import annotations

import pytest

from entremetry.errors import QuantityError
from timed_desserts import fact, told

AT = "id: glaze-it, temperature: 30 °C"


def poured(celsius: float, **more: str) -> tuple[str, str]:
    return AT, f"id: glaze-it, temperature: {celsius} °C"


def test_a_glaze_at_thirty_degrees_sets_in_seconds() -> None:
    answer = told("glaze-it")
    assert answer.time is not None and answer.low is not None and answer.high is not None
    assert 1.0 < answer.low < answer.time < answer.high < 120.0


def test_what_stays_and_what_runs_off_is_what_was_poured() -> None:
    answer = told("glaze-it")
    together = fact(answer, "stays on one piece") + fact(answer, "runs off one piece")
    assert together == pytest.approx(60.0, rel=1e-6)


def test_a_warmer_glaze_leaves_a_thinner_film() -> None:
    films = [fact(told("glaze-it", poured(t)), "film on top") for t in (26, 30, 35, 40, 45)]
    assert films == sorted(films, reverse=True)


def test_the_contact_lies_between_piece_and_glaze() -> None:
    assert -18.0 < fact(told("glaze-it"), "temperature where glaze and piece touch") < 30.0


def test_the_window_does_not_hang_on_the_temperature_asked_for() -> None:
    one, other = told("glaze-it"), told("glaze-it", poured(34))
    assert fact(one, "pour from") == pytest.approx(fact(other, "pour from"), abs=1.5)
    assert fact(one, "pour from") < 30.0 <= fact(one, "pour up to")


@pytest.mark.parametrize("celsius", [-5, 10, 22, 60, 120])
def test_a_glaze_that_sets_in_the_jug_or_runs_like_water_is_refused(celsius: int) -> None:
    with pytest.raises(QuantityError, match="from 23 °C to 50 °C"):
        told("glaze-it", poured(celsius))


def test_the_piece_is_as_cold_as_the_freezer_of_the_kitchen() -> None:
    cold = "entremetry_kitchen: 1\nname: k\nfreezers: [{name: a, temperature: -30 °C}]\n"
    answer = told("glaze-it", kitchen=cold)
    assert "The piece is at -30 °C" in answer.assumptions[0]
    assert fact(answer, "temperature where glaze and piece touch") < fact(
        told("glaze-it"), "temperature where glaze and piece touch"
    )


def test_without_a_pour_three_times_what_stays_is_taken() -> None:
    answer = told("glaze-it", (", pour: 60 g", ""))
    together = fact(answer, "stays on one piece") + fact(answer, "runs off one piece")
    assert together == pytest.approx(60.0, rel=0.15)
