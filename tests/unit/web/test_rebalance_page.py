"""Rebalancing in the workbench: asked on a page, shown, saved as a new revision."""

from __future__ import annotations

import re
from urllib.parse import urlencode

from entremetry.store import Kind
from unit.web.conftest import Client

PAGE = "/desserts/plain-cream/rebalance"


def ask(client: Client, **fields: str) -> str:
    """What a person reads after working something out."""
    query = urlencode({"component": "cream", "work": "1", **fields})
    return client.get(f"{PAGE}?{query}").words


def stored(client: Client) -> str:
    return client.app.state.workbench.library.document(Kind.DESSERT, "plain-cream").text


def revision(client: Client) -> str:
    found = client.app.state.workbench.library.document(Kind.DESSERT, "plain-cream")
    return str(found.revision.number)


def test_the_page_of_a_dessert_leads_to_it(client: Client) -> None:
    assert f'href="{PAGE}"' in client.get("/desserts/plain-cream").html


def test_the_form_offers_components_lines_and_measures(client: Client) -> None:
    page = client.get(PAGE)
    assert page.status == 200
    for words in ("Set cream", "Cream 35 %, 500 g", "sweetness", "freezing point", "Work it out"):
        assert words.replace(" ", "") in page.words.replace("\u00a0", "").replace(" ", "")
    assert "Before" not in page.words


def test_nothing_asked_changes_nothing(client: Client) -> None:
    words = ask(client)
    assert "Nothing has to change" in words and "Everything holds" in words
    assert "Save as a new revision" not in words


def test_a_target_shows_before_and_after_and_what_gave_way(client: Client) -> None:
    words = ask(client, target="sugars", value="-30 %")
    assert "What gave way: " in words and "sweetness" in words
    assert "Save as a new revision" in words
    assert "was wished" in words and "asked for" in words


def test_a_swap_shows_its_cautions(client: Client) -> None:
    words = ask(client, swap_from="cream-35", swap_to="plant-whipping-cream")
    assert "new allergens: soybeans" in words
    assert "Plant" in words


def test_what_cannot_be_is_said_with_what_to_loosen(client: Client) -> None:
    words = ask(client, target="fat", value="60")
    assert "No formula can do this" in words
    assert "fat between 58.8 and 61.2" in words.replace("\u00a0", " ")
    assert "Before" not in words


def test_what_cannot_be_read_is_said_on_the_page(client: Client) -> None:
    assert "a number in" in ask(client, target="fat", value="much")
    assert "did you mean" in ask(client, swap_from="cream-35", swap_to="cream-31")
    assert "This does not work yet" in ask(client, swap_from="cream-35", swap_to="gelatine")


def test_what_was_chosen_stays_chosen(client: Client) -> None:
    query = {"component": "cream", "work": "1", "target": "fat", "value": "30"}
    chosen = {**query, "keep-yield": "1", "pin-caster-sugar": "1", "rule": "root"}
    html = client.get(f"{PAGE}?{urlencode(chosen)}").html
    for name in ("keep-yield", "pin-caster-sugar"):
        assert f'name="{name}" value="1" checked' in html
    assert '<option value="fat" selected>' in html
    assert 'value="root" checked' in html
    assert "left alone" in html


def test_a_result_is_saved_as_a_new_revision(client: Client) -> None:
    fields = {"component": "cream", "work": "1", "swap_from": "cream-35", "swap_to": "cream-30"}
    before = revision(client)
    reply = client.post(PAGE, {**fields, "started_from": before})
    assert (reply.status, reply.headers["location"]) == (303, "/desserts/plain-cream")
    assert "cream-30: " in stored(client) and "cream-35" not in stored(client)
    assert "note: bloomed <well>" in stored(client)
    assert int(revision(client)) == int(before) + 1


def test_the_form_sends_what_was_shown(client: Client) -> None:
    query = urlencode({"component": "cream", "work": "1", "target": "sugars", "value": "-30 %"})
    html = client.get(f"{PAGE}?{query}").html
    form = html[html.index('method="post"') :]
    sent = dict(re.findall(r'name="([^"]+)" value="([^"]*)"', form))
    assert sent["target"] == "sugars" and sent["value"] == "-30 %"
    assert client.post(PAGE, {n: v for n, v in sent.items() if n != "token"}).status == 303
    assert "caster-sugar: 50 g" not in stored(client)


def test_what_somebody_saved_meanwhile_is_not_lost(client: Client) -> None:
    fields = {"component": "cream", "target": "sugars", "value": "-30 %"}
    first = {**fields, "started_from": revision(client)}
    assert client.post(PAGE, first).status == 303
    saved = stored(client)
    assert client.post(PAGE, {**first, "value": "-10 %"}).status == 409
    assert stored(client) == saved


def test_what_cannot_be_is_not_saved(client: Client) -> None:
    before = stored(client)
    fields = {"component": "cream", "work": "1", "target": "fat", "value": "60"}
    reply = client.post(PAGE, {**fields, "started_from": revision(client)})
    assert reply.status == 422 and "No formula can do this" in reply.words
    assert stored(client) == before


def test_a_form_from_elsewhere_changes_nothing(client: Client) -> None:
    before = stored(client)
    fields = {"component": "cream", "target": "sugars", "value": "-30 %", "started_from": "1"}
    assert client.send(PAGE, fields).status == 403
    assert stored(client) == before


def test_an_unknown_dessert_or_component_is_told(client: Client) -> None:
    assert client.get("/desserts/plain-creme/rebalance").status == 404
    assert "did you mean" in client.get(f"{PAGE}?component=creme").words


def test_a_dessert_that_cannot_be_made_says_so(client: Client) -> None:
    library = client.app.state.workbench.library
    text = stored(client).replace("id: plain-cream", "id: odd").replace("cream-35", "creme-fresh")
    library.add(Kind.DESSERT, "odd", text)
    words = client.get("/desserts/odd/rebalance").words
    assert "This does not work yet" in words and "creme-fresh" in words


def test_what_is_typed_is_only_ever_text(client: Client) -> None:
    reply = client.get(f"{PAGE}?{urlencode({'work': '1', 'swap_to': '<script>x</script>'})}")
    assert "<script>x" not in reply.html
