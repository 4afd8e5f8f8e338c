"""The workbench can be installed, and its worker is told what to keep."""

from __future__ import annotations

import json
import re
import struct
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest

from entremetry.store import Kind
from entremetry.web.assets import FOLDER
from entremetry.web.reading_page import MOST_DESSERTS, MOST_WHOLE, static_files
from unit.web.conftest import CREAM

Client = Any
PAGES = ("/", "/desserts/plain-cream", "/plans", "/larder", "/sources", "/worker/nothing-kept")


def manifest(client: Client) -> dict[str, Any]:
    reply = client.get("/app.webmanifest")
    assert reply.headers["content-type"] == "application/manifest+json"
    found: dict[str, Any] = json.loads(reply.body)
    return found


def listed(client: Client) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = json.loads(client.get("/worker/pages").body)
    return found


def told(client: Client, name: str) -> Any:
    """What the worker is told under a name."""
    script = client.get("/worker.js").html
    return json.loads(re.findall(rf"^const {name} = (.*);$", script, re.MULTILINE)[0])


def test_manifest_says_what_a_browser_asks_before_it_installs(client: Client) -> None:
    found = manifest(client)
    assert found["name"] == found["short_name"] == "Entremetry"
    assert (found["id"], found["start_url"], found["scope"]) == ("/", "/", "/")
    assert found["display"] == "standalone"
    assert {(icon["sizes"], icon["purpose"]) for icon in found["icons"]} >= {
        ("192x192", "any"),
        ("512x512", "any"),
        ("512x512", "maskable"),
    }


def test_icons_are_there_in_the_sizes_they_claim(client: Client) -> None:
    for icon in manifest(client)["icons"]:
        assert client.get(icon["src"]).headers["content-type"].startswith(icon["type"])
        content = (FOLDER / Path(urlsplit(icon["src"]).path).name).read_bytes()
        if icon["sizes"] != "any":
            assert content.startswith(b"\x89PNG\r\n\x1a\n")
            width, height = struct.unpack(">II", content[16:24])  # PNG, 11.2.1: image header
            assert f"{width}x{height}" == icon["sizes"]


def test_colours_of_the_manifest_are_those_of_the_pages(client: Client) -> None:
    light, dark = re.findall(r"--paper: (#\w+);", (FOLDER / "workbench.css").read_text("utf-8"))[:2]
    found, html = manifest(client), client.get("/").html
    assert found["background_color"] == found["theme_color"] == light
    assert re.findall(r'name="theme-color" content="(#\w+)"', html) == [light, dark]


def test_every_page_leads_to_the_manifest_and_may_load_it(client: Client) -> None:
    reply = client.get("/larder")
    assert '<link rel="manifest" href="/app.webmanifest">' in reply.html
    assert "manifest-src 'self'" in reply.headers["content-security-policy"]


def test_worker_is_for_all_pages_and_asked_for_each_time(client: Client) -> None:
    reply = client.get("/worker.js")
    assert reply.headers["content-type"].startswith("text/javascript")
    assert reply.headers["service-worker-allowed"] == "/"
    assert reply.headers["cache-control"] == "no-cache"


def test_worker_keeps_all_that_pages_load(client: Client) -> None:
    files = set(told(client, "FILES"))
    for place in files:
        assert client.get(place).status == 200
    for page in PAGES:
        loaded = re.findall(r'(?:src|href)="(/static/[^"]+)"', client.get(page).html)
        assert loaded and set(loaded) <= files
    assert set(static_files()) == files


def test_worker_speaks_the_language_of_the_reader(client: Client) -> None:
    french = client.get("/worker.js", accept_language="fr").html
    assert french != client.get("/worker.js", accept_language="en").html
    assert '"language": "fr"' in french and '"language": "en-GB"' in client.get("/worker.js").html


def test_what_a_cook_reads_is_listed_and_there(client: Client) -> None:
    client.app.state.workbench.library.plans.keep("Evening", "{}")
    found = {each["address"] for each in listed(client)}
    assert {
        "/",
        "/plans",
        "/larder",
        "/desserts/plain-cream",
        "/desserts/plain-cream/page",
    } <= found
    assert {"/plans/1", "/plans/1/sheet"} <= found
    for path in ("/", "/desserts/plain-cream", "/desserts/plain-cream/checks?mould=", "/larder"):
        assert client.get(path).status == 200


def test_the_desserts_changed_last_are_listed_and_no_more(client: Client) -> None:
    library = client.app.state.workbench.library
    for number in range(MOST_DESSERTS):
        name = f"cream-{number}"
        library.add(Kind.DESSERT, name, CREAM.replace("plain-cream", name))
    found = [each["address"] for each in listed(client)]
    assert "/desserts/plain-cream" not in found
    assert sum(address.endswith("/page") for address in found) == MOST_WHOLE
    assert sum(
        address.startswith("/desserts/") and "/" not in address[10:] for address in found
    ) == (MOST_DESSERTS)


def test_state_of_a_page_changes_with_what_it_shows(client: Client) -> None:
    before = {each["address"]: each["state"] for each in listed(client)}
    library = client.app.state.workbench.library
    library.save(Kind.DESSERT, "plain-cream", CREAM + "# more\n", started_from=1)
    after = {each["address"]: each["state"] for each in listed(client)}
    changed = {address for address in before if before[address] != after[address]}
    assert "/" in changed and "/desserts/plain-cream" in changed and "/larder" not in changed


@pytest.mark.parametrize("path", ["/worker/nothing-kept"])
def test_page_for_what_is_not_kept_has_a_place_for_what_is(client: Client, path: str) -> None:
    assert "<!-- kept -->" in client.get(path).html
