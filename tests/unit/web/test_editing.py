"""Editing tells every fault at its line, and loses nothing."""

from __future__ import annotations

from typing import Any

from entremetry.store import Kind
from entremetry.web.comparing import compared

Client = Any
EDIT = "/desserts/plain-cream/edit"


def text_of(client: Client) -> str:
    """Newest text of the one dessert."""
    return str(client.app.state.workbench.library.document(Kind.DESSERT, "plain-cream").text)


def saved(client: Client, text: str, started_from: int) -> Any:
    """Send the edit form."""
    return client.post(EDIT, {"text": text, "started_from": str(started_from)})


def test_save_leads_to_the_new_sheet(client: Client) -> None:
    reply = saved(client, text_of(client).replace("pieces: 6", "pieces: 8"), 1)
    assert (reply.status, reply.headers["location"]) == (303, "/desserts/plain-cream")
    assert "8 pieces" in client.get("/desserts/plain-cream").words.replace("\u00a0", " ")


def test_line_ends_of_a_browser_are_made_ours(client: Client) -> None:
    saved(client, text_of(client).replace("pieces: 6", "pieces: 8").replace("\n", "\r\n"), 1)
    assert "\r" not in text_of(client)


def test_faults_are_shown_with_line_and_field_and_the_text_is_kept(client: Client) -> None:
    broken = (
        text_of(client).replace("pieces: 6", "pieces: six").replace("cylinder-60", "cylinder-6")
    )
    reply = saved(client, broken, 1)
    assert reply.status == 422
    assert "Line 5" in reply.words and "pieces" in reply.words
    assert "pieces: six" in reply.html
    assert "pieces: 6" in text_of(client)


def test_draft_is_there_when_one_comes_back(client: Client) -> None:
    saved(client, text_of(client).replace("pieces: 6", "pieces: six"), 1)
    reply = client.get(EDIT)
    assert "This is your draft" in reply.words
    assert "pieces: six" in reply.html


def test_draft_can_be_thrown_away(client: Client) -> None:
    saved(client, text_of(client).replace("pieces: 6", "pieces: six"), 1)
    assert client.post(f"{EDIT}/drop-draft", {}).status == 303
    assert "pieces: six" not in client.get(EDIT).html


def test_draft_is_gone_after_a_repair(client: Client) -> None:
    saved(client, text_of(client).replace("pieces: 6", "pieces: six"), 1)
    saved(client, text_of(client).replace("pieces: 6", "pieces: 7"), 1)
    assert "your draft" not in client.get(EDIT).words


def test_document_that_does_not_fit_is_kept_and_told(client: Client) -> None:
    over = text_of(client) + (
        "  - {component: cream, as: insert, below_rim: 5 mm,"
        " shape: {kind: hemisphere, diameter: 90 mm}}\n"
    )
    assert saved(client, over, 1).status == 303
    assert "This does not work yet" in client.get("/desserts/plain-cream").words
    assert text_of(client) == over


def test_id_cannot_be_changed_by_an_edit(client: Client) -> None:
    reply = saved(client, text_of(client).replace("id: plain-cream", "id: other-cream"), 1)
    assert reply.status == 422
    assert "a dessert keeps its id" in reply.words


def test_second_tab_is_told_and_keeps_its_text(client: Client) -> None:
    first = text_of(client).replace("pieces: 6", "pieces: 7")
    second = text_of(client).replace("pieces: 6", "pieces: 8")
    assert saved(client, first, 1).status == 303
    reply = saved(client, second, 1)
    assert reply.status == 409
    assert "It was changed meanwhile" in reply.words
    assert "pieces: 8" in reply.html and "pieces: 7" in reply.html
    assert text_of(client) == first
    assert 'name="started_from" value="2"' in reply.html
    assert saved(client, second, 2).status == 303
    assert text_of(client) == second


def test_undo_brings_the_text_before(client: Client) -> None:
    first = text_of(client)
    saved(client, first.replace("pieces: 6", "pieces: 7"), 1)
    assert client.post(f"{EDIT}/undo", {"started_from": "2"}).status == 303
    assert text_of(client) == first


