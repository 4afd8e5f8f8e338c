"""Waits are computed where physics can, else stated, else usual; what never ends is cautioned."""

from __future__ import annotations

import pytest

from entremetry.agenda.draft import StepDraft
from entremetry.agenda.hands_on import HandsOn
from entremetry.agenda.waits import Wait, wait
from entremetry.errors import QuantityError
from entremetry.method.step import AnyStep
from entremetry.timings.step_temperatures import StepTemperatures
from unit.agenda.menus import step

FREEZE = step(step="freeze-until", temperature="-15 °C", time="3 h")


def told(time: float | None, high: float | None = None, mostly: str = "") -> StepTemperatures:
    """An answer of physics."""
    return StepTemperatures(
        step="a",
        name="Dome",
        kind="freeze-until",
        sentence="",
        target=258.15,
        time=time,
        low=time,
        high=high,
        reason="nothing in it gets colder",
        mostly=mostly,
        because="",
        sources=(),
        assumptions=(),
        written_time=None,
    )


def waited(what: AnyStep, answer: StepTemperatures | None = None, hands: float = 0.0) -> Wait:
    """The wait of a step, with an answer of physics if it can be timed."""

    def answers(name: str) -> StepTemperatures:
        assert answer is not None, name
        return answer

    return wait(what, hands=hands, step_id=answer and "a", answers=answers)


def test_of_a_freezing_time_the_upper_end_is_planned_to_five_minutes() -> None:
    found = waited(FREEZE, told(3600.0, high=4201.0, mostly="the air"))
    assert found.minutes == 75  # 70 min and a second
    assert "the air" in found.because


def test_of_a_cooling_time_the_best_estimate_is_planned_less_the_hands() -> None:
    cool = step(step="cool-to", temperature="30 °C", time="40 min")
    assert waited(cool, told(1500.0, high=3000.0), hands=2.0).minutes == 23


def test_what_never_gets_there_is_planned_as_stated_with_a_caution() -> None:
    found = waited(FREEZE, told(None))
    assert found.minutes == 180
    assert found.caution.startswith("Dome: nothing in it gets colder; planned with")


def test_a_refusal_of_physics_is_given_as_the_reason_for_the_stated_time() -> None:
    def refused(name: str) -> StepTemperatures:
        raise QuantityError(f"no heat for {name}", "some")

    found = wait(FREEZE, hands=0.0, step_id="a", answers=refused)
    assert found.minutes == 180
    assert "no heat for a" in found.because


def test_a_time_without_a_temperature_is_called_stated_not_computed() -> None:
    found = waited(step(step="freeze-until", time="3 h"), told(10_800.0))
    assert (found.minutes, found.because) == (180, "the time that the document states")


def test_the_hands_at_a_pan_lie_within_its_time() -> None:
    simmer = step(step="simmer", time="20 min")
    assert waited(simmer, hands=5.0).minutes == 15
    assert waited(simmer, hands=30.0).minutes == 0


def test_the_hands_of_an_oven_lie_before_its_time() -> None:
    assert waited(step(step="bake", at="160 °C", time="20 min"), hands=2.0).minutes == 20


@pytest.mark.parametrize(("kind", "minutes"), [("soak", 10), ("rest", 30)])
def test_without_any_time_a_usual_one_is_planned_and_says_so(kind: str, minutes: int) -> None:
    what = step(step=kind, what=["x"]) if kind == "soak" else step(step=kind)
    found = waited(what)
    assert found.minutes == minutes
    assert "no source" in found.because


def test_what_takes_no_time_of_its_own_waits_for_nothing() -> None:
    assert waited(step(step="mix")) == Wait(minutes=0)


def test_a_hold_ends_when_it_is_wanted_and_at_its_time_at_the_latest() -> None:
    found = waited(step(step="hold", time="3 h"))
    assert (found.minutes, found.most) == (0, 180)


@pytest.mark.parametrize(("cold", "most"), [("4 °C", 1440), ("20 °C", 120)])
def test_a_hold_without_a_time_lasts_a_day_in_the_fridge_and_two_hours_outside(
    cold: str, most: int
) -> None:
    assert waited(step(step="hold", temperature=cold)).most == most


def draft(what: AnyStep, component: str = "base") -> StepDraft:
    """A step with two minutes of hands and its wait."""
    hands = HandsOn(fixed=2.0, per_piece=0.0, because="")
    found = waited(what)
    return StepDraft(id="a", component=component, number=0, step=what, hands=hands, wait=found)


def test_a_bake_may_go_on_for_a_twentieth_until_hands_are_free() -> None:
    task = draft(step(step="bake", at="160 °C", time="40 min")).task()
    assert (task.hands_on, task.waiting, task.waiting_most, task.closing) == (1, 40, 42, 1)
    assert task.firm


def test_what_freezes_may_stay_for_two_weeks_and_an_insert_is_taken_out_by_hand() -> None:
    insert, piece = (draft(FREEZE, component).task() for component in ("heart", ""))
    assert insert.waiting_most == piece.waiting_most == 180 + 14 * 1440
    assert (insert.closing, piece.closing) == (2, 0)
