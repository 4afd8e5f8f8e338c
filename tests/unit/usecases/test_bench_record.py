"""What was told at the bench becomes what is done, what is under way, and how long it lasts."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

from agendas import AGENDA, at, begun
from entremetry.agenda.record import Entry, Record
from entremetry.store import BenchEntry, Happening
from entremetry.usecases.bench_record import record

COOK, FILL, FREEZE = (task.id for task in AGENDA.tasks[:3])
NOW = at("27 20:00")


def told(what: Happening, when: str, task: str = COOK, minutes: int = 0) -> BenchEntry:
    return BenchEntry(key=f"{what}{when}", what=what, at=at(when), task=task, minutes=minutes)


def recorded(*entries: BenchEntry, heard: int = 0, first: int = 1) -> Record:
    """The record of entries that are numbered as they come."""
    numbered = [replace(each, number=first + k) for k, each in enumerate(entries)]
    return record(AGENDA, numbered, heard=heard, now=NOW)


def test_a_task_is_under_way_and_then_done() -> None:
    begin, done = told(Happening.BEGUN, "27 18:35"), told(Happening.DONE, "27 18:52")
    assert recorded(begin).entries == (Entry(task=COOK, started=at("27 18:35")),)
    assert recorded(begin, done).entries == (
        Entry(task=COOK, started=at("27 18:35"), ended=at("27 18:52")),
    )


def test_a_task_done_without_a_beginning_took_as_long_as_planned() -> None:
    (entry,) = recorded(told(Happening.DONE, "27 18:52")).entries
    assert (entry.started, entry.ended) == (at("27 18:32"), at("27 18:52"))


def test_entries_count_in_the_order_of_their_times_however_they_came_in() -> None:
    begin, done = told(Happening.BEGUN, "27 18:35"), told(Happening.DONE, "27 18:52")
    assert recorded(done, begin) == recorded(begin, done)


def test_a_slip_is_taken_back() -> None:
    slip = told(Happening.DONE, "27 18:52"), told(Happening.NOT_YET, "27 18:53")
    assert recorded(*slip) == Record(now=NOW)


def test_a_wait_counts_from_when_the_hands_are_off() -> None:
    begin = told(Happening.BEGUN, "27 19:10", FREEZE)
    left = told(Happening.LEFT, "27 19:30", FREEZE)
    found = recorded(begin, left)
    assert found.entries == (Entry(task=FREEZE, started=at("27 19:10")),)
    assert found.lasts == ((FREEZE, 20 + 130 - 2),)


def test_a_wait_told_alone_began_with_its_hands_before_it() -> None:
    found = recorded(told(Happening.LEFT, "27 19:30", FREEZE))
    assert found.entries == (Entry(task=FREEZE, started=at("27 19:28")),)
    assert found.lasts == ((FREEZE, 130),)


def test_the_last_word_on_minutes_counts() -> None:
    words = (
        told(Happening.TAKES, "27 18:40", minutes=25),
        told(Happening.TAKES, "27 18:45", minutes=35),
    )
    assert recorded(*words).lasts == ((COOK, 35),)


def test_what_failed_is_made_again_and_is_not_done() -> None:
    failed = told(Happening.DONE, "27 18:52"), told(Happening.AGAIN, "27 18:55")
    found = recorded(*failed)
    assert (found.entries, found.again) == ((), (COOK,))
    anew = recorded(*failed, told(Happening.DONE, "27 19:20"))
    assert anew.again == ()
    assert anew.entries[0].ended == at("27 19:20")


def test_the_cook_is_held_back_until_the_latest_word_that_is_not_over() -> None:
    over = told(Happening.HELD, "27 18:00", "", 30)
    held = told(Happening.HELD, "27 19:50", "", 45)
    assert recorded(over, held).not_before == at("27 20:35")
    assert recorded(over).not_before is None


def test_entries_of_tasks_that_are_gone_are_left_out() -> None:
    assert recorded(told(Happening.DONE, "27 18:52", "gone/for/good")) == Record(now=NOW)


def test_a_plan_made_anew_tells_of_what_was_heard_before_by_itself() -> None:
    heard = [
        replace(told(Happening.AGAIN, "27 18:55", FILL), number=1),
        replace(told(Happening.DONE, "27 18:56", FREEZE), number=2),
        replace(told(Happening.TAKES, "27 18:57", FREEZE, 200), number=3),
    ]
    agenda = begun()
    found = record(agenda, heard, heard=3, now=NOW)
    cook, fill = agenda.tasks[:2]
    assert found.entries == (
        Entry(task=COOK, started=cook.start, ended=cook.end),
        Entry(task=FILL, started=fill.start),
    )
    assert (found.again, found.lasts) == ((), ((FREEZE, 200),))


def test_later_entries_count_upon_a_plan_made_anew() -> None:
    done = replace(told(Happening.DONE, "27 19:05", FILL), number=9)
    found = record(begun(), [done], heard=3, now=NOW)
    fill = begun().tasks[1]
    assert found.entries[1] == Entry(task=FILL, started=fill.start, ended=at("27 19:05"))
    assert found.now - fill.start > timedelta(0)


def test_a_wait_that_nobody_has_to_end_is_done_when_its_minutes_are_over() -> None:
    left = replace(told(Happening.LEFT, "27 19:02", FREEZE), number=1)
    bake = next(task.id for task in AGENDA.tasks if len(task.hands) > 1)
    oven = replace(told(Happening.LEFT, "27 19:28", bake), number=2)
    later = record(AGENDA, [left, oven], heard=0, now=at("27 22:00"))
    ends = {entry.task: entry.ended for entry in later.entries}
    assert ends == {FREEZE: at("27 21:10"), bake: None}
