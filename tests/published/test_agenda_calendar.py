"""The calendar of a plan after RFC 5545 (rfc_5545), and read back by a parser we did not write.

Sections: 3.1 content lines, 3.3.5 date-time, 3.3.6 duration, 3.3.11 text, 3.4 and 3.6.1 required
properties, 3.6.6 alarms, 3.8.2.7 transparency.
"""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from icalendar import Calendar

from agendas import AGENDA, PARIS, SESSIONS, TASKS, at, with_a_moment_outside
from entremetry.agenda.agenda import Agenda, Hands, State
from entremetry.publish.agenda_calendar import BEFORE_A_SESSION, calendar

STAMP = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
LATER = STAMP + timedelta(hours=3)
NASTY = 'Crème, set; 50 % \\ done\nnext "line": é' + "é" * 90 + "\x07 🍐" * 30
UTC_TIME = re.compile(r"\d{8}T\d{6}Z")
DURATION = re.compile(r"[+-]?P(?:\d+W|(?:\d+D)?(?:T(?:\d+H)?(?:\d+M)?(?:\d+S)?)?)")


def written(agenda: Agenda = AGENDA, stamp: datetime = STAMP) -> bytes:
    return calendar(agenda, stamp=stamp)


def hostile() -> Agenda:
    evil = replace(TASKS[0], text=NASTY, component_name=NASTY, amounts=(NASTY,), uses=(NASTY,))
    return replace(AGENDA, tasks=(evil, *TASKS[1:]))


def events(agenda: Agenda = AGENDA, stamp: datetime = STAMP) -> list[Any]:
    return list(Calendar.from_ical(written(agenda, stamp)).walk("VEVENT"))


def sessions(agenda: Agenda = AGENDA) -> list[Any]:
    return [event for event in events(agenda) if str(event["summary"]).startswith("At the bench")]


def unfolded(content: bytes) -> list[str]:
    return content.decode().replace("\r\n ", "").split("\r\n")


def over_the_change_of_clocks(start: str, end: str) -> Agenda:
    first, last = (datetime.fromisoformat(text).replace(tzinfo=PARIS) for text in (start, end))
    hands = Hands(person="cook", start=first, end=first + timedelta(minutes=10))
    night = replace(TASKS[8], start=first, end=last, hands=(hands,))
    session = replace(SESSIONS[0], start=first, end=hands.end, tasks=(night.id,))
    return replace(AGENDA, tasks=(night,), sessions=(session,))


@pytest.mark.parametrize("agenda", [AGENDA, with_a_moment_outside(), hostile()])
def test_lines_end_in_crlf_and_are_at_most_75_octets(agenda: Agenda) -> None:
    content = written(agenda)
    assert content.endswith(b"END:VCALENDAR\r\n")
    assert b"\n" not in content.replace(b"\r\n", b"") and b"\r" not in content.replace(b"\r\n", b"")
    for line in content.split(b"\r\n"):
        assert len(line) <= 75
        line.decode("utf-8")  # no character is cut in two


def test_no_control_character_is_left() -> None:
    assert not re.search(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f]", written(hostile()).decode())


@pytest.mark.parametrize("agenda", [AGENDA, with_a_moment_outside(), hostile()])
def test_required_properties_are_there_once(agenda: Agenda) -> None:
    lines = unfolded(written(agenda))
    assert [line for line in lines if line.startswith("VERSION")] == ["VERSION:2.0"]
    assert [line for line in lines if line.startswith("PRODID")] == [
        "PRODID:-//Entremetry//Plan//EN"
    ]
    for event in Calendar.from_ical(written(agenda)).walk("VEVENT"):
        names = [name for name, _ in event.property_items(recursive=False)]
        for name in ("UID", "DTSTAMP", "DTSTART", "DTEND", "SUMMARY", "SEQUENCE"):
            assert names.count(name) == 1
        assert "DURATION" not in names
        for alarm in event.walk("VALARM"):
            assert {"ACTION", "TRIGGER", "DESCRIPTION"} <= set(alarm)


def test_times_are_in_universal_time_and_durations_well_formed() -> None:
    for line in unfolded(written(with_a_moment_outside())):
        name, _, value = line.partition(":")
        if name.split(";")[0] in {"DTSTART", "DTEND", "DTSTAMP"}:
            assert UTC_TIME.fullmatch(value) and "TZID" not in name
        if name.startswith("TRIGGER"):
            assert DURATION.fullmatch(value)


def test_the_parser_finds_no_fault() -> None:
    read = Calendar.from_ical(written(hostile()))
    assert [part.errors for part in read.walk()] == [[] for _ in read.walk()]


def test_text_comes_back_as_it_was() -> None:
    (first, _) = sessions(hostile())
    back = str(first["description"])
    kept = NASTY.replace("\x07", "")
    assert f"  {kept}\n" in back and f"  - {kept}\n" in back


