"""Adapting in the workbench: asked on a page, shown, kept as a new dessert."""

from __future__ import annotations

import re
from urllib.parse import urlencode

import pytest

from entremetry.store import Kind
from entremetry.usecases.batch import batch_of_text
from entremetry.web.adapt_page import id_of
from unit.web.conftest import CREAM, Client

PAGE = "/desserts/plain-cream/adapt"


def ask(client: Client, **fields: str) -> str:
    return plain(client.get(f"{PAGE}?{urlencode({'work': '1', **fields})}").words)


def plain(text: str) -> str:
    return text.replace("\u00a0", " ").replace("\u202f", " ")


def text_of(client: Client, dessert_id: str) -> str:
    return client.app.state.workbench.library.document(Kind.DESSERT, dessert_id).text


def test_the_page_of_a_dessert_leads_to_it(client: Client) -> None:
    assert f'href="{PAGE}"' in client.get("/desserts/plain-cream").html


def test_moulds_and_sizes_are_offered(client: Client) -> None:
    words = plain(client.get(PAGE).words)
    for each in ("Half-sphere 70 mm", "Frame (length, width, height)", "Straight glass", "Holds"):
        assert each in words
    assert "Before and after" not in words


def test_another_mould_shows_both_drawings_and_says_why(client: Client) -> None:
    html = client.get(f"{PAGE}?work=1&mould=hemisphere-70").html
    assert html.count("<figure>") == 2 and html.count("<svg") > 2
    words = ask(client, mould="hemisphere-70")
    assert "Half-sphere 70 mm instead of Cylinder 60 × 40 mm" in words
    # (2/3) pi 3.5³ = 89.8 ml; pi 3² 4 = 113 ml
    assert "as asked for; 90 ml each, 113 ml before" in words


@pytest.mark.parametrize(
    ("fields", "volume"),
    [
        ({"own": "dome", "diameter": "66"}, 75e-6),  # (2/3) pi 3.3³ = 75.3 ml
        ({"own": "ring", "diameter": "16 cm", "height": "45 mm"}, 905e-6),  # pi 8² 4.5
        ({"own": "log", "length": "250", "width": "80"}, 628e-6),  # pi 4² 25 / 2
        ({"own": "glass", "diameter": "6,5 cm", "height": "75"}, 249e-6),  # pi 3.25² 7.5
        ({"own": "frame", "length": "300", "width": "200", "height": "40"}, 2400e-6),
        ({"own": "holds", "holds": "75"}, 75e-6),
    ],
)
def test_a_size_makes_a_mould_that_the_new_document_bears(
    client: Client, fields: dict[str, str], volume: float
) -> None:
    assert "Before and after" in ask(client, **fields)
    reply = client.post(PAGE, {**fields, "new_name": "Crème, autre moule"})
    assert (reply.status, reply.headers["location"]) == (303, "/desserts/creme-autre-moule")
    sheet = batch_of_text(text_of(client, "creme-autre-moule"))
    assert sheet.mould.cavity_volume.value == pytest.approx(volume, rel=0.01)
    assert sheet.name == "Crème, autre moule"
    assert text_of(client, "plain-cream") == CREAM


def test_more_pieces_alone_are_a_change_too(client: Client) -> None:
    words = ask(client, pieces="12")
    assert "Before and after" in words and "12" in words


def test_every_wrong_size_is_told_beside_its_field_and_kept(client: Client) -> None:
    reply = client.get(f"{PAGE}?{urlencode({'work': '1', 'own': 'ring', 'diameter': 'wide'})}")
    assert "wide" in reply.words and "Say how much, such as 75 mm." in reply.words
    assert 'id="diameter" name="diameter" type="text" inputmode="decimal" value="wide"' in (
        reply.html
    )
    assert reply.html.count('aria-invalid="true"') == 2
    assert "Before and after" not in reply.words


@pytest.mark.parametrize(
    "fields", [{}, {"pieces": "few"}, {"mould": "hemisphere-7"}, {"own": "dome", "diameter": "0"}]
)
def test_what_cannot_be_is_told_and_nothing_is_kept(client: Client, fields: dict[str, str]) -> None:
    words = ask(client, **fields)
    assert "Before and after" not in words
    assert "This does not work yet" in words or "accepted" in words
    assert client.post(PAGE, {**fields, "new_name": "New"}).status == 422
    assert client.get("/desserts/new").status == 404


@pytest.mark.parametrize("name", ["Plain cream", "…"])
def test_a_name_that_is_taken_or_empty_is_told_beside_it(client: Client, name: str) -> None:
    reply = client.post(PAGE, {"mould": "hemisphere-70", "new_name": name})
    assert reply.status == 422 and 'id="new_name-fault"' in reply.html
    assert f'value="{name}"' in reply.html and "Before and after" in reply.words
    assert text_of(client, "plain-cream") == CREAM


def test_the_form_sends_what_was_shown(client: Client) -> None:
    html = client.get(f"{PAGE}?work=1&mould=hemisphere-70&pieces=9").html
    form = html[html.index('method="post"') :]
    form = form[: form.index("</form>")]
    sent = dict(re.findall(r'name="([^"]+)"[^>]* value="([^"]*)"', form))
    assert client.post(PAGE, {n: v for n, v in sent.items() if n != "token"}).status == 303
    assert "pieces: 9" in text_of(client, id_of(sent["new_name"]))


def test_a_form_from_elsewhere_keeps_nothing(client: Client) -> None:
    fields = {"mould": "hemisphere-70", "new_name": "New"}
    assert client.send(PAGE, fields).status == 403
    assert client.get("/desserts/new").status == 404
