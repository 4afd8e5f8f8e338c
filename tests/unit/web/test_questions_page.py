"""Questions in the workbench: chosen from lists, answered in place, kept as a new dessert."""

from __future__ import annotations

import re
from urllib.parse import urlencode

from entremetry.store import Kind
from unit.web.conftest import Client, Reply

PAGE = "/desserts/plain-cream/questions"


def ask(client: Client, kind: str, **fields: str) -> Reply:
    return client.get(f"{PAGE}?{urlencode({'kind': kind, 'ask': '1', **fields})}")


def ids(client: Client) -> set[str]:
    return {each.id for each in client.app.state.workbench.library.documents(Kind.DESSERT)}


def test_the_page_of_a_dessert_leads_to_it(client: Client) -> None:
    assert f'href="{PAGE}"' in client.get("/desserts/plain-cream").html


def test_every_kind_has_its_form(client: Client) -> None:
    assert "Choose a question above" in client.get(PAGE).words
    for kind in ("instead", "mould", "wait", "without", "symptom", "contains"):
        page = client.get(f"{PAGE}?kind={kind}")
        assert page.status == 200 and 'method="get"' in page.html
    assert "Choose a question above" in client.get(f"{PAGE}?kind=nonsense").words


def test_a_line_is_chosen_before_what_stands_in(client: Client) -> None:
    first = client.get(f"{PAGE}?kind=instead").html
    assert 'name="have"' not in first
    second = client.get(f"{PAGE}?kind=instead&instead=cream/gelatine-powder-200").html
    assert '<option value="gelatine-sheet-gold"' in second


def test_an_answer_alone_is_sent_to_a_page_that_has_the_rest(client: Client) -> None:
    query = urlencode({"kind": "without", "ask": "1", "without": "caster-sugar"})
    part = client.get(f"{PAGE}?{query}", hx_request="true")
    assert part.status == 200 and "<html" not in part.html
    assert "Can I leave out Caster sugar in Set cream?" in part.words
    assert part.headers["vary"] == "HX-Request"


def test_a_question_that_cannot_be_read_is_told_on_the_page(client: Client) -> None:
    reply = ask(client, "mould", shape="ring", size="180")
    assert reply.status == 200 and "This cannot be answered yet" in reply.words
    assert "no size" in ask(client, "mould", shape="ring").words.replace(
        "without --size", "no size"
    )
    assert "This cannot be answered yet" in ask(client, "without").words


def test_what_cannot_be_left_out_offers_nothing_to_keep(client: Client) -> None:
    reply = ask(client, "without", without="cream")
    assert "takes all the room that is left" in reply.words
    assert "Keep it as a new dessert" not in reply.words


def test_an_adapted_dessert_is_kept_as_a_new_one(client: Client) -> None:
    html = ask(client, "without", without="caster-sugar").html
    form = html[html.index('method="post"') :]
    sent = dict(re.findall(r'name="([^"]+)"[^>]* value="([^"]*)"', form))
    assert sent["name"].startswith("Plain cream, without Caster sugar")
    reply = client.post(PAGE, {name: text for name, text in sent.items() if name != "token"})
    assert (reply.status, reply.headers["location"]) == (303, "/desserts/plain-cream-2")
    library = client.app.state.workbench.library
    assert "caster-sugar" not in library.document(Kind.DESSERT, "plain-cream-2").text
    assert "caster-sugar: 50 g" in library.document(Kind.DESSERT, "plain-cream").text


def test_nothing_is_kept_without_a_name_or_a_document(client: Client) -> None:
    before = ids(client)
    fields = {"started_from": "1", "without": "caster-sugar"}
    assert client.post(PAGE, {**fields, "name": " "}).status == 422
    assert client.post(PAGE, {**fields, "without": "cream", "name": "x"}).status == 422
    assert client.send(PAGE, {**fields, "name": "x"}).status == 403
    assert ids(client) == before


def test_a_mishap_leads_to_the_causes(client: Client) -> None:
    reply = ask(client, "symptom", symptom="stuck")
    assert 'href="/desserts/plain-cream/diagnosis?symptom=stuck"' in reply.html


def test_a_wait_until_an_hour_is_answered(client: Client) -> None:
    reply = ask(client, "wait", wait="finished", until="2999-01-01T12:00")
    assert "No: 24 h at most." in reply.words.replace("\u00a0", " ")
    assert "which is past" in ask(client, "wait", wait="finished", until="1999-01-01T12:00").words
