"""Local times are read, refused and counted in minutes that really pass."""

from __future__ import annotations

from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

import pytest

from entremetry.agenda.agenda import AgendaTask
from entremetry.agenda.local_time import Clock, local_time, said
from entremetry.errors import QuantityError

PARIS = ZoneInfo("Europe/Paris")


def clock(origin: str) -> Clock:
    """A clock of Paris."""
    return Clock(origin=local_time(origin, PARIS), zone=PARIS)


@pytest.mark.parametrize(
    ("evening", "morning", "hours"),
    [
        ("2027-03-27 20:00", "2027-03-28 08:00", 11),
        ("2026-10-24 20:00", "2026-10-25 08:00", 13),
        ("2026-11-24 20:00", "2026-11-25 08:00", 12),
    ],
)
def test_minutes_are_those_that_pass_over_a_change_of_the_clocks(
    evening: str, morning: str, hours: int
) -> None:
    there = local_time(morning, PARIS)
    assert clock(evening).minute(there) == hours * 60
    assert clock(evening).moment(hours * 60) == there


def test_a_task_over_the_night_of_a_change_lasts_as_long_as_it_lasts() -> None:
    evening, morning = (local_time(f"2027-03-{day}", PARIS) for day in ("27 20:00", "28 08:00"))
    task = AgendaTask(
        id="a",
        dessert="",
        dessert_name="",
        component="",
        component_name="",
        kind="rest",
        text="",
        start=evening,
        end=morning,
    )
    assert task.minutes == 11 * 60


def test_an_hour_that_the_clocks_leave_out_is_refused() -> None:
    with pytest.raises(QuantityError, match=r"02:30.*Europe/Paris leave out.*an hour that exists"):
        local_time("2027-03-28 02:30", PARIS)


def test_of_an_hour_that_comes_twice_the_first_is_meant_and_an_offset_tells_the_second() -> None:
    first = local_time("2026-10-25 02:30", PARIS)
    second = local_time("2026-10-25 02:30+01:00", PARIS)
    assert first.astimezone(UTC).hour == 0
    assert second.astimezone(UTC).hour == 1
    assert clock("2026-10-25 02:30").minute(second) == 60


@pytest.mark.parametrize(
    "text",
    ["", "soon", "19:00", "2026-11-28", "20261128", "2026-02-30 10:00", "2026-11-28 25:00"],
)
def test_what_is_no_time_is_refused_with_an_example(text: str) -> None:
    with pytest.raises(QuantityError, match="2026-11-28 19:00"):
        local_time(text, PARIS)


@pytest.mark.parametrize("text", ["0001-01-01 00:00", "9999-12-31 23:59", "9999-12-31 23:59+00:00"])
def test_a_year_that_no_calendar_here_holds_is_refused(text: str) -> None:
    with pytest.raises(QuantityError, match="1970 to 2999"):
        local_time(text, PARIS)


def test_a_time_with_its_offset_is_told_by_the_clock_of_the_zone() -> None:
    found = local_time("2026-11-28 19:00-05:00", PARIS)
    assert said(found) == "Sunday 29 November, 01:00"


def test_seconds_are_left_off() -> None:
    assert local_time("2026-11-28 19:00:59", PARIS) == local_time("2026-11-28 19:00", PARIS)


def test_a_moment_without_a_zone_is_refused() -> None:
    naive = datetime(2026, 11, 28, 19, 0, tzinfo=UTC).replace(tzinfo=None)
    with pytest.raises(QuantityError, match="without a zone"):
        clock("2026-11-28 10:00").minute(naive)


def test_the_end_of_a_day_is_the_beginning_of_the_next() -> None:
    here = clock("2026-11-28 00:00")
    assert here.at(date(2026, 11, 28), "24:00") == here.at(date(2026, 11, 29), "00:00") == 1440


def test_an_hour_of_free_time_that_is_left_out_is_moved_on() -> None:
    here = clock("2027-03-28 00:00")
    assert here.at(date(2027, 3, 28), "02:30") == here.at(date(2027, 3, 28), "03:30") == 150
