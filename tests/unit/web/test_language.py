"""Pages speak the language that is chosen, or that the browser asks for."""

from __future__ import annotations

import re
import sys
from typing import Any

import pytest

from entremetry.web.starter_kitchen import STARTER
from unit.web.conftest import CREAM, HOST
from unit.web.marked_language import MARKED_LANGUAGE, unsaid, words

Client = Any

AUTHORS = words(CREAM) | words(STARTER) | {"entremetry", "français", "min"}
BUILD = "/desserts/plain-cream/build"
SPOKEN = [
    "/nowhere",
    BUILD,
    f"{BUILD}?moulds=yes",
    *(f"{BUILD}?adding=assembly&kind={kind}" for kind in ("freeze-until", "glaze-at", "hold")),
    *(f"{BUILD}?adding=components/cream/method&kind={kind}" for kind in ("mix", "bake", "roll")),
    *(f"/kitchen/walk/{number}" for number in range(1, 7)),
    "/kitchen",
    "/desserts/plain-cream/edit",
    "/desserts/plain-cream/edit/1",
    "/new",
    "/compare",
]


LINES = """\
Makes: 6 slices
Cassis:
240 g blackcurrant purée
1 egg
3 zorgles
salt
Biscuit:
50 g flour

Method:
Warm the purée.
Roll it out.
Do a thing.
"""
DRAFT = {"name": "Cassis", "pieces": "6", "mould": "weighed", "holds": "92", "text": LINES}
SENT = [
    (BUILD, {"do": "paste", "component": "cream", "lines": "20 g flour"}),
    ("/new", DRAFT),
    ("/new", {**DRAFT, "answer:cassis-kind": "mousse", "answer:biscuit-kind": "zorgles"}),
    ("/new", {**DRAFT, "answer:cassis-place": "coating", "typed:cassis-size": "zorgles"}),
]
"""Forms that come back with questions, or with a reason why they are not kept."""


@pytest.fixture
def marked(planner: Client, monkeypatch: pytest.MonkeyPatch) -> Client:
    """A workbench that speaks a language in which every message is marked."""
    module = sys.modules["entremetry.words.language"]  # the package has a function of that name
    monkeypatch.setattr(module, "language", lambda _code: MARKED_LANGUAGE)
    return planner


@pytest.mark.parametrize("path", SPOKEN)
def test_every_word_of_a_page_is_said(marked: Client, path: str) -> None:
    assert unsaid(marked.get(path).html, AUTHORS) == []


@pytest.mark.parametrize(("path", "form"), SENT)
def test_every_word_of_an_answer_to_a_form_is_said(
    marked: Client, path: str, form: dict[str, str]
) -> None:
    answer = marked.post(path, {"started_from": "1", **form})
    assert answer.status in (200, 422)
    assert unsaid(answer.html, AUTHORS | words(LINES)) == []


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
