"""A plan made anew: what is done stays, what failed comes again, the rest moves little."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

import pytest

from entremetry.agenda.agenda import Agenda, State
from entremetry.agenda.life import history, to_make_again
from entremetry.agenda.record import Entry, Record
from entremetry.agenda.telling import Teller
from entremetry.errors import EntremetryError
from entremetry.planning import validate
from entremetry.usecases.plans import Planned, agenda_with, planned_anew
from unit.agenda.menus import LAYERS
from unit.usecases.test_plans import QUICK, by_id, planned


@pytest.fixture(scope="module")
def plan() -> Planned:
    """A plan for the layered dessert."""
    return planned(LAYERS)


def until(plan: Planned, now: datetime) -> tuple[Entry, ...]:
    """Everything that the plan lets happen until a moment, as it was planned."""
    return tuple(
        Entry(task=t.id, started=t.start, ended=t.end if t.end <= now else None)
        for t in plan.agenda.tasks
        if t.start < now
    )


def anew(plan: Planned, record: Record) -> Planned:
    """The plan made anew, held against the validator."""
    found = planned_anew(plan, record, limits=QUICK)
    assert found.plan is not None
    return found


def starts(agenda: Agenda) -> dict[str, datetime]:
    """When each task starts, without the key of the dessert."""
    return {task.id.split("/", 1)[1]: task.start for task in agenda.tasks}


def test_if_all_goes_as_planned_nothing_moves(plan: Planned) -> None:
    now = by_id(plan)["assembly-2"].start
    found = anew(plan, Record(now=now, entries=until(plan, now)))
    assert found.agenda.feasible
    assert starts(found.agenda) == starts(plan.agenda)
    assert {task.moved for task in found.agenda.tasks} == {0}


def test_a_split_mousse_is_made_again_and_what_is_in_the_freezer_stays(plan: Planned) -> None:
    now = by_id(plan)["mousse-5"].end
    record = Record(now=now, entries=until(plan, now), again=("layers/mousse-5",))
    found = anew(plan, record)
    old, new = by_id(plan), by_id(found)
    for name in ("mousse-1", "mousse-2", "mousse-3", "mousse-4", "mousse-5"):
        assert new[name].start >= now
        assert new[name].state is State.TO_COME
    for name in ("custard-1", "heart-1", "heart-2"):
        assert (new[name].start, new[name].end) == (old[name].start, old[name].end)
    assert new["assembly-1"].start >= new["mousse-5"].end


def test_a_slow_freezer_moves_what_comes_after(plan: Planned) -> None:
    freeze = by_id(plan)["assembly-2"]
    now = freeze.start + timedelta(minutes=60)
    slow = freeze.minutes + 90
    record = Record(now=now, entries=until(plan, now), lasts=((freeze.id, slow),))
    new = by_id(anew(plan, record))
    assert new["assembly-2"].state is State.UNDER_WAY
    assert new["assembly-2"].minutes >= slow
    assert new["assembly-3"].start >= new["assembly-2"].end


def test_a_late_cook_does_nothing_before(plan: Planned) -> None:
    first = plan.agenda.tasks[0].start
    late = first + timedelta(hours=1)
    found = anew(plan, Record(now=first, not_before=late))
    assert min(h.start for task in found.agenda.tasks for h in task.hands) >= late
    assert found.agenda.served == plan.agenda.served


def test_a_cook_who_is_late_after_a_morning_of_work_keeps_that_morning(plan: Planned) -> None:
    now = by_id(plan)["heart-3"].start + timedelta(minutes=10)
    late = now + timedelta(hours=2)
    found = anew(plan, Record(now=now, entries=until(plan, now), not_before=late))
    old, new = starts(plan.agenda), starts(found.agenda)
    assert all(new[e.task.split("/", 1)[1]] == e.started for e in until(plan, now))
    assert old["custard-1"] == new["custard-1"]


def test_what_is_done_never_moves_even_if_it_was_done_at_another_time(plan: Planned) -> None:
    night = plan.agenda.begins.replace(hour=3) + timedelta(days=1)
    done = Entry(task="layers/crust-1", started=night, ended=night + timedelta(minutes=20))
    new = by_id(anew(plan, Record(now=night + timedelta(hours=1), entries=(done,))))
    assert (new["crust-1"].start, new["crust-1"].end) == (done.started, done.ended)
    assert new["crust-1"].state is State.DONE


def test_a_plan_made_anew_is_sound(plan: Planned) -> None:
    now = by_id(plan)["mousse-5"].end
    record = Record(now=now, entries=until(plan, now), again=("layers/mousse-4",))
    found = anew(plan, record)
    assert found.plan is not None
    failed = to_make_again(plan.menu.problem, record)
    past = history(record, Teller(menu=plan.menu).clock, failed=failed)
    assert validate(found.menu.problem, found.plan, past) == ()


def test_states_are_told_without_planning(plan: Planned) -> None:
    now = by_id(plan)["heart-3"].start + timedelta(minutes=10)
    agenda = agenda_with(plan, Record(now=now, entries=until(plan, now)))
    states = {task.id.split("/", 1)[1]: task.state for task in agenda.tasks}
    assert states["custard-1"] is State.DONE
    assert states["heart-3"] is State.UNDER_WAY
    assert states["assembly-7"] is State.TO_COME
    assert starts(agenda) == starts(plan.agenda)


def test_a_plan_made_anew_can_be_made_anew_once_more(plan: Planned) -> None:
    now = by_id(plan)["assembly-2"].start
    once = anew(plan, Record(now=now, entries=until(plan, now)))
    later = now + timedelta(minutes=30)
    twice = anew(once, Record(now=later, entries=until(once, later)))
    assert starts(twice.agenda) == starts(plan.agenda)


def test_hot_custard_never_waits_for_a_late_cook_but_is_made_again(plan: Planned) -> None:
    cooked = by_id(plan)["custard-1"]
    now = cooked.end
    record = Record(now=now, entries=until(plan, now), not_before=now + timedelta(hours=3))
    lost = planned_anew(plan, record, limits=QUICK).agenda
    assert not lost.feasible
    assert lost.tasks == ()
    again = planned_anew(plan, replace(record, again=(cooked.id,)), limits=QUICK)
    assert by_id(again)["custard-1"].start >= now + timedelta(hours=3)


@pytest.mark.parametrize(
    ("told", "message"),
    [
        ({"again": ("layers/mouse",)}, "no task is called"),
        ({"lasts": (("layers/heart-3", -4),)}, "accepted: 0 to"),
        ({"not_before": datetime.fromisoformat("2026-11-26T10:00")}, "without a zone"),
    ],
)
def test_a_record_of_what_cannot_be_is_refused(
    plan: Planned, told: dict[str, Any], message: str
) -> None:
    with pytest.raises(EntremetryError, match=message):
        planned_anew(plan, Record(now=plan.agenda.begins, **told), limits=QUICK)


def test_what_is_said_to_have_begun_in_the_future_is_refused(plan: Planned) -> None:
    now = plan.agenda.begins
    ahead = Entry(task="layers/heart-1", started=now + timedelta(hours=1))
    with pytest.raises(EntremetryError, match="is to come"):
        planned_anew(plan, Record(now=now, entries=(ahead,)), limits=QUICK)


def test_without_a_plan_nothing_is_made_anew() -> None:
    none = planned(LAYERS, begin="2026-11-28 16:00")
    with pytest.raises(EntremetryError, match="a plan that can be made anew"):
        planned_anew(none, Record(now=none.agenda.begins), limits=QUICK)
