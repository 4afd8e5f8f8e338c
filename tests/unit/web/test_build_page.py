"""The page on which a dessert is built, without a browser."""

from __future__ import annotations

import re
from urllib.parse import quote

from entremetry.dessert.alteration import part_at
from entremetry.documents import Path
from entremetry.store import Kind
from unit.web.conftest import Client

CREAM = "/desserts/plain-cream/build"
LINE = "set:components/cream/formula/cream-35/amount"
HTMX = {"hx_request": "true"}


def started_from(client: Client) -> str:
    found = re.search(r'name="started_from" value="(\d+)"', client.get(CREAM).html)
    assert found is not None
    return found[1]


def change(client: Client, **fields: str) -> object:
    """Send one change as the page does, and give the part of the document it names."""
    sent = {name.replace("__", ":"): value for name, value in fields.items()}
    reply = client.post(CREAM, {"started_from": started_from(client), **sent})
    assert reply.status == 303, reply.words
    return reply


def at(client: Client, *path: str | int) -> object:
    place: Path = path
    library = client.app.state.workbench.library
    return part_at(library.document(Kind.DESSERT, "plain-cream").text, place)


def test_a_change_is_kept_and_the_page_shown_again(client: Client) -> None:
    reply = client.post(CREAM, {"started_from": started_from(client), LINE: "520 g"})
    assert (reply.status, reply.headers["location"]) == (303, CREAM)
    assert at(client, "components", "cream", "formula", "cream-35") == "520 g"
    assert "520 g" in client.get(CREAM).html


def test_what_is_sent_as_it_was_changes_nothing(client: Client) -> None:
    before = started_from(client)
    client.post(CREAM, {"started_from": before, LINE: "500 g"})
    assert started_from(client) == before


def test_a_part_asks_for_the_part_alone(client: Client) -> None:
    sent = {"token": client.app.state.workbench.token, "started_from": "1", LINE: "510 g"}
    reply = client.send(CREAM, sent, **HTMX)
    assert reply.status == 200
    assert "<html" not in reply.html
    assert "Kept." in reply.words
    assert reply.headers["vary"] == "HX-Request"


def test_a_refused_value_stays_in_its_field_and_nothing_is_kept(client: Client) -> None:
    reply = client.post(CREAM, {"started_from": "1", LINE: "five <b>thumbs</b>"})
    assert reply.status == 422
    assert "five &lt;b&gt;thumbs&lt;/b&gt;" in reply.html
    assert "<b>thumbs" not in reply.html
    assert at(client, "components", "cream", "formula", "cream-35") == "500 g"


def test_one_refused_field_leaves_the_others_of_its_row_unkept_too(client: Client) -> None:
    fields = {LINE: "1 parsec", LINE.replace("amount", "note"): "cold"}
    assert client.post(CREAM, {"started_from": "1", **fields}).status == 422
    assert at(client, "components", "cream", "formula", "cream-35") == "500 g"


def test_numbers_truths_and_names_are_written_as_such(client: Client) -> None:
    change(client, **{"set:pieces": "8"})
    assert at(client, "pieces") == 8
    method = "components/cream/method"
    change(
        client,
        do="add-step",
        path=method,
        kind="mix",
        **{f"pick:{method}/what:cream-35": "yes", f"set:{method}/what": ""},
    )
    assert at(client, "components", "cream", "method", 0) == {"step": "mix", "what": ["cream-35"]}


def test_an_open_step_shows_its_fields(client: Client) -> None:
    change(client, do="add-step", path="assembly", kind="rest", **{"set:assembly/time": "1 h"})
    closed, opened = client.get(CREAM), client.get(f"{CREAM}?open={quote('assembly/#0')}")
    assert "f-assembly-0-time" not in closed.html
    assert "f-assembly-0-time" in opened.html


def test_a_place_becomes_another_one_with_measures_to_begin_with(client: Client) -> None:
    change(client, **{"set:placement/#0/as": "layer"})
    place = at(client, "placement", 0)
    assert isinstance(place, dict)
    assert (place["component"], place["as"]) == ("cream", "layer")
    assert place["height"].endswith(" mm")


def test_things_that_cannot_be_done_are_refused_in_words(client: Client) -> None:
    for fields in (
        {"do": "dance"},
        {"do": "knob", "knob": "move x placement/#0"},
        {"do": "knob", "knob": "turn placement/#0"},
        {"do": "knob", "knob": "take-out placement/#9"},
        {"do": "knob", "knob": "move 7 placement/#0"},
        {"do": "add-place", "component": "cream", "as": "roof"},
        {"do": "add-component", "name": " ", "kind": "mousse", "as": "layer", "lines": "1 g salt"},
        {"do": "paste", "component": "cream", "lines": ""},
        {"set:": "x"},
        {"set:a//b": "x"},
    ):
        reply = client.post(CREAM, {"started_from": "1", **fields})
        assert reply.status == 422, fields
        assert "Not kept yet." in reply.words
    assert started_from(client) == "1"


def test_an_edit_from_an_old_page_is_kept_if_its_part_is_as_it_was(client: Client) -> None:
    old = started_from(client)
    change(client, **{"set:pieces": "9"})
    client.post(CREAM, {"started_from": old, LINE: "530 g"})
    assert at(client, "pieces") == 9
    assert at(client, "components", "cream", "formula", "cream-35") == "530 g"
    reply = client.post(CREAM, {"started_from": old, LINE: "540 g"})
    assert reply.status == 422
    assert "You had typed: 540 g" in reply.words
    assert at(client, "components", "cream", "formula", "cream-35") == "530 g"


def test_a_draft_of_the_whole_text_is_not_lost_by_a_change(client: Client) -> None:
    client.post("/desserts/plain-cream/edit", {"started_from": "1", "text": "my: half-done text"})
    change(client, **{"set:pieces": "7"})
    assert "my: half-done text" in client.get("/desserts/plain-cream/edit").html


def test_undo_and_redo(client: Client) -> None:
    change(client, **{"set:pieces": "7"})
    assert "Redo" not in client.get(CREAM).words
    client.post(f"{CREAM}/undo", {"started_from": started_from(client)})
    assert at(client, "pieces") == 6
    client.post(f"{CREAM}/redo", {"started_from": started_from(client)})
    assert at(client, "pieces") == 7


def test_a_copy_is_a_dessert_of_its_own(client: Client) -> None:
    reply = client.post("/desserts/plain-cream/duplicate", {})
    assert reply.headers["location"] == "/desserts/plain-cream-copy/build"
    again = client.post("/desserts/plain-cream/duplicate", {})
    assert again.headers["location"] == "/desserts/plain-cream-copy-2/build"
    assert "Plain cream, a copy" in client.get("/").words


def test_two_desserts_stand_side_by_side(client: Client) -> None:
    assert "Side by side" in client.get("/compare").words
    client.post("/desserts/plain-cream/duplicate", {})
    text = {"started_from": "1", LINE: "400 g"}
    client.post("/desserts/plain-cream-copy/build", text)
    words = client.get("/compare?one=plain-cream&other=plain-cream-copy").words
    assert "Caster sugar differs" in words
    assert client.get("/compare?one=nothing").status == 404
