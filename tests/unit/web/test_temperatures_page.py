"""The page of temperatures answers, waits without blocking, and says why when it cannot."""

from __future__ import annotations

import threading
from typing import Any

import pytest

from entremetry.errors import QuantityError
from entremetry.store import Kind
from entremetry.web import temperatures_page
from entremetry.web.temperature_warming import frozen_demo
from entremetry.web.temperature_work import Question, Shown, TemperatureWork, drawn
from entremetry.web.temperatures_page import written_words
from unit.publish.step_results import HOUR, cooling_bowl, folded_mousse, freezing_dome, never_frozen

Client = Any

FROZEN = """\
entremetry: 1
id: frozen-cream
name: Frozen <cream>
pieces: 6
mould: hemisphere-70
components:
  cream:
    name: Set cream
    kind: mousse
    formula:
      cream-35: 500 g
      caster-sugar: 50 g
    density: 0.9 g/ml
    method:
      - {step: cool-to, temperature: 20 °C}
placement:
  - {component: cream, as: filling}
assembly:
  - {step: fill}
  - {step: freeze-until, temperature: -18 °C, time: 6 h}
  - {step: unmould}
  - {step: thaw-until, temperature: 4 °C}
"""
PAGE = "/desserts/frozen-cream/temperatures/assembly-2"
ANSWER = "/desserts/frozen-cream/temperature-answers/assembly-2"
QUESTION = Question(text=FROZEN, file="frozen-cream", step="assembly-2", kitchen_text=None)


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


@pytest.fixture
def thermal(empty: Client) -> Client:
    """A workbench with a dessert to freeze, whose temperatures are handed over."""
    empty.app.state.workbench.library.add(Kind.DESSERT, "frozen-cream", FROZEN)
    hand_over(empty, drawn(freezing_dome()))
    return empty


def hand_over(client: Client, shown: Shown) -> None:
    client.app.state.temperatures = TemperatureWork(lambda question: shown)


def test_the_answer_stands_in_one_line_with_its_interval(thermal: Client) -> None:
    words = plain(thermal.get(PAGE).words)
    assert "About 5 h 10 min" in words
    assert "between 4 h and 6 h 40 min, mostly the airflow" in words
    assert "The document says 6 h, which is within that range." in words


def test_the_page_tells_marks_assumptions_numbers_and_where_they_come_from(
    thermal: Client,
) -> None:
    words = plain(thermal.get(PAGE).words)
    assert "the heart starts to freeze" in words
    assert "The mould stands on a metal shelf." in words
    assert "22.0 °C" in words
    assert "Where does this number come from?" in words
    assert "Heat leaves through the mould" in words


def test_the_section_stands_there_at_every_moment_with_some_for_paper(thermal: Client) -> None:
    html = thermal.get(PAGE).html
    assert html.count('<li class="frame') == 13
    assert html.count('class="frame key"') == 6
    assert 'type="range"' in html and 'max="12"' in html


def test_every_step_that_can_be_timed_is_offered(thermal: Client) -> None:
    words = plain(thermal.get(PAGE).words)
    for step in ("Freeze Frozen <cream> to −18 °C", "Thaw Frozen <cream> to 4 °C"):
        assert step in words
    assert thermal.get(PAGE).html.count('aria-current="page"') == 1


def test_the_address_without_a_step_leads_to_the_first_of_the_assembly(thermal: Client) -> None:
    reply = thermal.get("/desserts/frozen-cream/temperatures")
    assert (reply.status, reply.headers["location"]) == (303, PAGE)


def test_a_dessert_without_such_steps_says_so(client: Client) -> None:
    reply = client.get("/desserts/plain-cream/temperatures")
    assert reply.status == 200
    assert "No step of this dessert can be timed" in reply.words


@pytest.mark.parametrize("path", ["frozen-cream/temperatures/assembly-9", "no/temperatures"])
def test_what_is_not_there_is_not_found(thermal: Client, path: str) -> None:
    assert thermal.get(f"/desserts/{path}").status == 404


def test_a_step_without_a_section_has_no_slider(thermal: Client) -> None:
    hand_over(thermal, drawn(cooling_bowl()))
    html = thermal.get(PAGE).html
    assert "Where the cold is" not in html
    assert 'type="range"' not in html


def test_a_step_about_a_number_shows_it_and_draws_nothing(thermal: Client) -> None:
    hand_over(thermal, drawn(folded_mousse()))
    reply = thermal.get(PAGE)
    assert "24 °C temperature of the mix" in plain(reply.words)
    assert "as weighed" in reply.words
    assert "Over time" not in reply.words


