"""`plan` and `replan` hand on what is asked, write what is wanted, and end with the right status.

What makes a plan is stood in for: here a plan is whatever the test says.
"""

from __future__ import annotations

import json
import sys
from dataclasses import dataclass, replace
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest
from icalendar import Calendar

from agendas import AGENDA, IMPOSSIBLE, TASKS
from command_line import entremetry
from dessert_texts import DOME
from entremetry.agenda.agenda import Agenda
from entremetry.agenda.record import Record
from entremetry.planning import Goal, Limits, Progress

WHEN = "2026-11-28 19:00"


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    text: str
    file: str = "document"
    pieces: int | None = None
    serve: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    agenda: Agenda
    language: str = "en"


class StandIn(ModuleType):
    """What the commands call, answering with one agenda and keeping what it was asked."""

    Course = Course

    def __init__(self, agenda: Agenda) -> None:
        super().__init__("entremetry.usecases.plans")
        self.agenda = agenda
        self.courses: list[Course] = []
        self.asked: dict[str, Any] = {}
        self.record: Record | None = None

    def plan_menu(self, courses: list[Course], **asked: Any) -> Planned:
        self.courses, self.asked = courses, asked
        limits: Limits = asked["limits"]
        limits.progress(Progress(goal=None, value=0, bound=0, seconds=0.2))
        limits.progress(Progress(goal=Goal.SESSIONS, value=3, bound=2, seconds=1.2))
        return Planned(agenda=self.agenda, language=asked["language"])

    def planned_from(self, text: str) -> Planned:
        assert text == "kept"
        return Planned(agenda=AGENDA)

    def planned_text(self, planned: Planned) -> str:
        return f"kept {planned.agenda.zone}"

    def planned_anew(self, planned: Planned, record: Record, *, limits: Limits) -> Planned:
        self.record = record
        return Planned(agenda=self.agenda)


@pytest.fixture
def stand_in(monkeypatch: pytest.MonkeyPatch) -> StandIn:
    made = StandIn(AGENDA)
    monkeypatch.setitem(sys.modules, "entremetry.usecases.plans", made)
    return made


@pytest.fixture
def dome(tmp_path: Path) -> Path:
    return dessert(tmp_path, "dome")


def dessert(folder: Path, name: str) -> Path:
    path = folder / f"{name}.yaml"
    path.write_text(DOME.replace("id: dome", f"id: {name}"), encoding="utf-8")
    return path


@pytest.fixture
def kept(tmp_path: Path) -> Path:
    path = tmp_path / "kept.json"
    path.write_text("kept", encoding="utf-8")
    return path


def test_one_json_object_on_the_output_and_progress_beside_it(
    stand_in: StandIn, dome: Path
) -> None:
    answer = entremetry("plan", dome, "--serve", WHEN, "--json")
    assert answer.status == 0
    assert len(json.loads(answer.out)["tasks"]) == len(TASKS)
    assert "a plan is found" in answer.err
    assert "Working sessions: 3 so far, 2 at least" in answer.err


def test_pieces_hours_and_limits_are_handed_on(stand_in: StandIn, tmp_path: Path) -> None:
    files = [dessert(tmp_path, name) for name in ("dome", "other")]
    kitchen = tmp_path / "kitchen.yaml"
    kitchen.write_text("a kitchen", encoding="utf-8")
    answer = entremetry(
        *("plan", *files, "--serve", WHEN, "--serve", "other=2026-11-28 21:00"),
        *("--pieces", "other=12", "--begin", "2026-11-26 18:00", "--seconds", "3"),
        *("--kitchen", kitchen),
    )
    assert answer.status == 0
    first, second = stand_in.courses
    assert (first.pieces, first.serve, second.pieces, second.serve) == (
        *(None, WHEN),
        *(12, "2026-11-28 21:00"),
    )
    assert first.file == str(files[0]) and "id: dome" in first.text
    assert stand_in.asked["begin"] == "2026-11-26 18:00"
    assert stand_in.asked["kitchen_text"] == "a kitchen"
    assert stand_in.asked["limits"].seconds == 3.0


def test_a_number_of_pieces_without_an_id_is_for_each(stand_in: StandIn, tmp_path: Path) -> None:
    files = [dessert(tmp_path, name) for name in ("dome", "other")]
    entremetry("plan", *files, "--serve", WHEN, "--pieces", "9", "--pieces", "other=4")
    assert [course.pieces for course in stand_in.courses] == [9, 4]


def test_files_are_written_as_asked(stand_in: StandIn, dome: Path, tmp_path: Path) -> None:
    paths = {name: tmp_path / f"out.{name}" for name in ("svg", "calendar", "sheet", "keep")}
    options = [word for name, path in paths.items() for word in (f"--{name}", path)]
    answer = entremetry("plan", dome, "--serve", WHEN, *options)
    assert answer.status == 0 and "Friday 27 November, 18:30 to 21:35" in answer.out
    assert paths["svg"].read_text("utf-8").startswith("<svg")
    assert len(Calendar.from_ical(paths["calendar"].read_bytes()).walk("VEVENT")) == 5
    assert paths["sheet"].read_text("utf-8").startswith("<!DOCTYPE html>")
    assert paths["keep"].read_text("utf-8") == "kept Europe/Paris"


