"""Times and temperatures are said with the precision they deserve."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from entremetry.publish.temperature_marks import flags, moments, rows
from entremetry.publish.temperature_scale import round_temperatures, round_times, time_label
from entremetry.publish.temperature_table import table
from entremetry.publish.temperature_thinning import kept_points
from entremetry.publish.temperature_wording import (
    answer,
    celsius,
    fact_value,
    fahrenheit,
    headline,
    interval,
    roughly,
    spoken,
)
from entremetry.timings.step_temperatures import Fact, Mark
from unit.publish.step_results import (
    HOUR,
    ZERO,
    cooling_bowl,
    folded_mousse,
    freezing_dome,
    never_frozen,
    poured_glaze,
)


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("seconds", "said"),
    [
        (0.0, "0 min"),
        (34.4, "34 s"),
        (87.0, "1 min 30 s"),
        (400.0, "7 min"),
        (1000.0, "17 min"),
        (3300.0, "55 min"),
        (17164.0, "4 h 50 min"),
        (18600.0, "5 h 10 min"),
        (50000.0, "14 h"),
        (100000.0, "28 h"),
    ],
)
def test_a_time_is_rounded_to_what_a_cook_can_use(seconds: float, said: str) -> None:
    assert plain(roughly(seconds)) == said


def test_a_written_time_is_said_as_it_is() -> None:
    assert plain(spoken(9 * HOUR + 59.4 * 60)) == "9 h 59 min"
    assert plain(spoken(90.0)) == "1 min 30 s"
    assert plain(spoken(3599.9)) == "1 h"


def test_degrees_have_a_true_minus() -> None:
    assert (celsius(ZERO - 18.0), celsius(ZERO)) == ("−18\u00a0°C", "0\u00a0°C")
    assert (fahrenheit(ZERO - 40.0), fahrenheit(ZERO)) == ("−40\u00a0°F", "32\u00a0°F")
    assert celsius(ZERO - 0.4) == "0\u00a0°C"


def test_the_answer_in_words() -> None:
    result = freezing_dome()
    assert plain(headline(result)) == "About 5 h 10 min"
    assert plain(interval(result)) == "between 4 h and 6 h 40 min, mostly the airflow"
    assert plain(interval(replace(result, mostly=""))) == "between 4 h and 6 h 40 min"
    assert headline(never_frozen()) == "It never gets there"
    assert interval(never_frozen()) == ""


def test_a_step_about_a_number_answers_with_it() -> None:
    result = folded_mousse()
    assert plain(headline(result)) == "24 °C"
    assert interval(result) == "temperature of the mix"
    assert plain(answer(result)).startswith("24 °C, temperature of the mix: A matter of a minute")


def test_a_glaze_is_timed_until_its_film_is_set() -> None:
    assert plain(interval(poured_glaze())).startswith("until the film is set, between 20 s and")


@pytest.mark.parametrize(
    ("value", "unit", "said"),
    [
        (1.54, "mm", "1.5 mm"),
        (2.0, "mm", "2 mm"),
        (41.6, "g", "42 g"),
        (-0.4, "°C", "0 °C"),
        (-12.6, "°C", "−13 °C"),
        (4.0, "pieces", "4 pieces"),
    ],
)
def test_a_number_is_said_to_a_tenth_where_it_is_small(value: float, unit: str, said: str) -> None:
    assert plain(fact_value(Fact(name="x", value=value, unit=unit))) == said


def test_axes_have_round_numbers_around_what_they_show() -> None:
    degrees = np.array(round_temperatures(ZERO - 19.7, ZERO + 22.0, most=8)) - ZERO
    assert degrees == pytest.approx([-20.0, -10.0, 0.0, 10.0, 20.0, 30.0])
    assert round_times(5.2 * HOUR, 6) == tuple(HOUR * k for k in range(6))
    assert [plain(time_label(t)) for t in (0.0, 30.0, 600.0, 7200.0)] == [
        "0",
        "30 s",
        "10 min",
        "2 h",
    ]
    assert len(round_temperatures(ZERO, ZERO, most=6)) >= 2


def test_thinning_keeps_the_ends_and_the_halt() -> None:
    curve = freezing_dome().curves[0]
    kept = kept_points(curve.times, curve.temperatures, 40)
    assert (kept[0], kept[-1], len(kept)) == (0, len(curve.times) - 1, 40)
    back = np.interp(curve.times, curve.times[kept], curve.temperatures[kept])
    assert np.abs(back - curve.temperatures).max() < 0.15
    assert kept_points(curve.times[:5], curve.temperatures[:5], 40) == [0, 1, 2, 3, 4]


def test_the_table_has_each_half_hour_and_the_end() -> None:
    rows_ = table(freezing_dome())
    assert [plain(row.time) for row in rows_[:4]] == ["0 min", "30 min", "1 h", "1 h 30 min"]
    (done,) = [row for row in rows_ if row.done]
    assert plain(done.time) == "5 h 10 min"
    assert [plain(cell) for cell in rows_[0].cells] == ["22.0 °C"] * 3
    assert 4 <= len(table(cooling_bowl())) <= 16
    assert table(replace(freezing_dome(), curves=())) == ()


def test_marks_of_one_moment_are_told_together_and_late_ones_left_out() -> None:
    marks = (Mark(time=9.0, text="b"), Mark(time=3.0, text="a"), Mark(time=9.0, text="c"))
    assert [(m.time, m.text) for m in moments(marks, 10.0)] == [(3.0, "a"), (9.0, "b, c")]
    assert moments(marks, 2.0) == ()


def test_flags_do_not_cover_each_other_however_close() -> None:
    places = [(100.0 + 3.0 * k, f"moment number {k}") for k in range(8)]
    placed = flags(places, 320.0)
    assert rows(placed) >= 4
    for k, one in enumerate(placed):
        for two in placed[k + 1 :]:
            assert one.row != two.row or one.end <= two.start or two.end <= one.start
    assert all(flag.start >= 0.0 and flag.end <= 320.0 + 1e-9 for flag in placed)