def test_every_session_is_an_event_with_its_steps_and_amounts() -> None:
    first, second = sessions()
    assert (first["dtstart"].dt, first["dtend"].dt) == (SESSIONS[0].start, SESSIONS[0].end)
    told = str(first["description"]).replace("\u00a0", " ")
    assert "18:30 Cook · Pear compote, 20 min" in told and "  - 42 g caster sugar" in told
    assert "then 11 h 25 min by itself, to Sat 09:00" in told
    assert str(first["transp"]) == "OPAQUE" == str(second["transp"])


def test_a_moment_outside_the_sessions_has_its_own_event() -> None:
    (own,) = [e for e in events(with_a_moment_outside()) if "Place" in str(e["summary"])]
    assert own["dtstart"].dt == at("28 18:50") and "8 pear crisps" in str(own["description"])
    assert [alarm["trigger"].dt for alarm in own.walk("VALARM")] == [timedelta(0)]


def test_waits_that_outlast_a_session_leave_the_time_free() -> None:
    free = [event for event in events() if str(event["transp"]) == "TRANSPARENT"]
    assert sorted(str(event["summary"]).split(" (")[0] for event in free) == [
        "Freeze · Hazelnut cream",
        "Freeze · Vanilla mousse",
        "Thaw · Pear dome",
    ]
    assert {event["dtend"].dt for event in free} == {at("28 08:30"), at("28 09:00"), at("28 19:00")}


def test_a_reminder_comes_before_each_session_and_where_a_wait_needs_hands() -> None:
    for event, session in zip(sessions(), SESSIONS, strict=True):
        first, *others = event.walk("VALARM")
        assert first["trigger"].dt == timedelta(minutes=-BEFORE_A_SESSION)
        rung = {session.start + alarm["trigger"].dt for alarm in others}
        ends = {at("27 19:41"), at("27 20:01"), at("27 21:10"), at("28 14:48")}
        assert rung == {end for end in ends if session.start < end < session.end}


def test_a_wait_outside_rings_at_its_end_if_hands_take_it_up() -> None:
    soon = replace(
        TASKS[13],
        start=at("28 08:30"),
        end=at("28 08:45"),
        hands=(Hands(person="cook", start=at("28 08:30"), end=at("28 08:45")),),
    )
    agenda = replace(AGENDA, tasks=(*TASKS[:13], soon, TASKS[14]))
    (wait,) = [e for e in events(agenda) if str(e["summary"]).startswith("Freeze · Hazelnut")]
    (alarm,) = wait.walk("VALARM")
    assert alarm["trigger"].dt == timedelta(0)
    assert alarm["trigger"].params["RELATED"] == "END"


def test_names_of_events_stay_and_their_number_rises_when_the_plan_is_made_anew() -> None:
    moved = replace(
        AGENDA,
        sessions=tuple(
            replace(s, start=s.start + timedelta(minutes=30), end=s.end + timedelta(minutes=30))
            for s in SESSIONS
        ),
    )
    before, after = (
        {str(e["uid"]): e["sequence"] for e in all_} for all_ in (events(), events(moved, LATER))
    )
    kept = {str(event["uid"]) for event in sessions()} & set(after)
    assert len(kept) == 2 and all(after[uid] > before[uid] for uid in kept)
    assert len(before) == len(events())


def test_a_wait_under_way_keeps_its_event_when_its_hands_are_past() -> None:
    begun = replace(TASKS[8], state=State.UNDER_WAY, hands=(), hands_on=0)
    agenda = replace(AGENDA, tasks=(*TASKS[:8], begun, *TASKS[9:]))
    names = [
        {str(e["uid"]) for e in events(each) if str(e["summary"]).startswith("Freeze · Hazel")}
        for each in (AGENDA, agenda)
    ]
    assert len(names[0]) == 1 and names[0] == names[1]


def test_another_occasion_has_other_names() -> None:
    later = tuple(replace(s, at=s.at + timedelta(days=7)) for s in AGENDA.served)
    names = ({str(e["uid"]) for e in events(a)} for a in (AGENDA, replace(AGENDA, served=later)))
    assert not set.intersection(*names)


@pytest.mark.parametrize(
    ("start", "end", "hours"),
    [
        ("2026-10-24 21:00", "2026-10-25 09:00", 13),
        ("2026-03-28 21:00", "2026-03-29 09:00", 11),
    ],
)
def test_a_night_in_which_the_clocks_change_keeps_its_true_length(
    start: str, end: str, hours: int
) -> None:
    agenda = over_the_change_of_clocks(start, end)
    (night,) = [e for e in events(agenda) if str(e["transp"]) == "TRANSPARENT"]
    assert night["dtend"].dt - night["dtstart"].dt == timedelta(hours=hours, minutes=-10)
    assert night["dtend"].dt.astimezone(PARIS).strftime("%H:%M") == "09:00"


def test_the_stamp_is_the_one_given_and_the_same_input_gives_the_same_file() -> None:
    assert {event["dtstamp"].dt for event in events()} == {STAMP}
    assert written() == written()
