"""The temperatures of a step as scripts and cooks read them."""

from __future__ import annotations

import json
from dataclasses import replace
from xml.etree import ElementTree

import numpy as np
import pytest

from entremetry.cli.temperatures_view import as_json, as_svg, as_text, steps_text
from entremetry.timings.step_temperatures import Curve
from unit.publish.step_results import (
    ZERO,
    cooling_bowl,
    folded_mousse,
    freezing_dome,
    never_frozen,
    poured_glaze,
)


def test_the_keys_of_the_contract_and_their_units() -> None:
    told = json.loads(as_json(freezing_dome()))
    assert (told["time_min"], told["low_min"], told["high_min"]) == (310.0, 240.0, 400.0)
    assert told["target_c"] == -18.0
    assert told["energy_balance_error"] == 3.0e-15
    assert told["written_time_min"] == 360.0
    assert [point["name"] for point in told["points"]] == ["heart", "vanilla-insert", "edge"]
    assert (told["points"][0]["time_min"][0], told["points"][0]["temperature_c"][0]) == (0.0, 22.0)
    assert told["marks"][0] == {"time_min": 54.0, "text": "the mousse is set"}
    assert told["sources"][0]["key"] == "our_own"
    for key in ("step", "name", "kind", "reason", "mostly", "because", "assumptions"):
        assert key in told


def test_long_curves_are_thinned_to_four_hundred_points() -> None:
    point = json.loads(as_json(freezing_dome()))["points"][0]
    assert len(point["time_min"]) == len(point["temperature_c"]) == 400
    assert point["time_min"] == sorted(set(point["time_min"]))
    assert point["time_min"][-1] == 600.0


def test_what_is_never_reached_is_null() -> None:
    told = json.loads(as_json(never_frozen()))
    assert [told[key] for key in ("time_min", "low_min", "high_min")] == [None] * 3
    assert told["reason"].startswith("The air of the freezer")


def test_no_value_that_json_does_not_know_is_printed() -> None:
    curve = Curve(
        name="x", times=np.array([0.0, 60.0, 120.0]), temperatures=np.array([ZERO, np.nan, ZERO])
    )
    told = json.loads(as_json(replace(freezing_dome(), curves=(curve,), balance_error=np.nan)))
    assert told["points"][0]["temperature_c"] == [0.0, 0.0]
    assert told["energy_balance_error"] is None


def test_the_text_says_the_answer_first() -> None:
    lines = as_text(freezing_dome()).splitlines()
    assert lines[1] == "5 h 10 min, between 4 h and 6 h 40 min, mostly the airflow"
    assert lines[2] == "The document says 6 h."
    text = "\n".join(lines)
    assert "3 h 10 min: the heart starts to freeze" in text
    assert "The mould stands on a metal shelf." in text


def test_the_text_has_temperatures_each_half_hour() -> None:
    rows = {line[:12].strip(): line for line in as_text(freezing_dome()).splitlines()}
    assert "22.0 °C" in rows["0 min"]
    assert {"30 min", "1 h", "1 h 30 min", "9 h 30 min"} <= set(rows)
    assert rows["5 h 10 min"].endswith("done")


def test_a_short_step_has_closer_rows() -> None:
    rows = [line[:12].strip() for line in as_text(cooling_bowl()).splitlines()]
    assert {"5 min", "10 min", "17 min"} <= set(rows)


def test_the_text_of_a_step_that_never_ends_gives_the_reason() -> None:
    answer = as_text(never_frozen()).splitlines()[1]
    assert answer.startswith("It never gets there: The air of the freezer has -12 °C")


@pytest.mark.parametrize("result", [freezing_dome(), never_frozen(), cooling_bowl()])
def test_a_terminal_gets_plain_signs(result) -> None:  # type: ignore[no-untyped-def]
    assert not set(as_text(result)) & {"\u00a0", "\u202f", "\u2212"}


def test_further_numbers_are_told_with_their_reason() -> None:
    assert "  - where they touch: 0 °C (it sets where it lies)" in as_text(poured_glaze())
    assert json.loads(as_json(poured_glaze()))["facts"][0] == {
        "name": "film on top",
        "value": 1.54,
        "unit": "mm",
        "because": "",
    }


def test_a_step_without_a_time_answers_with_its_number() -> None:
    assert as_text(folded_mousse()).splitlines()[1].startswith("24 °C, temperature of the mix: A ")


def test_the_drawing_stands_on_its_own() -> None:
    assert ElementTree.fromstring(as_svg(freezing_dome())).tag.endswith("svg")


def test_a_document_without_such_steps_says_so() -> None:
    assert steps_text((), "x.yaml") == "x.yaml: no step of this document can be timed"
