"""A plan as scripts and cooks read it."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import datetime

from agendas import AGENDA, IMPOSSIBLE, TASKS, begun, with_a_moment_outside
from entremetry.cli.plan_view import as_text, refusal_text
from entremetry.publish.agenda_json import as_json

CONTRACT = {"feasible", "proved_optimal", "tasks", "sessions", "conflicts"}
OF_A_TASK = {"id", "dessert", "start", "end", "hands_on", "uses", "hands", "hands_on_min"}


def test_the_keys_of_the_contract() -> None:
    told = json.loads(as_json(AGENDA))
    assert set(told) >= CONTRACT
    assert all(set(task) >= OF_A_TASK for task in told["tasks"])
    assert told["feasible"] is True and told["proved_optimal"] is True
    first = told["tasks"][0]
    assert (first["start"], first["end"]) == (
        "2026-11-27T18:30:00+01:00",
        "2026-11-27T18:50:00+01:00",
    )
    assert first["hands_on"] == first["hands_on_min"] == 20
    assert first["uses"] == ["hob", "small pan"] and first["state"] == "to come"


def test_times_are_iso_8601_with_their_offset() -> None:
    told = json.loads(as_json(AGENDA))
    times = [told["begins"], *(t[k] for t in told["tasks"] for k in ("start", "end"))]
    times += [h[k] for t in told["tasks"] for h in t["hands"] for k in ("start", "end")]
    times += [s[k] for s in told["sessions"] for k in ("start", "end")]
    times += [each["at"] for each in told["served"]]
    assert all(datetime.fromisoformat(text).utcoffset() is not None for text in times)


def test_an_impossible_plan_carries_its_conflicts_and_ways_out() -> None:
    told = json.loads(as_json(IMPOSSIBLE))
    assert told["feasible"] is False and told["tasks"] == []
    assert told["conflicts"] == [list(IMPOSSIBLE.conflicts[0])]
    (way,) = told["ways_out"]
    assert way["changes"] == list(IMPOSSIBLE.ways_out[0].changes)
    assert len(way["tasks"]) == len(TASKS) and len(way["sessions"]) == 2


def test_the_text_goes_by_day_and_session_with_waits_indented() -> None:
    lines = as_text(AGENDA).splitlines()
    session = lines.index("Friday 27 November, 18:30 to 21:35 (2 h 10 min of work, 55 min between)")
    assert lines[session + 1] == "  18:30   20 min Cook · Pear compote"
    assert "Cook the pear" in lines[session + 2] and "[hob" in lines[session + 2]
    waits = [line for line in lines if "~ then" in line]
    assert len(waits) == 7 and all(line.startswith(" " * 19) for line in waits)


def test_the_text_keeps_to_its_width_and_to_the_signs_of_a_keyboard() -> None:
    for width in (60, 88):
        text = as_text(with_a_moment_outside(), width=width)
        long = [line for line in text.splitlines() if len(line) > width]
        assert all(line.startswith(("Friday", "Saturday", "  - ")) for line in long)
        assert "\u00a0" not in text and "\u2212" not in text


def test_moments_stand_between_the_sessions_in_order_of_time() -> None:
    text = as_text(with_a_moment_outside())
    places = [text.index(w) for w in ("Friday 27", "14:00 to 15:45", "between the sessions")]
    assert places == sorted(places) and "18:50    8 min Place · Pear crisps" in text


def test_states_and_changes_are_said() -> None:
    text = as_text(replace(begun(), changes=("the mould is used before it is washed",)))
    assert "Cook · Pear compote (done)" in text and "Fill · Pear compote (under way)" in text
    assert "What had to give\n  - the mould" in text


def test_a_refusal_says_what_conflicts_and_what_would_help() -> None:
    text = refusal_text(IMPOSSIBLE)
    assert "These cannot all hold:\n  - Pear dome is served on Saturday" in text
    assert "serve Pear dome on Sunday 29 November, 19:00 instead of Saturday" in text
    assert "(2 sessions, 4 h 50 min at the bench, from Friday 27 November, 18:30)" in text


def test_no_plan_in_time_is_not_called_impossible() -> None:
    nothing = replace(IMPOSSIBLE, conflicts=(), ways_out=(), undecided=True)
    assert "no proof that there is none: the time ran out" in refusal_text(nothing)
    assert "it was stopped" in refusal_text(replace(nothing, cancelled=True))
    assert "There is no plan" not in refusal_text(nothing)
