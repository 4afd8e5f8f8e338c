"""Checks of a text: with and without times, in a kitchen, in another mould."""

from __future__ import annotations

import pytest

from bench_texts import DOME, changed, text_of
from entremetry.checks import Outcome
from entremetry.errors import EntremetryError, UnknownName
from entremetry.usecases.checking import checks_of_text
from entremetry.usecases.diagnosing import diagnosed, symptoms

KITCHEN = """
entremetry_kitchen: 1
name: Warm
fridges: [{name: Old fridge, temperature: 11 °C}]
"""


def test_without_times_no_step_is_simulated() -> None:
    found = checks_of_text(text_of(DOME), times=False)
    assert "assembly-2" in found.untimed
    assert not {v.id for v in found.verdicts} & {"freezing-time", "thawing-time", "glaze-contact"}


def test_with_times_the_glaze_is_looked_at() -> None:
    found = checks_of_text(text_of(DOME))
    assert found.untimed == ()
    assert {"freezing-time", "thawing-time", "glaze-contact"} <= {v.id for v in found.verdicts}


def test_a_step_that_cannot_be_timed_is_named() -> None:
    hot = changed(DOME, {"assembly/3/temperature": "90 °C"})
    assert checks_of_text(text_of(hot)).untimed == ("assembly-4",)


def test_the_kitchen_is_looked_at() -> None:
    found = checks_of_text(text_of(DOME), kitchen_text=KITCHEN, times=False)
    assert found.fails
    assert [v.id for v in found.of(Outcome.FAIL)] == ["fridge-temperature"]


def test_a_mould_that_is_too_small_is_refused() -> None:
    with pytest.raises(EntremetryError):
        checks_of_text(text_of(DOME), mould="hemisphere-30", times=False)


def test_a_diagnosis_of_an_unknown_component_is_refused() -> None:
    found = checks_of_text(text_of(DOME), times=False)
    with pytest.raises(UnknownName, match="insert"):
        diagnosed(found, symptoms()[0], "insrt")
