"""A saved page fills the form; it is read within limits and only with our own token."""

from __future__ import annotations

import json
import re
from html import unescape
from typing import Any

import pytest

from entremetry.documents.saved_page import LARGEST_PAGE
from entremetry.web.protection import LARGEST_BODY, LARGEST_UPLOAD

Client = Any
RECIPE = {
    "@type": "Recipe",
    "name": "Night <plum>",
    "recipeYield": "4 domes",
    "recipeIngredient": ["240 g blackcurrant purée", "200 g 35 % cream", "2 leaves gelatine"],
    "recipeInstructions": "Soak the gelatine. Mix the purée with everything.",
}
EDGE = "-----edge"


def sent(client: Client, content: bytes, *, token: str | None = None, name: str = "p.html") -> Any:
    """Send a file as a browser does."""
    said = client.app.state.workbench.token if token is None else token
    parts = [
        f'--{EDGE}\r\nContent-Disposition: form-data; name="token"\r\n\r\n{said}\r\n'.encode(),
        f'--{EDGE}\r\nContent-Disposition: form-data; name="page"; filename="{name}"\r\n'
        "Content-Type: text/html\r\n\r\n".encode(),
        content,
        f"\r\n--{EDGE}--\r\n".encode(),
    ]
    kind = f"multipart/form-data; boundary={EDGE}"
    return client.ask("POST", "/new/page", b"".join(parts), {"content_type": kind})


def page(**changed: Any) -> bytes:
    """A saved page."""
    data = json.dumps(RECIPE | changed).replace("<", "\\u003c")
    return f'<html><script type="application/ld+json">{data}</script></html>'.encode()


def test_a_page_fills_the_form_and_nothing_is_kept(client: Client) -> None:
    reply = sent(client, page())
    assert reply.status == 200
    html = unescape(reply.html)
    assert re.search(r'name="pieces" [^>]*value="4"', html)
    assert "240 g blackcurrant purée\n200 g 35 % cream" in html and "Method:\nSoak" in html
    assert re.search(r'name="name" [^>]*value="Night"', html)
    assert client.get("/desserts/night").status == 404


def test_the_form_of_a_page_leads_to_a_saved_dessert(client: Client) -> None:
    text = "240 g blackcurrant purée\n2 leaves gelatine\n\nMethod:\nSoak the gelatine for 10 min.\n"
    text += "Heat the purée, then stir in the gelatine.\nFreeze overnight.\n"
    form = {"name": "Night plum", "pieces": "4", "mould": "hemisphere-70", "text": text}
    given = {
        "night-plum-kind": "insert",
        "night-plum-1-ingredient": "blackcurrant-puree",
        "night-plum-2-ingredient": "gelatine-sheet-gold",
        "step.2.temperature": "60 °C",
        "step.4.time": "8 h",
    }
    first = client.post("/new", form)
    assert first.status == 200
    assert all(f'name="asked:{key}"' in first.html for key in given)
    form |= {"text_then": text, "name_then": "Night plum"}
    reply = client.post("/new", form | {f"typed:{key}": answer for key, answer in given.items()})
    assert (reply.status, reply.headers["location"]) == (303, "/desserts/night-plum")
    assert "Heat the purée" in client.get("/desserts/night-plum").words


def test_an_answer_about_a_sentence_that_changed_is_asked_again(client: Client) -> None:
    then = "5 g salt\nMethod:\nHeat everything.\n"
    form = {
        "name": "D",
        "pieces": "1",
        "mould": "hemisphere-70",
        "text": then.replace("Heat", "Heat slowly"),
        "text_then": then,
        "name_then": "D",
        "typed:step.1.temperature": "60 °C",
    }
    assert 'name="typed:step.1.temperature"' in client.post("/new", form).html
    same = client.post("/new", form | {"text": then}).html
    assert 'name="answer:step.1.temperature" value="60 °C"' in same


def test_hostile_words_are_shown_as_text(client: Client) -> None:
    lines = ["5 g salt &lt;script>alert(1)&lt;/script>", "\u202e5 g sugar 🧂"]
    reply = sent(client, page(recipeIngredient=lines, name='"><img src=x>'), name="<b>.html")
    assert reply.status == 200
    assert "<script>alert" not in reply.html and "<img src=x" not in reply.html
    assert "\u202e" not in reply.html and "🧂" in reply.html


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"", "no recipe"),
        (b"<html></html>", "no recipe"),
        (b"\xff\xfe\x00", "not text"),
        (b"<script type='application/ld+json'>{</script>", "no JSON"),
        (b"[" * 500_000, "nested too deeply"),
        (b"x" * (LARGEST_PAGE + 1), "more than 5 MB"),
    ],
)
def test_what_is_no_page_is_refused_in_words(client: Client, content: bytes, says: str) -> None:
    reply = sent(client, content)
    assert reply.status == 422 and says in reply.words


def test_a_foreign_token_another_type_or_too_much_is_refused(client: Client) -> None:
    assert sent(client, page(), token="x").status == 403
    assert client.post("/new/page", {"page": "x"}).status == 415
    assert sent(client, b"x" * LARGEST_UPLOAD).status == 413
    large = {"content_type": f"multipart/form-data; boundary={EDGE}"}
    assert client.ask("POST", "/new", b"x" * (LARGEST_BODY + 1), large).status == 413
