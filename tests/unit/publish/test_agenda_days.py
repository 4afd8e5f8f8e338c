"""A plan taken apart says when hands are where, and what each wait is for."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from zoneinfo import ZoneInfo

import pytest

from agendas import AGENDA, PARIS, SESSIONS, TASKS, at, task, with_a_moment_outside
from entremetry.agenda.agenda import Hands
from entremetry.agenda.local_time import day, minutes_between
from entremetry.publish.agenda_days import meanwhile, next_to, outside, waits, within, works
from entremetry.publish.agenda_wording import clock_from, lasting, listed, summary, title

NEW_YORK = ZoneInfo("America/New_York")


def test_every_minute_of_a_task_is_work_or_wait() -> None:
    alone = [each for each in TASKS if not each.together]
    for each in alone:
        mine = replace(AGENDA, tasks=(each,))
        worked = sum(work.minutes for work in works(mine))
        waited = sum(wait.minutes for wait in waits(mine))
        assert (worked, waited) == (each.hands_on, each.waiting)


def test_what_is_done_in_one_go_is_one_go() -> None:
    (both,) = [work for work in works(AGENDA) if len(work.tasks) == 2]
    assert {each.id for each in both.tasks} == {TASKS[3].id, *TASKS[3].together}
    assert title(*both.tasks) == "Mix · Almond base + Hazelnut sablé"


def test_hands_that_meet_are_one_go_and_those_of_another_person_are_not() -> None:
    one = task(("d", "D"), ("c", "C"), "whip", ("27 10:00", "27 10:30"), ("27 10:00", 10))
    more = (*one.hands, Hands(person="cook", start=at("27 10:10"), end=at("27 10:20")))
    helper = Hands(person="helper", start=at("27 10:00"), end=at("27 10:05"))
    found = works(replace(AGENDA, tasks=(replace(one, hands=(*more, helper)),)))
    assert sorted((work.person, work.minutes) for work in found) == [("cook", 20), ("helper", 5)]


def test_sessions_hold_all_hands_but_the_moments_outside() -> None:
    agenda = with_a_moment_outside()
    held = [work for session in SESSIONS for work in within(session, works(agenda))]
    assert [work.task.kind for work in outside(agenda)] == ["place"]
    assert len(held) + 1 == len(works(agenda))
    assert outside(AGENDA) == ()


def test_a_wait_knows_what_takes_it_up() -> None:
    found = {(wait.task.kind, wait.task.component): wait.then for wait in waits(AGENDA)}
    assert found["bake", "base"] is not None and found["bake", "base"].kind == "bake"
    assert found["freeze-until", "cream"] is None
    compote = found["freeze-until", "compote"]
    assert compote is not None and compote.component == "mousse"


def test_a_wait_begins_when_hands_leave() -> None:
    cool, back = (w for w in works(AGENDA) if w.task.kind == "cool-to")
    assert [wait.minutes for wait in next_to(cool, waits(AGENDA))] == [36]
    assert next_to(back, waits(AGENDA)) == () and back.again and not cool.again


def test_what_runs_through_a_session_is_found() -> None:
    running = {wait.task.component for wait in meanwhile(SESSIONS[0], waits(AGENDA))}
    assert running == {"compote", "base", "cream"}


def moment(text: str, *, fold: int = 0) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=PARIS, fold=fold)


@pytest.mark.parametrize(
    ("start", "end", "passed"),
    [
        (moment("2026-10-24 21:00"), moment("2026-10-25 09:00"), 780),
        (moment("2026-03-28 21:00"), moment("2026-03-29 09:00"), 660),
        (moment("2026-10-25 02:30"), moment("2026-10-25 02:30", fold=1), 60),
        (moment("2026-11-27 18:00"), datetime(2026, 11, 27, 12, 30, tzinfo=NEW_YORK), 30),
    ],
)
def test_minutes_pass_by_the_world_not_by_the_clock(
    start: datetime, end: datetime, passed: int
) -> None:
    assert minutes_between(start, end) == passed


def test_goes_stand_in_order_where_the_clocks_are_set_back() -> None:
    early = Hands(person="cook", start=moment("2026-10-25 02:50"), end=moment("2026-10-25 02:58"))
    late = Hands(
        person="cook",
        start=moment("2026-10-25 02:10", fold=1),
        end=moment("2026-10-25 02:20", fold=1),
    )
    whole = replace(TASKS[0], start=early.start, end=late.end, hands=(late, early))
    agenda = replace(AGENDA, tasks=(whole,))
    assert [work.minutes for work in works(agenda)] == [8, 10]
    assert [wait.minutes for wait in waits(agenda)] == [12]


def test_words_of_hours_and_days() -> None:
    assert day(at("28 19:00")) == "Saturday 28 November"
    assert clock_from(at("28 08:30"), at("27 20:00")) == "Sat\u00a008:30"
    assert clock_from(at("27 20:30"), at("27 20:00")) == "20:30"
    assert (lasting(90), lasting(0)) == ("1\u00a0h\u00a030\u00a0min", "0\u00a0min")
    assert listed(["a", "b", "c"]) == "a, b and c" and listed(["a"]) == "a"


def test_the_summary_says_every_step_and_the_service() -> None:
    said = summary(AGENDA).replace("\u00a0", " ")
    assert said.count("Session on") == 2
    assert "21:15 Freeze · Vanilla mousse" in said
    assert said.endswith("Served: Hazelnut bars, 6 pieces, Saturday 28 November, 19:00.")