def test_what_is_never_reached_is_told_with_its_reason(thermal: Client) -> None:
    hand_over(thermal, drawn(never_frozen()))
    words = plain(thermal.get(PAGE).words)
    assert "It never gets there" in words
    assert "The air of the freezer has −12 °C" in words


def test_what_cannot_be_computed_is_told_and_leads_to_the_document(thermal: Client) -> None:
    def refuse(question: Question) -> Shown:
        raise QuantityError("a bowl of unknown size", "how much it holds")

    thermal.app.state.temperatures = TemperatureWork(refuse)
    reply = thermal.get(PAGE)
    assert reply.status == 200
    assert "This cannot be computed" in reply.words
    assert "found a bowl of unknown size; accepted: how much it holds." in reply.words
    assert 'href="/desserts/frozen-cream/edit"' in reply.html


def test_the_page_is_sent_while_the_answer_is_still_computed(
    thermal: Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    go = threading.Event()

    def slow(question: Question) -> Shown:
        go.wait(30.0)
        return drawn(freezing_dome())

    monkeypatch.setattr(temperatures_page, "AT_ONCE", 0.0)
    thermal.app.state.temperatures = TemperatureWork(slow)
    waiting = thermal.get(PAGE)
    assert 'role="status"' in waiting.html
    assert f'hx-get="{ANSWER}"' in waiting.html
    assert "Working it out, for this dessert, this mould and this kitchen." in waiting.words
    go.set()
    answer = thermal.get(ANSWER)
    assert "About 5 h 10 min" in plain(answer.words)
    assert "hx-get" not in answer.html
    assert 'hx-swap-oob="innerHTML"' in answer.html


def test_while_the_solver_is_made_ready_the_page_says_so(
    thermal: Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    go = threading.Event()
    work = TemperatureWork(lambda question: drawn(freezing_dome()))
    work.warm_up(lambda: go.wait(30.0))
    thermal.app.state.temperatures = work
    monkeypatch.setattr(temperatures_page, "AT_ONCE", 0.0)
    assert "The heat solver is being made ready." in thermal.get(PAGE).words
    go.set()
    assert "About 5 h 10 min" in plain(thermal.get(ANSWER).words)
    assert not work.warming


def test_the_same_question_is_computed_once() -> None:
    asked: list[Question] = []

    def compute(question: Question) -> Shown:
        asked.append(question)
        return drawn(cooling_bowl())

    work = TemperatureWork(compute)
    first, second = (work.ask(QUESTION).result(timeout=30.0) for _ in range(2))
    assert first is second
    assert asked == [QUESTION]


def test_a_refusal_is_kept_and_a_breakdown_is_tried_again() -> None:
    asked: list[str] = []

    def compute(question: Question) -> Shown:
        asked.append(question.step)
        raise QuantityError("a", "b") if question.step == "refused" else MemoryError

    work = TemperatureWork(compute)
    for step in ("refused", "refused", "broken", "broken"):
        question = Question(text="", file="", step=step, kitchen_text=None)
        assert work.ask(question).exception(timeout=30.0) is not None
    assert asked == ["refused", "broken", "broken"]


def test_the_curves_come_as_a_file_of_their_own(thermal: Client) -> None:
    reply = thermal.get("/desserts/frozen-cream/temperature-curves/assembly-2")
    assert reply.headers["content-type"].startswith("image/svg+xml")
    assert reply.html.startswith("<svg")


def test_nothing_of_a_document_is_taken_for_markup(thermal: Client) -> None:
    assert "<cream>" not in thermal.get(PAGE).html


def test_without_demo_desserts_there_is_nothing_to_warm(empty: Client) -> None:
    assert frozen_demo() is None


def test_a_broken_warm_up_stops_no_answer() -> None:
    def broken() -> None:
        raise MemoryError

    work = TemperatureWork(lambda question: drawn(cooling_bowl()))
    work.warm_up(broken)
    assert work.ask(QUESTION).result(timeout=30.0).frames == ()
    assert not work.warming


@pytest.mark.parametrize(
    ("written", "low", "high", "said"),
    [
        (None, 1.0, 2.0, ""),
        (
            3 * HOUR,
            4 * HOUR,
            6 * HOUR,
            "The document says 3 h: less than the shortest time we find.",
        ),
        (5 * HOUR, 4 * HOUR, 6 * HOUR, "The document says 5 h, which is within that range."),
        (
            9 * HOUR,
            4 * HOUR,
            6 * HOUR,
            "The document says 9 h: more than the longest time we find.",
        ),
        (9 * HOUR, 4 * HOUR, None, "The document says 9 h."),
        (9 * HOUR, None, None, "The document says 9 h."),
    ],
)
def test_the_written_time_is_compared_with_the_interval(
    written: float | None, low: float | None, high: float | None, said: str
) -> None:
    assert plain(written_words(written, low, high)) == said
