"""The bench is sent with its plan, its own worker, and takes entries once."""

from __future__ import annotations

import json
import re
from html import unescape
from typing import Any

import pytest

from agendas import AGENDA
from entremetry.web.assets import FOLDER
from entremetry.web.bench_page import MODULES, static_files
from planned_by_hand import planned, planned_text

Client = Any
COOK = AGENDA.tasks[0].id
BENCH = "/plans/1/bench"
DONE = {"key": "k1", "what": "done", "task": COOK, "minutes": "0", "at": "2026-11-27T17:50:00.000Z"}


@pytest.fixture
def bench(planner: Client) -> Client:
    """A workbench with one plan."""
    planner.app.state.workbench.library.plans.keep("Pears & bars", planned_text(planned("made")))
    return planner


def told(client: Client) -> list[str]:
    return [entry.key for entry in client.app.state.workbench.library.plans.entries(1)]


def test_the_page_names_its_plan_and_holds_no_script_of_its_own(bench: Client) -> None:
    html = bench.get(BENCH).html
    assert "Pears &amp; bars" in html
    assert not re.search(r"<script(?![^>]*src=)|<style|\sstyle=|\son\w+=", html)


def test_the_data_hold_the_steps_with_their_times_and_what_was_told(bench: Client) -> None:
    bench.post(f"{BENCH}/entries", DONE)
    found = json.loads(bench.get(f"{BENCH}/data").body)
    assert [task["id"] for task in found["tasks"]] == [task.id for task in AGENDA.tasks]
    assert found["tasks"][0]["hands"][0]["end"] == "2026-11-27T18:50:00+01:00"
    assert [entry["key"] for entry in found["told"]] == ["k1"]
    assert found["zone"] == "Europe/Paris"


def test_an_entry_sent_again_counts_once(bench: Client) -> None:
    for _ in range(3):
        assert bench.post(f"{BENCH}/entries", DONE).status == 200
    assert told(bench) == ["k1"]


@pytest.mark.parametrize(
    "wrong",
    [{"key": ""}, {"key": "k" * 65}, {"what": "eaten"}, {"at": "now"}, {"at": "2026-11-27T17:50"}],
)
def test_an_entry_that_says_nothing_is_refused(bench: Client, wrong: dict[str, str]) -> None:
    assert bench.post(f"{BENCH}/entries", {**DONE, **wrong}).status == 422
    assert told(bench) == []


def test_an_entry_without_our_token_is_refused(bench: Client) -> None:
    assert bench.send(f"{BENCH}/entries", DONE).status == 403
    assert told(bench) == []


def test_the_worker_is_for_this_bench_alone(bench: Client) -> None:
    reply = bench.get(f"{BENCH}/worker.js")
    assert reply.headers["service-worker-allowed"] == BENCH
    assert reply.headers["cache-control"] == "no-cache"
    kept = re.search(r"const FILES = (\[.*\]);", reply.html)
    assert kept is not None
    files = json.loads(kept.group(1))
    assert all(name.startswith((f"{BENCH}", "/static/")) for name in files)


def test_everything_the_worker_keeps_is_there(bench: Client) -> None:
    for place in static_files():
        assert bench.get(place).status == 200


def test_the_worker_keeps_everything_the_page_loads(bench: Client) -> None:
    html = bench.get(BENCH).html
    assert set(re.findall(r'(?:src|href)="(/static/[^"]+)"', html)) <= set(static_files())
    scripts = [(FOLDER / name).read_text(encoding="utf-8") for name in ("bench.js", *MODULES)]
    imported = {name for script in scripts for name in re.findall(r'from "\./([^"]+)"', script)}
    assert imported == set(MODULES)


def test_the_page_brings_every_message_of_its_scripts_in_the_language_that_is_asked_for(
    bench: Client,
) -> None:
    known = {tag: words_of(bench.get(BENCH, accept_language=tag).html) for tag in ("en", "fr")}
    scripts = " ".join((FOLDER / name).read_text("utf-8") for name in ("bench.js", *MODULES))
    asked = re.findall(r"\b(?:words|counted)\(([^,)]*)", scripts)
    keys = {key for call in asked for key in re.findall(r'"(\w+)"', call)}
    assert keys <= set(known["en"]) == set(known["fr"])
    assert all(f'"{key}"' in scripts or key.startswith("told_") for key in known["en"])
    assert known["fr"]["begin"] != known["en"]["begin"] == "Begin"
    assert known["en"]["entries"] == [
        "{number} entry waits on this device.",
        "{number} entries wait on this device.",
    ]


def words_of(html: str) -> dict[str, Any]:
    """Messages that a page of the bench brings along."""
    found = re.search(r'data-words="([^"]*)"', html)
    assert found is not None
    return dict(json.loads(unescape(found.group(1))))


def test_pages_may_load_workers_of_our_own_only(bench: Client) -> None:
    assert "worker-src 'self'" in bench.get(BENCH).headers["content-security-policy"]