def test_undo_at_the_first_state_is_told(client: Client) -> None:
    reply = client.post(f"{EDIT}/undo", {"started_from": "1"})
    assert reply.status == 422
    assert "nothing to undo" in reply.words


def test_undo_from_an_old_page_is_a_conflict(client: Client) -> None:
    saved(client, text_of(client).replace("pieces: 6", "pieces: 7"), 1)
    assert client.post(f"{EDIT}/undo", {"started_from": "1"}).status == 409


def test_older_revision_can_be_brought_back(client: Client) -> None:
    first = text_of(client)
    saved(client, first.replace("pieces: 6", "pieces: 7"), 1)
    form = {"started_from": "2", "revision": "1"}
    assert client.post(f"{EDIT}/restore", form).status == 303
    assert text_of(client) == first
    assert "Revision 3 (now), brought back" in client.get(EDIT).words


def test_older_revision_can_be_looked_at_beside_the_newest(client: Client) -> None:
    saved(client, text_of(client).replace("pieces: 6", "pieces: 7"), 1)
    assert f'href="{EDIT}/1"' in client.get(EDIT).html
    words = client.get(f"{EDIT}/1").words
    assert "then │ pieces: 6" in words and "now │ pieces: 7" in words
    assert client.get(f"{EDIT}/5").status == 404


def test_markup_in_a_document_stays_text(client: Client) -> None:
    reply = saved(client, "</textarea><script>alert(1)</script>", 1)
    assert reply.status == 422
    assert "<script>alert" not in reply.html


def test_first_blank_line_of_a_text_is_kept(client: Client) -> None:
    saved(client, "\n" + text_of(client), 1)
    html = client.get(EDIT).html
    shown = html[html.index("<textarea") :].partition(">")[2]
    assert shown.startswith("\n\nentremetry: 1")


def test_kitchen_starts_from_a_text_that_can_be_saved(empty: Client) -> None:
    from entremetry.web.starter_kitchen import STARTER

    assert "entremetry_kitchen: 1" in empty.get("/kitchen").html
    assert empty.post("/kitchen", {"text": STARTER, "started_from": "0"}).status == 303
    assert "Revision 1 (now), written new" in empty.get("/kitchen").words


def test_mould_of_ones_own_kitchen_can_be_chosen(client: Client) -> None:
    from entremetry.web.starter_kitchen import STARTER

    before, title, example = STARTER.replace("moulds: []", "").partition("# moulds:")
    lines = (line.removeprefix("# ") for line in f"{title}{example}".split("\n"))
    own = before + "\n".join(lines)
    assert client.post("/kitchen", {"text": own, "started_from": "0"}).status == 303
    page = client.get("/desserts/plain-cream?mould=my-blossom").words.replace("\u00a0", " ")
    assert "in My blossom mould" in page


def test_kitchen_with_faults_is_not_kept(empty: Client) -> None:
    reply = empty.post("/kitchen", {"text": "entremetry_kitchen: 1\nnam: x\n", "started_from": "0"})
    assert reply.status == 422
    assert "Line 2" in reply.words and "name" in reply.words
    assert empty.app.state.workbench.library.documents(Kind.KITCHEN) == ()


def test_comparison_marks_whose_a_line_is() -> None:
    lines = compared("a\nb\n", "a\nc\n")
    assert [(line.side, line.text) for line in lines] == [
        ("both", "a"),
        ("theirs", "b"),
        ("mine", "c"),
    ]


def test_comparison_leaves_out_what_is_far_from_any_change() -> None:
    same = "\n".join(f"line {n}" for n in range(50))
    lines = [line.text for line in compared(f"{same}\nold", f"{same}\nnew")]
    assert lines == ["…", "line 47", "line 48", "line 49", "old", "new"]


def test_texts_that_are_alike_give_no_lines() -> None:
    assert compared("a\nb", "a\nb\n") == ()


def test_comparing_long_texts_that_share_nothing_ends() -> None:
    mine = "\n".join(f"a{n}" for n in range(3000))
    theirs = "\n".join(f"b{n}" for n in range(3000))
    assert len(compared(theirs, mine)) == 6000
