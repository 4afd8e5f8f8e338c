"""A plan for desserts by the clock: whole, sound, and in words."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest

from entremetry.agenda.agenda import AgendaTask
from entremetry.agenda.local_time import elapsed
from entremetry.errors import EntremetryError
from entremetry.planning import Limits, validate
from entremetry.usecases.plans import Course, Planned, plan_menu
from unit.agenda.menus import HOME, LAYERS, NOW, ONE_TRAY, SERVE, SHORTBREAD, swapped

QUICK = Limits(seconds=10.0, explaining=2.0, workers=1)


def planned(
    *desserts: str | Course,
    serve: str = SERVE,
    kitchen: str | None = HOME + ONE_TRAY,
    begin: str | None = None,
    now: datetime = NOW,
) -> Planned:
    """A plan for desserts."""
    courses = [each if isinstance(each, Course) else Course(text=each) for each in desserts]
    return plan_menu(courses, serve=serve, kitchen_text=kitchen, begin=begin, now=now, limits=QUICK)


def by_id(found: Planned) -> dict[str, AgendaTask]:
    """Tasks of an agenda without the key of their dessert."""
    return {task.id.split("/", 1)[1]: task for task in found.agenda.tasks}


@pytest.fixture(scope="module")
def layers() -> Planned:
    """A plan for the layered dessert."""
    return planned(LAYERS)


def test_a_plan_is_sound_and_ends_at_the_hour_of_service(layers: Planned) -> None:
    assert layers.plan is not None
    assert validate(layers.menu.problem, layers.plan) == ()
    assert layers.agenda.feasible
    assert [f"{each.at:%Y-%m-%d %H:%M}" for each in layers.agenda.served] == [SERVE]
    assert by_id(layers)["assembly-7"].end == layers.agenda.served[0].at


def test_every_step_stands_once_with_hands_in_free_hours(layers: Planned) -> None:
    assert len(layers.agenda.tasks) == LAYERS.count("step:")
    for task in layers.agenda.tasks:
        for hands in task.hands:
            assert 8 <= hands.start.hour <= hands.end.hour <= 22
        assert task.minutes == pytest.approx(task.hands_on + task.waiting)


def test_the_glaze_meets_frozen_pieces_within_three_minutes(layers: Planned) -> None:
    tasks = by_id(layers)
    gone = elapsed(tasks["assembly-3"].end, tasks["assembly-4"].start)
    assert timedelta(0) <= gone <= timedelta(minutes=3)


def test_sessions_hold_all_work_and_its_minutes(layers: Planned) -> None:
    sessions = layers.agenda.sessions
    worked = sum(session.hands_on for session in sessions)
    assert worked == sum(task.hands_on for task in layers.agenda.tasks)
    for session in sessions:
        length = round(elapsed(session.start, session.end).total_seconds() / 60)
        assert session.hands_on + session.idle == length


def test_a_plan_over_a_change_of_the_clocks_counts_real_hours() -> None:
    found = planned(LAYERS, serve="2027-03-28 19:00", begin="2027-03-27 08:00", now=NOW)
    frozen = by_id(found)["assembly-2"]
    assert found.agenda.feasible
    assert frozen.minutes >= 300
    assert elapsed(frozen.start, frozen.end) == timedelta(minutes=frozen.minutes)


def test_desserts_may_be_served_at_hours_of_their_own() -> None:
    early = Course(text=SHORTBREAD, serve="2026-11-28 12:00", pieces=12)
    found = planned(LAYERS, early)
    assert [(s.name, s.pieces, s.at.hour) for s in found.agenda.served] == [
        ("Layers", 6, 19),
        ("Shortbread", 12, 12),
    ]


def test_without_a_beginning_a_plan_begins_now_or_four_days_before() -> None:
    assert planned(SHORTBREAD).agenda.begins == NOW
    later = planned(SHORTBREAD, serve="2026-12-28 19:00").agenda
    assert f"{later.begins:%Y-%m-%d %H:%M}" == "2026-12-24 19:00"


def test_what_cannot_be_planned_says_why_and_what_would_help() -> None:
    found = planned(LAYERS, begin="2026-11-28 16:00")
    assert not found.agenda.feasible
    assert found.plan is None
    assert found.agenda.conflicts or found.agenda.ways_out


def test_a_way_out_names_what_gives_and_is_a_whole_plan() -> None:
    hours = "people: [{name: A, free: [{date: 2026-11-28, start: '08:00', end: '10:00'}]}]\n"
    found = planned(LAYERS, kitchen=HOME + ONE_TRAY + hours, begin="2026-11-28 06:00")
    assert not found.agenda.feasible
    (way, *_) = found.agenda.ways_out
    assert any("let A work" in change for change in way.changes)
    assert len(way.tasks) == LAYERS.count("step:")


@pytest.mark.parametrize(
    ("desserts", "changed", "message"),
    [
        ([], {}, "1 to 20 desserts"),
        ([SHORTBREAD] * 21, {}, "21 desserts"),
        ([SHORTBREAD], {"serve": "tomorrow at eight"}, "2026-11-28 19:00"),
        ([SHORTBREAD], {"serve": "2026-11-24 19:00"}, "still to come"),
        ([SHORTBREAD], {"begin": "2026-11-28 19:00"}, "still to come"),
        ([SHORTBREAD], {"begin": "2026-01-01 19:00"}, "60 days at most; begin later"),
        ([Course(text=SHORTBREAD, pieces=0)], {}, "1 to 10000 pieces"),
        ([Course(text=SHORTBREAD, serve="noon")], {}, "'noon'"),
        (["nothing"], {}, "document"),
        ([SHORTBREAD], {"kitchen": "oven: 1"}, "kitchen"),
        ([SHORTBREAD], {"kitchen": HOME + "hobs: 0\n"}, "hobs"),
        ([SHORTBREAD], {"kitchen": HOME + "ovens: [{name: a, trays: 1000000}]\n"}, "trays"),
        ([SHORTBREAD], {"kitchen": HOME.replace("Paris", "Pariss")}, "did you mean Europe/Paris"),
    ],
)
def test_what_is_refused_says_what_is_accepted(
    desserts: list[str | Course], changed: dict[str, str], message: str
) -> None:
    with pytest.raises(EntremetryError, match=message):
        planned(*desserts, **changed)  # type: ignore[arg-type]


def test_a_fault_of_a_dessert_names_its_file() -> None:
    wrong = swapped(("amount: 60 g}", "amount: 60 kilometres}"))
    with pytest.raises(EntremetryError, match="other.yaml, line"):
        planned(SHORTBREAD, Course(text=wrong, file="other.yaml"))
