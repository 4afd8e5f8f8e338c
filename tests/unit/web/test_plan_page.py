"""The page of a plan: days, steps, files, what was told, and planning the rest anew."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest

from agendas import AGENDA, IMPOSSIBLE, at
from entremetry.store import KeptPlan
from entremetry.usecases.kept_plans import PlanAtBench
from entremetry.web.plan_page import plan_page
from planned_by_hand import planned, planned_text

Client = Any
COOK = AGENDA.tasks[0].id
KEPT = KeptPlan(id=1, made_at=at("25 12:00"), name="Pears", text="")


def plain(text: str) -> str:
    return text.replace("\u00a0", " ").replace("\u2212", "-")


def keep(client: Client, menu: str = "made") -> str:
    """Address of a plan that is kept now."""
    kept = client.app.state.workbench.library.plans.keep("Pears", planned_text(planned(menu)))
    return f"/plans/{kept.id}"


def entries(client: Client) -> list[tuple[str, str, int]]:
    told = client.app.state.workbench.library.plans.entries(1)
    return [(entry.what, entry.task, entry.minutes) for entry in told]


def anew(client: Client, plan: str, key: str = "page") -> str:
    """Address of the rest planned anew, once it is there."""
    making = client.post(f"{plan}/anew", {"key": key}).headers["location"]
    client.app.state.plans.find(key).future.exception(timeout=60)
    return str(client.get(making).headers["location"])


def test_days_sessions_and_steps_stand_in_their_order(planner: Client) -> None:
    words = plain(planner.get(keep(planner)).words)
    order = [
        "Friday 27 November",
        "18:30 to 21:35",
        "2 h 10 min hands-on, 55 min between",
        "18:30 Pear compote",
        "21:15 Vanilla mousse",
        "Left to itself when you go Hazelnut cream until Saturday 08:30",
        "Saturday 28 November",
        "14:00 to 15:45",
        "Served 19:00 Pear dome, 8 pieces",
    ]
    below = words[words.rindex("Friday 27 November") :]
    places = [below.index(each) for each in order]
    assert places == sorted(places)


def test_a_step_tells_hands_waiting_amounts_and_where_its_minutes_come_from(
    planner: Client,
) -> None:
    words = plain(planner.get(keep(planner)).words)
    assert "2 min hands-on 2 h 8 min waiting" in words
    assert "260 g pear 42 g caster sugar 5.2 g pectin NH" in words
    assert "computed: about 1 h 50 min, at most 2 h 8 min; the longer is planned" in words
    assert "Almond base, round 1 of 2" in words
    assert "In one go with Hazelnut sablé" in words


def test_hands_and_waits_differ_by_more_than_colour(planner: Client) -> None:
    html = planner.get(keep(planner)).html
    assert html.count("hands-on</span>") > 10
    assert html.count("waiting</span>") > 5


def test_goals_assumptions_and_cautions_are_told(planner: Client) -> None:
    words = plain(planner.get(keep(planner)).words)
    assert "2 sessions; fewer are not possible ✓ proved" in words
    assert "4 h 40 min may do ○ not proved" in words
    assert "The freezer takes 12 kg a day." in words
    assert "The glaze was timed as is usual, without a source." in words


def test_what_happened_is_seen_at_the_steps(planner: Client) -> None:
    words = planner.get(keep(planner, "begun")).words
    for mark in ("✓ done", "● under way", "↷ 25 min later"):
        assert mark in words


def test_a_step_that_is_done_can_still_have_failed(planner: Client) -> None:
    html = planner.get(keep(planner, "begun")).html
    assert "Failed, make it again: Pear compote, Cook the pear" in html
    assert "longer: Pear compote, Cook the pear" not in html
    assert "longer: Pear compote, Fill 8" in html


def test_conflicts_stand_in_plain_words_with_ways_out(planner: Client) -> None:
    reply = planner.get(keep(planner, "impossible"))
    words = plain(reply.words)
    assert "No plan can do all of this" in words
    for fact in IMPOSSIBLE.conflicts[0]:
        assert fact in words
    assert "serve Pear dome on Sunday 29 November, 19:00 instead of Saturday" in words
    assert "chosen%3Apear-dome=yes" in reply.html


def test_files_come_with_their_kinds_and_names(planner: Client) -> None:
    plan = keep(planner)
    sheet = planner.get(f"{plan}/sheet")
    assert "script-src 'none'" in sheet.headers["content-security-policy"]
    assert "style-src 'sha256-" in sheet.headers["content-security-policy"]
    calendar = planner.get(f"{plan}/calendar.ics")
    assert calendar.headers["content-type"].startswith("text/calendar")
    assert calendar.body.startswith(b"BEGIN:VCALENDAR")
    found = json.loads(planner.get(f"{plan}/plan.json").body)
    assert found["feasible"] is True
    assert [task["id"] for task in found["tasks"]] == [task.id for task in AGENDA.tasks]
    assert found["tasks"][0]["start"] == "2026-11-27T18:30:00+01:00"


def test_the_drawing_is_there_for_wide_and_narrow_pages(planner: Client) -> None:
    html = planner.get(keep(planner)).html
    wide, narrow = re.findall(r'<svg [^>]*viewBox="0 0 ([\d.]+) [\d.]+"[^>]*role="img"', html)
    assert float(wide) > 2 * float(narrow)


@pytest.mark.parametrize("place", ["", "/sheet", "/calendar.ics", "/plan.json", "/bench"])
def test_a_plan_that_is_not_there_is_not_found(planner: Client, place: str) -> None:
    assert planner.get(f"/plans/7{place}").status == 404


def test_what_is_told_is_kept_once_and_said_back(planner: Client) -> None:
    plan = keep(planner)
    told = {"key": "page", "what": "takes", "task": COOK, "minutes": "10"}
    for _ in range(2):
        assert planner.post(f"{plan}/tell", told).headers["location"] == f"{plan}#told"
    assert entries(planner) == [("takes", COOK, 30)]
    assert "Pear compote (cook) takes 30 min in all" in plain(planner.get(plan).words)


def test_minutes_are_added_to_what_was_told_before(planner: Client) -> None:
    plan = keep(planner)
    for page in ("one", "two"):
        told = {"key": page, "what": "takes", "task": COOK, "minutes": "10"}
        planner.post(f"{plan}/tell", told)
    assert entries(planner)[-1] == ("takes", COOK, 40)


@pytest.mark.parametrize(
    "told",
    [
        {"what": "exploded", "task": COOK},
        {"what": "again", "task": "no/such/step"},
        {"what": "held", "minutes": "99999"},
    ],
)
def test_what_cannot_be_told_is_refused(planner: Client, told: dict[str, str]) -> None:
    assert planner.post(f"{keep(planner)}/tell", {"key": "page", **told}).status in (404, 422)
    assert entries(planner) == []


def test_the_rest_is_planned_anew_shown_and_taken(planner: Client) -> None:
    plan = keep(planner)
    planner.post(f"{plan}/tell", {"key": "a", "what": "done", "task": COOK})
    proposed = anew(planner, plan)
    words = plain(planner.get(proposed).words)
    assert "the first session ends at 22:05 instead of 21:35" in words
    assert "↷ 30 min later Pear compote: Fill 8 insert cavities with 36 g each." in words
    assert "Cook the pear" not in words.partition("Take this plan")[0]
    assert "moved" not in planner.app.state.workbench.library.plans.plan(1).text
    assert planner.post(f"{proposed}/take", {}).headers["location"] == plan
    words = plain(planner.get(plan).words)
    assert "19:20 Pear compote" in words
    assert "What had to give the first session ends at 22:05" in words


def test_of_two_plans_made_anew_one_is_taken(planner: Client) -> None:
    plan = keep(planner)
    first, second = anew(planner, plan, "one"), anew(planner, plan, "two")
    assert planner.post(f"{first}/take", {}).status == 303
    reply = planner.post(f"{second}/take", {})
    assert reply.status == 422
    assert "made anew meanwhile" in reply.words


def test_a_plan_made_anew_belongs_to_its_own_plan(planner: Client) -> None:
    first, second = keep(planner), keep(planner)
    proposed = anew(planner, first)
    assert planner.get(proposed.replace(first, second)).status == 410
    assert planner.get(f"{first}/anew/of-another-run").status == 410


def test_asking_again_begins_as_before_unless_that_is_over(planner: Client) -> None:
    found = PlanAtBench(kept=KEPT, language="en", made=AGENDA, agenda=AGENDA, told=())
    before, after = (
        plan_page(found, "page", at(day)).ask_again for day in ("26 12:00", "28 12:00")
    )
    assert "begin=2026-11-27T18%3A00" in before
    assert "begin" not in after
