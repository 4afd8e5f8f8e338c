"""Pages speak the language that is chosen, or that the browser asks for."""

from __future__ import annotations

import re
from typing import Any

import pytest

from unit.web.conftest import CREAM, HOST
from unit.web.marked_language import speak_marked, unsaid, words

Client = Any

UNITS = {"cm²", "kcal", "min"}
AUTHORS = words(CREAM) | UNITS | {"entremetry", "français", "pdf", "xlsx"}
CREAM_PAGE = "/desserts/plain-cream"
ASK = f"{CREAM_PAGE}/questions?ask=1&kind="
BALANCE = f"{CREAM_PAGE}/rebalance?component=cream&work=1&"
SPOKEN = [
    "/language",
    "/nowhere",
    "/",
    "/?find=cream",
    "/?find=nothing",
    f"{CREAM_PAGE}/card",
    CREAM_PAGE,
    f"{CREAM_PAGE}?mould=coupe&pieces=12",
    f"{CREAM_PAGE}?have_g=1000&have_of=cream-35",
    f"{CREAM_PAGE}/sheet",
    "/larder",
    "/larder?q=gelatine",
    "/larder?q=nothing-like-it",
    "/larder/whole-milk",
    "/larder/gelatine-powder-200",
    "/larder/strawberry",
    "/sources",
    f"{CREAM_PAGE}/label",
    f"{CREAM_PAGE}/label?mould=coupe",
    f"{CREAM_PAGE}/cost",
    f"{CREAM_PAGE}/adapt",
    f"{CREAM_PAGE}/adapt?work=1&own=dome",
    f"{CREAM_PAGE}/adapt?work=1&own=dome&diameter=60",
    f"{CREAM_PAGE}/adapt?work=1&mould=coupe&pieces=4",
    f"{CREAM_PAGE}/rebalance",
    f"{BALANCE}target=fat&value=28",
    f"{BALANCE}target=fat&value=95",
    f"{BALANCE}swap_from=gelatine-powder-200&swap_to=agar-powder",
    f"{CREAM_PAGE}/questions",
    f"{CREAM_PAGE}/questions?kind=instead",
    f"{CREAM_PAGE}/questions?kind=instead&instead=cream%2Fcream-35",
    f"{CREAM_PAGE}/questions?kind=wait",
    f"{ASK}instead&instead=cream%2Fgelatine-powder-200&have=gelatine-sheet-gold",
    f"{ASK}mould&mould=hemisphere-70",
    f"{ASK}without&without=cream%2Fcaster-sugar",
    f"{ASK}symptom&symptom=weeps",
    f"{ASK}contains&contains=milk",
    f"{CREAM_PAGE}/publish?limit=x",
    f"{CREAM_PAGE}/checks",
    f"{CREAM_PAGE}/diagnosis",
    f"{CREAM_PAGE}/diagnosis?symptom=weeping",
    f"{CREAM_PAGE}/temperatures",
    "/plans",
    "/plans/new",
    "/plans/new?chosen:plain-cream=yes&pieces:plain-cream=8&serve=2026-11-28T19:00",
]


@pytest.fixture
def marked(planner: Client, monkeypatch: pytest.MonkeyPatch) -> Client:
    """A workbench that speaks a language in which every message is marked."""
    speak_marked(monkeypatch)
    return planner


@pytest.mark.parametrize("path", SPOKEN)
def test_every_word_of_a_page_is_said(marked: Client, path: str) -> None:
    assert unsaid(marked.get(path).html, AUTHORS) == []


@pytest.mark.parametrize(
    ("path", "fields"),
    [
        (f"{CREAM_PAGE}/cost", {"pack:cream-35": "1 l", "price:caster-sugar": "x"}),
        (f"{CREAM_PAGE}/adapt", {"own": "dome", "diameter": "60", "new_name": "!"}),
        (f"{CREAM_PAGE}/publish", {}),
    ],
)
def test_every_word_of_a_refusal_is_said(marked: Client, path: str, fields: dict[str, str]) -> None:
    reply = marked.post(path, fields)
    assert reply.status in (405, 422)
    assert unsaid(reply.html, AUTHORS) == []


def test_form_from_elsewhere_is_refused_in_words_that_are_said(marked: Client) -> None:
    assert unsaid(marked.send(f"{CREAM_PAGE}/cost", {}).html, AUTHORS) == []


def test_larder_is_searched_in_the_language_of_the_page(client: Client) -> None:
    assert "Lait entier" in client.get("/larder?q=lait+entier", accept_language="fr").words
    assert "Whole milk" in client.get("/larder?q=whole+milk").words


@pytest.mark.parametrize(
    ("asked", "tag"),
    [
        ("fr", "fr"),
        ("fr-CA,en;q=0.8", "fr"),
        ("de-DE,fr;q=0.4,en;q=0.7", "en-GB"),
        ("de", "en-GB"),
        ("fr;q=0", "en-GB"),
        ("fr;q=much,,;", "en-GB"),
        ("", "en-GB"),
    ],
)
def test_browsers_wish_is_heard(client: Client, asked: str, tag: str) -> None:
    assert f'<html lang="{tag}">' in client.get("/", accept_language=asked).html


def test_chosen_language_stays_whatever_the_browser_asks_for(client: Client) -> None:
    came = f"http://{HOST}/desserts/plain-cream?pieces=8"
    reply = client.post("/language", {"language": "fr"}, referer=came)
    assert (reply.status, reply.headers["location"]) == (303, "/desserts/plain-cream?pieces=8")
    cookie = re.match(r"language=fr", reply.headers["set-cookie"])
    assert cookie and "HttpOnly" in reply.headers["set-cookie"]
    assert '<html lang="fr">' in client.get("/", cookie=cookie[0], accept_language="en").html


@pytest.mark.parametrize(
    "came",
    ["", "https://elsewhere.example/", f"http://{HOST}.elsewhere.example/x", "http://[", "//x"],
)
def test_choice_from_elsewhere_leads_to_the_first_page(client: Client, came: str) -> None:
    assert client.post("/language", {"language": "fr"}, referer=came).headers["location"] == "/"


def test_address_that_looks_like_another_host_stays_here(client: Client) -> None:
    came = f"http://{HOST}//elsewhere.example"
    reply = client.post("/language", {"language": "fr"}, referer=came)
    assert reply.headers["location"] == "/elsewhere.example"


def test_language_that_there_is_not_is_refused(client: Client) -> None:
    assert client.post("/language", {"language": "xx"}).status == 422
    assert '<html lang="en-GB">' in client.get("/", cookie="language=xx").html


def test_choosing_needs_our_own_form(client: Client) -> None:
    assert client.send("/language", {"language": "fr"}).status == 403


def test_numbers_of_one_language_are_not_kept_for_another(client: Client) -> None:
    english = client.get("/desserts/plain-cream").words
    french = client.get("/desserts/plain-cream", accept_language="fr").words
    assert client.get("/desserts/plain-cream").words == english != french
