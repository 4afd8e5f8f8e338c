"""Laws of menus and their plans, whatever the kitchen, the hours and the number of pieces."""

from __future__ import annotations

from collections import Counter
from datetime import datetime, timedelta
from functools import cache
from zoneinfo import ZoneInfo

from hypothesis import given, settings
from hypothesis import strategies as st

from entremetry.agenda.composing import round_of
from entremetry.agenda.life import history, to_make_again
from entremetry.agenda.local_time import Clock, local_time
from entremetry.agenda.menu import Menu
from entremetry.agenda.record import Entry, Record
from entremetry.agenda.telling import Teller
from entremetry.planning import Limits, validate
from entremetry.usecases.batch import surroundings
from entremetry.usecases.plans import (
    Course,
    Planned,
    composed,
    plan_menu,
    planned_anew,
    planned_from,
    planned_text,
)
from properties.strategies_agenda import QUICK_TEXTS, SERVED, ZONES, courses, demo_texts, kitchens
from unit.agenda.menus import HOME, LAYERS, NOW, ONE_TRAY, SERVE

QUICK = Limits(seconds=4.0, explaining=0.5, workers=1)
LONG_AGO = NOW - timedelta(days=400)
MENUS = st.lists(courses(QUICK_TEXTS), min_size=1, max_size=3)


def menu(desserts: list[Course], kitchen: str, serve: str) -> Menu:
    """A menu, nothing solved."""
    around = surroundings(kitchen, "kitchen")
    return composed(desserts, serve=serve, around=around, begin=None, now=LONG_AGO)


def lawful(found: Menu) -> None:
    """Each task in its rounds with words and all numbers from nought; limits in order."""
    problem = found.problem
    words = dict(found.words)
    rounds = Counter(round_of(task.id)[0] for task in problem.tasks)
    assert {task.id for task in problem.all_tasks} <= set(words)
    for task in problem.tasks:
        name, number = round_of(task.id)
        assert (words[task.id].round, words[task.id].rounds) == (number, rounds[name])
        assert min(task.hands_on, task.waiting, task.closing, task.freshness) >= 0
        assert task.longest_wait >= task.waiting
        assert all(need.amount >= 1 for need in task.needs)
    for delay in problem.delays:
        assert delay.most is None or delay.most >= (delay.least or 0) >= 0
    assert [dish.serving for dish in found.dishes] == [s.task for s in problem.services]
    for person in problem.people:
        reached = 0
        for window in (w for session in person.sessions for w in session.windows):
            assert reached <= window.start < window.end <= problem.end
            reached = window.end


@settings(max_examples=40)
@given(MENUS, kitchens(), st.sampled_from(SERVED))
def test_every_menu_is_a_lawful_problem(desserts: list[Course], kitchen: str, serve: str) -> None:
    lawful(menu(desserts, kitchen, serve))


@settings(max_examples=4)
@given(courses(demo_texts()), kitchens(), st.sampled_from(SERVED))
def test_every_demo_dessert_is_a_lawful_problem(dessert: Course, kitchen: str, serve: str) -> None:
    lawful(menu([dessert], kitchen, serve))


@settings(max_examples=40)
@given(st.integers(1, 120), st.integers(1, 12), st.integers(1, 4))
def test_pieces_of_all_rounds_add_up(pieces: int, cavities: int, owned: int) -> None:
    at_once = min(pieces, cavities * owned)
    if -(-pieces // at_once) > 50:
        return
    tray = ONE_TRAY.replace("cavities: 6}", f"cavities: {cavities}, owned: {owned}}}")
    found = menu([Course(text=LAYERS, pieces=pieces)], HOME + tray, SERVE)
    filled = [words for name, words in found.words if "/assembly-1" in name]
    told = [each.amounts[0].split(" ") for each in filled]
    amounts = [int(each[0]) if each[1] == "cavities" else 1 for each in told]
    assert sum(amounts) == pieces == found.dishes[0].pieces
    assert max(amounts) == at_once
    assert len(amounts) == -(-pieces // at_once)


@given(
    st.sampled_from(ZONES),
    st.datetimes(
        min_value=local_time("2020-01-01 00:00", ZoneInfo("UTC")).replace(tzinfo=None),
        max_value=local_time("2035-01-01 00:00", ZoneInfo("UTC")).replace(tzinfo=None),
    ),
    st.integers(0, 60 * 1440),
)
def test_local_time_there_and_back_is_the_same_minute(
    zone: str, start: datetime, minute: int
) -> None:
    place = ZoneInfo(zone)
    origin = local_time(f"{start:%Y-%m-%d %H:%M}+00:00", place)
    clock = Clock(origin=origin, zone=place)
    assert clock.minute(clock.moment(minute)) == minute
    assert clock.moment(minute).tzinfo is place


@settings(max_examples=6)
@given(st.lists(courses(QUICK_TEXTS, most=12), min_size=1, max_size=2), kitchens())
def test_every_plan_is_sound_and_kept_exactly(desserts: list[Course], kitchen: str) -> None:
    found = plan_menu(desserts, serve=SERVE, kitchen_text=kitchen, now=LONG_AGO, limits=QUICK)
    assert found.agenda.feasible is (found.plan is not None)
    assert planned_from(planned_text(found)) == found
    if found.plan is not None:
        assert validate(found.menu.problem, found.plan) == ()
        for task in found.agenda.tasks:
            assert task.minutes == task.hands_on + task.waiting >= 0
        served = {each.at for each in found.agenda.served}
        assert max(task.end for task in found.agenda.tasks) in served


@cache
def a_plan() -> Planned:
    """One plan to live with."""
    course = Course(text=LAYERS, pieces=12)
    return plan_menu([course], serve=SERVE, kitchen_text=HOME + ONE_TRAY, now=NOW, limits=QUICK)


@settings(max_examples=8)
@given(st.integers(0, 40), st.booleans(), st.integers(0, 180))
def test_the_past_never_moves(count: int, fails: bool, late: int) -> None:
    plan = a_plan()
    tasks = plan.agenda.tasks
    now = tasks[min(count, len(tasks) - 2)].start
    entries = tuple(
        Entry(task=t.id, started=t.start, ended=t.end if t.end <= now else None)
        for t in tasks
        if t.start < now
    )
    again = (entries[-1].task,) if fails and entries else ()
    record = Record(now=now, entries=entries, again=again, not_before=now + timedelta(minutes=late))
    found = planned_anew(plan, record, limits=QUICK)
    failed = to_make_again(plan.menu.problem, record)
    placed = {task.id: task for task in found.agenda.tasks}
    for entry in entries if placed else ():
        if entry.task in failed:
            assert placed[entry.task].start >= now
        else:
            assert placed[entry.task].start == entry.started
            assert entry.ended in (None, placed[entry.task].end)
    if found.agenda.feasible and found.plan is not None:
        past = history(record, Teller(menu=plan.menu).clock, failed=failed)
        assert validate(found.menu.problem, found.plan, past) == ()
