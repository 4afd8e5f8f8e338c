"""Pages of plans and of temperatures say every word in the language that is chosen."""

from __future__ import annotations

import json
from dataclasses import fields, is_dataclass
from typing import Any

import pytest

from agendas import AGENDA, IMPOSSIBLE
from entremetry.web.temperature_work import TemperatureWork, drawn
from planned_by_hand import ASKED
from unit.publish.step_results import (
    cooling_bowl,
    folded_mousse,
    freezing_dome,
    never_frozen,
    poured_glaze,
)
from unit.web.conftest import CREAM
from unit.web.marked_language import speak_marked, unsaid, words
from unit.web.test_plan_page import COOK, anew, keep
from unit.web.test_plans import MENU, MONDAY
from unit.web.test_temperatures_page import FROZEN, PAGE, thermal

Client = Any

__all__ = ["thermal"]


def told(thing: object) -> frozenset[str]:
    """Every word of a hand-made result."""
    if isinstance(thing, str):
        return words(thing)
    if isinstance(thing, tuple | list):
        return frozenset().union(*map(told, thing))
    if is_dataclass(thing):
        return frozenset().union(*(told(getattr(thing, field.name)) for field in fields(thing)))
    return frozenset()


DATES = words("vendredo sabato novembro")
"""As the Unicode locale data have them in the language whose code is borrowed."""
NAMES = words(CREAM) | {"entremetry", "français", "pears", "json"}
PLANNED = NAMES | DATES | told((AGENDA, IMPOSSIBLE)) | {"min"}
TIMED = words(FROZEN) | {"entremetry", "français", "min"}


@pytest.fixture
def marked(planner: Client, monkeypatch: pytest.MonkeyPatch) -> Client:
    """A workbench with plans by hand, whose every message is marked."""
    speak_marked(monkeypatch)
    return planner


@pytest.mark.parametrize("menu", ["made", "begun", "impossible"])
def test_a_plan_is_said(marked: Client, menu: str) -> None:
    plan = keep(marked, menu)
    assert unsaid(marked.get(plan).html, PLANNED) == []
    assert unsaid(marked.get(f"{plan}/bench").html, PLANNED) == []
    assert unsaid(marked.get("/plans").html, PLANNED) == []


def test_a_plan_stays_in_the_language_that_it_was_made_in(planner: Client) -> None:
    planner.post("/plans/new", MENU, accept_language="fr")
    assert ASKED[-1][1]["language"] == "fr"
    plan = keep(planner)
    english, french = (planner.get(plan, accept_language=code).html for code in ("en", "fr"))
    assert 'class="step-text" lang="en"' in french
    assert 'lang="en"' not in english
    assert "Friday 27 November" in planner.get(f"{plan}/sheet", accept_language="fr").words
    assert json.loads(planner.get(f"{plan}/bench/data").body)["language"] == "en"
    assert "vendredi 27" in french and "Friday 27" in english


def test_what_was_told_and_what_moves_is_said(marked: Client) -> None:
    plan = keep(marked)
    for what in ("begun", "takes", "held"):
        marked.post(f"{plan}/tell", {"key": what, "what": what, "task": COOK, "minutes": "30"})
    assert unsaid(marked.get(plan).html, PLANNED) == []
    assert unsaid(marked.get(anew(marked, plan)).html, PLANNED) == []


def test_a_form_with_faults_and_a_plan_being_made_are_said(marked: Client) -> None:
    chosen = {"chosen:plain-cream": "yes", "pieces:plain-cream": "4"}
    refused = marked.post("/plans/new", {"pieces:plain-cream": "x", "serve": "z", "begin": "z"})
    assert unsaid(refused.html, PLANNED) == []
    making = marked.post("/plans/new", {**chosen, "serve": MONDAY}).headers["location"]
    assert unsaid(marked.get(making).html, PLANNED) == []
    assert unsaid(marked.get(f"{making}/progress").html, PLANNED) == []
    marked.post(f"{making}/stop", {})


@pytest.mark.parametrize(
    "make", [freezing_dome, cooling_bowl, folded_mousse, never_frozen, poured_glaze]
)
def test_temperatures_are_said(thermal: Client, monkeypatch: pytest.MonkeyPatch, make: Any) -> None:
    speak_marked(monkeypatch)
    result = make()
    thermal.app.state.temperatures = TemperatureWork(lambda question: drawn(result))
    assert unsaid(thermal.get(PAGE).html, TIMED | told(result)) == []
