"""Free hours become sessions: weekdays, dates, days away, breaks, and what could be offered."""

from __future__ import annotations

from textwrap import dedent
from zoneinfo import ZoneInfo

import pytest

from entremetry.agenda.local_time import Clock, local_time
from entremetry.agenda.sessions import assumed, people
from entremetry.errors import DocumentError
from entremetry.kitchen import read_kitchen
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.planning import Person, Session
from unit.agenda.menus import HOME

PARIS = ZoneInfo("Europe/Paris")
FRIDAY = "2026-11-27 00:00"
DAY = 1440


def kitchen(*cooks: str) -> KitchenDocument:
    """A kitchen of cooks, each written as a line of the document."""
    lines = "".join(f"  - {cook}\n" for cook in cooks)
    return read_kitchen(dedent(f"{HOME}people:\n{lines}"), file="kitchen.yaml")


def sessions(
    *cooks: str, begin: str = FRIDAY, end: int = 2 * DAY, offered: bool = False
) -> list[Session]:
    """Sessions of the first cook."""
    clock = Clock(origin=local_time(begin, PARIS), zone=PARIS)
    first: Person = people(kitchen(*cooks), clock, end)[0]
    return [each for each in first.sessions if each.offered is offered]


def hours(found: list[Session]) -> list[list[tuple[float, float]]]:
    """Windows of sessions in hours from minute 0."""
    return [[(w.start / 60, w.end / 60) for w in each.windows] for each in found]


def test_hours_of_a_weekday_come_on_each_such_day() -> None:
    cook = "{name: A, free: [{day: friday, start: '18:00', end: '22:00'}]}"
    assert hours(sessions(cook, end=9 * DAY)) == [[(18, 22)], [(7 * 24 + 18, 7 * 24 + 22)]]


def test_hours_of_a_date_come_once_and_beside_those_of_the_weekday() -> None:
    free = "{day: friday, start: '18:00', end: '22:00'}, {date: %s, start: '08:00', end: '10:00'}"
    cook = "{name: A, free: [" + free % "2026-11-27" + "]}"
    assert hours(sessions(cook, end=9 * DAY))[:2] == [[(8, 10)], [(18, 22)]]


def test_on_a_day_away_nobody_works_nor_could_be_asked_to() -> None:
    cook = "{name: A, free: [{day: friday, start: '18:00', end: '22:00'}], away: [2026-11-27]}"
    assert sessions(cook, end=DAY) == []
    assert sessions(cook, end=DAY, offered=True) == []


def test_a_short_break_lies_inside_a_session_and_a_long_one_between_two() -> None:
    cook = (
        "{name: A, free: [{day: friday, start: '08:00', end: '12:00'}, {day: friday, start: "
        "'12:45', end: '15:00'}, {day: friday, start: '15:46', end: '17:00'}]}"
    )
    assert hours(sessions(cook)) == [[(8, 12), (12.75, 15)], [(15 + 46 / 60, 17)]]


def test_hours_that_overlap_count_once() -> None:
    cook = (
        "{name: A, free: [{day: friday, start: '08:00', end: '12:00'}, "
        "{day: friday, start: '10:00', end: '11:00'}]}"
    )
    assert hours(sessions(cook)) == [[(8, 12)]]


def test_waking_hours_beside_the_planned_ones_are_offered() -> None:
    cook = "{name: A, free: [{day: friday, start: '08:00', end: '22:00'}]}"
    assert hours(sessions(cook, end=DAY, offered=True)) == [[(7, 8)], [(22, 23)]]


def test_midnight_ends_one_day_and_begins_the_next() -> None:
    cook = (
        "{name: A, free: [{day: friday, start: '20:00', end: '24:00'}, "
        "{day: saturday, start: '00:00', end: '02:00'}]}"
    )
    assert hours(sessions(cook)) == [[(20, 24)], [(24, 26)]]


@pytest.mark.parametrize(
    ("begin", "day", "length"),
    [("2027-03-28 00:00", "sunday", 3), ("2026-10-25 00:00", "sunday", 5)],
)
def test_a_night_of_a_change_has_an_hour_less_or_more(begin: str, day: str, length: int) -> None:
    cook = f"{{name: A, free: [{{day: {day}, start: '00:00', end: '04:00'}}]}}"
    assert hours(sessions(cook, begin=begin, end=DAY)) == [[(0, length)]]


def test_free_hours_within_the_hour_that_is_left_out_are_none() -> None:
    cook = "{name: A, free: [{day: sunday, start: '02:00', end: '03:00'}]}"
    assert sessions(cook, begin="2027-03-28 00:00", end=DAY) == []


def test_sessions_are_cut_at_the_beginning_and_at_the_end_of_the_plan() -> None:
    cook = "{name: A, free: [{day: friday, start: '08:00', end: '22:00'}]}"
    assert hours(sessions(cook, begin="2026-11-27 09:00", end=60)) == [[(0, 1)]]


def test_without_anybody_one_cook_is_free_by_day_and_that_is_said() -> None:
    clock = Clock(origin=local_time(FRIDAY, PARIS), zone=PARIS)
    (cook,) = people(None, clock, DAY)
    assert hours([each for each in cook.sessions if not each.offered]) == [[(8, 22)]]
    assert "08:00 to 22:00" in assumed(None)
    assert assumed(kitchen("{name: A, free: [{day: friday, start: '18:00', end: '22:00'}]}")) == ""


@pytest.mark.parametrize(
    ("cook", "told"),
    [
        ("{name: A, free: [{day: friday, start: '18:00', end: '24:30'}]}", "up to '24:00'"),
        ("{name: A, free: [{day: friday, start: '18:00', end: '18:00'}]}", "later than the start"),
        ("{name: A, free: [{start: '18:00', end: '19:00'}]}", "a day of the week or a date"),
    ],
)
def test_hours_that_cannot_be_are_refused_by_line(cook: str, told: str) -> None:
    with pytest.raises(DocumentError, match=f"line 5.*{told}"):
        kitchen(cook)


def test_two_people_of_one_name_are_refused() -> None:
    with pytest.raises(DocumentError, match="people: .*a name of its own for each person"):
        kitchen("{name: A}", "{name: A}")
