"""Plans are asked for with faults beside the fields, followed while made, stopped, and listed."""

from __future__ import annotations

import re
from datetime import datetime
from typing import Any
from urllib.parse import parse_qs, urlsplit

import pytest

from entremetry.store import Kind
from entremetry.web.menu_form import usual_hour
from planned_by_hand import ASKED
from unit.web.conftest import CREAM

Client = Any
SATURDAY, SUNDAY, MONDAY = "2026-11-28T19:00", "2026-11-29T19:00", "2026-11-30T19:00"
MENU = {"chosen:plain-cream": "yes", "pieces:plain-cream": "8", "serve": SATURDAY}


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def made(client: Client, **fields: str) -> Any:
    """Answer to a menu, after the thread has made the plan."""
    reply = client.post("/plans/new", {**MENU, **fields})
    assert reply.status == 303
    making = client.app.state.plans.find(reply.headers["location"].rpartition("/")[2])
    making.future.exception(timeout=60)
    return client.get(reply.headers["location"])


def test_an_empty_list_teaches_and_leads_to_the_form(planner: Client) -> None:
    reply = planner.get("/plans")
    assert "No plan yet" in reply.words
    assert "your kitchen" in reply.words
    assert 'href="/plans/new"' in reply.html


def test_the_menu_of_all_pages_leads_to_the_plans(planner: Client) -> None:
    assert '<a href="/plans">Plans</a>' in planner.get("/").html
    assert '<a href="/plans" aria-current="page">Plans</a>' in planner.get("/plans").html


@pytest.mark.parametrize(
    ("today", "served"),
    [
        ("2026-11-25", "2026-11-28T19:00"),
        ("2026-11-27", "2026-11-28T19:00"),
        ("2026-11-28", "2026-12-05T19:00"),
        ("2026-11-29", "2026-12-05T19:00"),
    ],
)
def test_the_usual_hour_is_the_evening_of_the_next_saturday(today: str, served: str) -> None:
    assert usual_hour(datetime.fromisoformat(f"{today}T21:30")) == served


def test_the_form_offers_the_desserts_with_their_own_pieces(planner: Client) -> None:
    reply = planner.get("/plans/new")
    assert "Plain cream" in reply.words
    assert re.search(r'name="pieces:plain-cream"[^>]*value="6"', reply.html)
    assert re.search(r'name="serve"[^>]*value="20\d\d-\d\d-\d\dT19:00"', reply.html)


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({"chosen:plain-cream": ""}, "Choose at least one dessert."),
        ({"pieces:plain-cream": "eight"}, "Found 'eight'; a whole number from 1."),
        ({"pieces:plain-cream": "0"}, "Found '0'; a whole number from 1."),
        ({"serve": "Saturday"}, "Found 'Saturday'; a day and an hour"),
        ({"serve": ""}, "Say when: a day and an hour"),
        ({"serve:plain-cream": "2026-11-28"}, "Found '2026-11-28'; a day and an hour"),
        ({"begin": "2026-11-28T20:00"}, "Work would begin after the hour of service."),
    ],
)
def test_faults_stand_beside_the_field_and_keep_what_was_typed(
    planner: Client, fields: dict[str, str], words: str
) -> None:
    reply = planner.post("/plans/new", {**MENU, **fields})
    assert reply.status == 422
    assert words in reply.words
    assert 'aria-invalid="true"' in reply.html
    for typed in filter(None, fields.values()):
        assert f'value="{typed}"' in reply.html


def test_the_plan_is_asked_for_as_it_was_typed(planner: Client) -> None:
    made(planner, **{"begin": "2026-11-26T17:00", "serve:plain-cream": "2026-11-28T20:30"})
    (course,), others = ASKED[-1]
    assert (course.file, course.pieces, course.serve) == ("plain-cream", 8, "2026-11-28T20:30")
    assert course.text.startswith("entremetry: 1")
    assert (others["serve"], others["begin"]) == (SATURDAY, "2026-11-26T17:00")
    assert others["kitchen_text"] is None


def test_a_plan_is_kept_and_listed(planner: Client) -> None:
    assert made(planner).headers["location"] == "/plans/1"
    words = plain(planner.get("/plans").words)
    assert "Pear dome, Hazelnut bars" in words
    assert "For Saturday 28 November, 19:00: 2 sessions, 3 h 9 min hands-on" in words


def test_what_cannot_be_planned_is_kept_with_its_reasons(planner: Client) -> None:
    assert made(planner, serve=SUNDAY).headers["location"] == "/plans/1"
    assert "No plan works as asked" in planner.get("/plans").words
    assert "/bench" not in planner.get("/plans").html


def test_a_refusal_is_told_and_the_way_back_keeps_the_fields(planner: Client) -> None:
    reply = made(planner, **{"pieces:plain-cream": "5000"})
    assert reply.status == 422
    assert "found 5000 pieces" in reply.words
    back = re.search(r'href="(/plans/new\?[^"]+)"', reply.html)
    assert back is not None
    asked = parse_qs(urlsplit(back.group(1).replace("&amp;", "&")).query)
    assert asked["pieces:plain-cream"] == ["5000"]
    assert "token" not in asked
    assert 'value="5000"' in planner.get(back.group(1).replace("&amp;", "&")).html
    assert planner.app.state.workbench.library.plans.all() == ()


def test_a_plan_on_its_way_tells_the_best_so_far_and_can_be_stopped(planner: Client) -> None:
    place = planner.post("/plans/new", {**MENU, "serve": MONDAY}).headers["location"]
    making = planner.app.state.plans.find(place.rpartition("/")[2])
    words = plain(planner.get(place).words)
    assert "Stop, and keep the best so far" in words
    part = planner.get(f"{place}/progress")
    assert "Working sessions 2 so far, 1 at least" in plain(part.words)
    assert "hx-redirect" not in part.headers
    assert planner.post(f"{place}/stop", {}).headers["location"] == place
    assert making.future.result(timeout=60).address == "/plans/1"
    assert planner.get(f"{place}/progress").headers["hx-redirect"] == "/plans/1"
    assert planner.get(place).headers["location"] == "/plans/1"
    planner.app.state.workbench.library.plans.plan(1)


def test_a_form_sent_twice_makes_one_plan(planner: Client) -> None:
    for _ in range(2):
        made(planner, key="one-page")
    assert len(planner.app.state.workbench.library.plans.all()) == 1


def test_a_plan_that_nobody_makes_any_more_is_told(planner: Client) -> None:
    reply = planner.get("/plans/making/of-another-run")
    assert reply.status == 410
    assert "ask for it again" in reply.words


def test_a_large_library_is_chosen_from_by_name(planner: Client) -> None:
    library = planner.app.state.workbench.library
    for k in range(12):
        text = CREAM.replace("plain-cream", f"cream-{k}").replace("Plain", f"Number {k}")
        library.add(Kind.DESSERT, f"cream-{k}", text)
    first = planner.get("/plans/new").html
    assert first.count('class="course"') == 8 and "find them by name" in first
    found = planner.get("/plans/new?find=number+11&chosen:plain-cream=yes&pieces:plain-cream=9")
    assert re.findall(r'name="chosen:([^"]+)"', found.html) == ["plain-cream", "cream-11"]
    assert 'name="chosen:plain-cream" value="yes" checked' in found.html
    assert 'name="pieces:plain-cream"' in found.html and 'value="9"' in found.html
    assert "No dessert has “nothing” in its name" in planner.get("/plans/new?find=nothing").words
