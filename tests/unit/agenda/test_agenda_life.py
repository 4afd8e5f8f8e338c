"""When life intervenes: what is made again, what lasts longer, who begins later."""

from __future__ import annotations

from datetime import timedelta
from zoneinfo import ZoneInfo

import pytest

from entremetry.agenda.life import (
    held_back,
    history,
    lasting,
    require_known,
    to_make_again,
    with_lengths,
    yielding,
)
from entremetry.agenda.local_time import Clock, local_time
from entremetry.agenda.menu import Menu
from entremetry.agenda.record import Entry, Record
from entremetry.errors import ProblemError
from entremetry.planning import Task
from unit.agenda.menus import LAYERS, SHORTBREAD, delays, menu, swapped

PARIS = ZoneInfo("Europe/Paris")
NOON = local_time("2026-11-27 12:00", PARIS)


@pytest.fixture(scope="module")
def layers() -> Menu:
    """The layered dessert."""
    return menu(LAYERS)


def told(*names: str, again: tuple[str, ...] = (), key: str = "layers") -> Record:
    """A record of tasks that are done, and of some that failed."""
    entries = tuple(
        Entry(task=f"{key}/{name}", started=NOON - timedelta(hours=2), ended=NOON) for name in names
    )
    return Record(now=NOON, entries=entries, again=tuple(f"{key}/{name}" for name in again))


def anew(found: Menu, record: Record) -> set[str]:
    """What has to be made again, without the key of the dessert."""
    return {name.split("/", 1)[1] for name in to_make_again(found.problem, record)}


MOUSSE = ("mousse-1", "mousse-2", "mousse-3", "mousse-4", "mousse-5")
HEART = ("custard-1", "custard-2", "heart-1", "heart-2", "heart-3")


def test_a_split_mousse_is_made_again_with_what_led_to_it_and_only_that(layers: Menu) -> None:
    record = told(*HEART, "crust-1", *MOUSSE, again=("mousse-5",))
    kept = {"crust-1", "heart-1", "heart-2", "heart-3"}
    assert anew(layers, record) & kept == set()
    assert set(MOUSSE) <= anew(layers, record)


def test_a_finished_component_that_may_wait_a_day_is_still_there(layers: Menu) -> None:
    # custard of kind insert keeps a day, so that a new mousse takes it from the fridge
    record = told(*HEART, *MOUSSE, again=("mousse-5",))
    (delay,) = delays(layers, "custard-2", "mousse-2")
    assert delay.most == 1440
    assert anew(layers, record) == set(MOUSSE)


def test_what_was_made_of_the_failure_fails_with_it(layers: Menu) -> None:
    record = told(*HEART, *MOUSSE, "assembly-1", "assembly-2", again=("mousse-5",))
    assert {"assembly-1", "assembly-2"} <= anew(layers, record)
    assert "heart-3" not in anew(layers, record)


def test_what_else_was_made_in_time_of_the_same_bowl_stays() -> None:
    quick = menu(swapped(("{step: strain, hands_on: 1 min}", "{step: strain, keeps: 10 min}")))
    record = told(*HEART, *MOUSSE, again=("mousse-5",))
    assert anew(quick, record) == {*MOUSSE, "custard-1", "custard-2"}


def test_a_step_that_is_still_to_come_sends_back_what_led_to_it(layers: Menu) -> None:
    record = told(*HEART, *MOUSSE[:4], again=("mousse-5",))
    assert anew(layers, record) == set(MOUSSE)


def test_what_was_done_in_one_go_fails_in_one_go() -> None:
    twin = swapped(("id: shortbread", "id: twin"), text=SHORTBREAD)
    both = menu(SHORTBREAD, twin)
    name = both.problem.merges[0].together.id
    baked = (
        Entry(task=name, started=NOON, ended=NOON),
        Entry(task="twin/dough-2", started=NOON, ended=NOON),
    )
    again = Record(now=NOON, entries=baked, again=("shortbread/dough-1",))
    assert to_make_again(both.problem, again) == {name, "twin/dough-2"}


def test_history_tells_what_is_done_and_under_way_but_not_what_failed() -> None:
    clock = Clock(origin=NOON - timedelta(hours=3), zone=PARIS)
    running = Entry(task="layers/b", started=NOON - timedelta(minutes=10))
    record = Record(now=NOON, entries=(*told("a", "c").entries, running))
    found = history(record, clock, failed=frozenset({"layers/c"}))
    assert found.now == 180
    assert [(d.task, d.start, d.end) for d in found.done] == [("layers/a", 60, 180)]
    assert [(r.task, r.start) for r in found.running] == [("layers/b", 170)]


def test_a_slow_freezer_stretches_the_wait() -> None:
    freeze = Task(id="a", hands_on=2, waiting=180, waiting_most=200)
    assert lasting(freeze, 302) == Task(id="a", hands_on=2, waiting=300, waiting_most=300)
    assert lasting(freeze, 102) == Task(id="a", hands_on=2, waiting=100, waiting_most=200)


def test_work_that_is_shorter_than_its_hands_takes_fewer_of_them() -> None:
    assert lasting(Task(id="a", hands_on=10, waiting=5, closing=2), 8) == Task(
        id="a", hands_on=6, closing=2
    )


def test_lengths_are_those_of_tasks_done_in_one_go_as_well() -> None:
    twin = swapped(("id: shortbread", "id: twin"), text=SHORTBREAD)
    problem = menu(SHORTBREAD, twin).problem
    name = problem.merges[0].together.id
    changed = with_lengths(problem, ((name, 33), ("twin/dough-2", 44)))
    assert changed.merges[0].together.least == 33
    assert changed.task("twin/dough-2").least == 44


def test_a_late_cook_has_no_hands_before(layers: Menu) -> None:
    (cook,) = layers.problem.people
    minute = cook.planned[0].start + 90
    (late,) = held_back(layers.problem, minute).people
    assert late.planned[0].start == minute
    assert late.planned[1:] == cook.planned[1:]


def test_craft_gives_where_what_is_done_cannot_be_undone_and_safety_never(layers: Menu) -> None:
    firm = {(d.before, d.after): d.firm for d in yielding(layers.problem).delays if d.firm}
    assert ("layers/assembly-6", "layers/assembly-7") in firm
    assert ("layers/assembly-3", "layers/assembly-4") not in firm


@pytest.mark.parametrize(
    ("record", "message"),
    [
        (told("nope"), "no task is called 'layers/nope'"),
        (told(again=("mouse-5",)), "no task is called 'layers/mouse-5'; did you mean"),
        (Record(now=NOON, lasts=(("layers/x", 5),)), "no task is called 'layers/x'"),
        (Record(now=NOON, lasts=(("layers/crust-1", -1),)), "lasts -1 minutes; accepted: 0 to"),
        (Record(now=NOON, lasts=(("layers/crust-1", 10**9),)), "accepted: 0 to 43200"),
    ],
)
def test_a_record_of_what_cannot_be_is_refused(layers: Menu, record: Record, message: str) -> None:
    with pytest.raises(ProblemError, match=message):
        require_known(layers.problem, record)


def test_all_that_is_wrong_with_a_record_is_said_at_once(layers: Menu) -> None:
    record = Record(now=NOON, lasts=(("x", 1), ("layers/crust-1", -1)), again=("y",))
    with pytest.raises(ProblemError) as caught:
        require_known(layers.problem, record)
    assert len(caught.value.faults) == 3