def test_files_are_written_in_the_language_of_the_plan(
    stand_in: StandIn, dome: Path, tmp_path: Path
) -> None:
    paths = {name: tmp_path / f"out.{name}" for name in ("svg", "calendar", "sheet")}
    options = [word for name, path in paths.items() for word in (f"--{name}", path)]
    answer = entremetry("plan", dome, "--serve", WHEN, "--language", "fr", *options)
    assert answer.status == 0 and stand_in.asked["language"] == "fr"
    assert "Plan pour" in paths["svg"].read_text("utf-8")
    assert Calendar.from_ical(paths["calendar"].read_bytes())["PRODID"].endswith("//FR")
    assert '<html lang="fr">' in paths["sheet"].read_text("utf-8")


@pytest.mark.parametrize("json_", [(), ("--json",)])
def test_no_plan_is_status_1_with_the_reason_and_writes_nothing(
    stand_in: StandIn, dome: Path, tmp_path: Path, json_: tuple[str, ...]
) -> None:
    stand_in.agenda = IMPOSSIBLE
    sheet = tmp_path / "sheet.html"
    answer = entremetry("plan", dome, "--serve", WHEN, "--sheet", sheet, *json_)
    assert answer.status == 1 and not sheet.exists()
    assert "These cannot all hold" in answer.err and "instead of Saturday" in answer.err
    if json_:
        assert json.loads(answer.out)["feasible"] is False
    else:
        assert answer.out == ""


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (("--serve", f"doom={WHEN}"), "did you mean dome?"),
        (("--serve", WHEN, "--pieces", "doom=3"), "did you mean dome?"),
        (("--serve", WHEN, "--pieces", "dome=many"), "a whole number above 0"),
        (("--serve", WHEN, "--pieces", "dome=0"), "a whole number above 0"),
        (("--serve", WHEN, "--serve", "2026-11-29 19:00"), "--serve ID=..."),
        (("--serve", WHEN, "--kitchen", "nowhere.yaml"), "there is no file nowhere.yaml"),
        ((), "--serve"),
    ],
)
def test_bad_input_is_status_2_with_one_message(
    stand_in: StandIn, dome: Path, options: tuple[str, ...], says: str
) -> None:
    answer = entremetry("plan", dome, *options)
    assert answer.status == 2 and says in answer.err and answer.out == ""
    assert "Traceback" not in answer.err


def test_a_dessert_without_an_hour_is_named(stand_in: StandIn, tmp_path: Path) -> None:
    files = [dessert(tmp_path, name) for name in ("dome", "other")]
    answer = entremetry("plan", *files, "--serve", f"dome={WHEN}")
    assert answer.status == 2 and "no hour of service for 'other'" in answer.err


def test_replan_hands_on_what_is_told_and_shows_the_new_plan(
    stand_in: StandIn, kept: Path, tmp_path: Path
) -> None:
    stand_in.agenda = replace(AGENDA, changes=("the glaze stands 10 min longer",))
    again = tmp_path / "again.json"
    answer = entremetry(
        *("replan", kept, "--now", "2026-11-27 18:52", "--done", TASKS[0].id),
        *("--begun", f"{TASKS[1].id}=18:51", "--takes", f"{TASKS[2].id}=200"),
        *("--not-before", "2026-11-27 19:30", "--keep", again),
    )
    assert answer.status == 0 and "the glaze stands 10 min longer" in answer.out
    assert stand_in.record is not None and len(stand_in.record.entries) == 2
    assert stand_in.record.lasts == ((TASKS[2].id, 200),)
    assert again.read_text("utf-8") == "kept Europe/Paris"


def test_a_plan_that_gives_something_up_is_shown_and_written_with_status_1(
    stand_in: StandIn, kept: Path, tmp_path: Path
) -> None:
    gave = "serve Pear dome at 19:13 instead of 19:00"
    stand_in.agenda = replace(AGENDA, feasible=False, changes=(gave,))
    sheet = tmp_path / "sheet.html"
    answer = entremetry("replan", kept, "--now", "2026-11-27 18:00", "--sheet", sheet)
    assert answer.status == 1 and gave in sheet.read_text("utf-8")
    assert f"What had to give\n  - {gave}" in answer.out and "18:30   20 min Cook" in answer.out
    assert "No plan keeps everything" in answer.err


def test_replan_asks_for_what_is_not_told(stand_in: StandIn, kept: Path) -> None:
    asked = entremetry("replan", kept, "--now", "2026-11-27 18:52")
    assert asked.status == 2 and TASKS[0].id in asked.err and stand_in.record is None
    for flag, entries in (("--as-planned", 2), ("--not-begun", 0)):
        answer = entremetry("replan", kept, "--now", "2026-11-27 18:52", flag)
        assert answer.status == 0 and stand_in.record is not None
        assert len(stand_in.record.entries) == entries
