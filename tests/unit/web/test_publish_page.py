"""Publishing in the workbench: worked out behind the page, shown in a frame, taken along."""

from __future__ import annotations

import re
import threading
from collections.abc import Callable
from io import BytesIO
from zipfile import ZipFile

import pytest

from entremetry.usecases.publication_files import ENDINGS, Form
from entremetry.usecases.publishing import Prepared, page_of, prepared_of_text
from entremetry.web import publish_page
from entremetry.web.publish_work import Publication, PublishWork, worked_out
from unit.web.conftest import CREAM, Client

PAGE = "/desserts/plain-cream/publish"
Heard = Callable[[int, int], None]


class Slow:
    """Work that tells of two points, and goes on from each when it is let."""

    def __init__(self) -> None:
        self.asked: list[Publication] = []
        self.let = threading.Semaphore(0)
        self.told = threading.Semaphore(0)

    def __call__(self, asked: Publication, heard: Heard) -> Prepared:
        self.asked.append(asked)
        for done in (1, 2):
            heard(done, 2)
            self.told.release()
            assert self.let.acquire(timeout=30)
        return worked_out(asked, heard)


@pytest.fixture
def slow(client: Client, monkeypatch: pytest.MonkeyPatch) -> Slow:
    work = Slow()
    client.app.state.publications = PublishWork(work)
    monkeypatch.setattr(publish_page, "AT_ONCE", 0.0)
    monkeypatch.setattr(publish_page, "LISTENING", 0.0)
    return work


def worked(client: Client) -> None:
    """Wait until the publication of the plain choice is there."""
    assert client.get(f"{PAGE}/all.zip?form-page=yes&limit=500").status == 200


def test_the_page_of_a_dessert_leads_to_it(client: Client) -> None:
    assert f'href="{PAGE}"' in client.get("/desserts/plain-cream").html
    assert f'href="{PAGE}?pieces=9"' in client.get("/desserts/plain-cream/sheet?pieces=9").html


def test_the_reader_sees_how_far_it_is(client: Client, slow: Slow) -> None:
    assert "being worked out" in client.get(PAGE).words
    assert slow.told.acquire(timeout=30)
    part = client.get(f"{PAGE}/progress")
    assert "1 of 2 sizes of mould are done" in part.words
    assert 'max="2" value="1"' in part.html and "hx-get=" in part.html


def test_it_is_worked_out_once_for_the_same_choice(client: Client, slow: Slow) -> None:
    slow.let.release(20)
    worked(client)
    for path in (PAGE, f"{PAGE}/progress", f"{PAGE}/preview", "/desserts/plain-cream/page"):
        assert client.get(path).status == 200
    assert len(slow.asked) == 1
    client.get(f"{PAGE}?pieces=9")
    assert client.get(f"{PAGE}/all.zip?pieces=9&form-page=yes&limit=500").status == 200
    assert [each.pieces for each in slow.asked] == [6, 9]


def test_a_stop_throws_it_away_until_it_is_begun_again(client: Client, slow: Slow) -> None:
    client.get(PAGE)
    assert slow.told.acquire(timeout=30)
    assert client.post(f"{PAGE}/stop", {}).headers["location"] == PAGE
    slow.let.release(20)
    assert "Stopped" in client.get(PAGE).words
    assert client.get(f"{PAGE}/all.zip").status == 303
    assert client.post(f"{PAGE}/begin", {}).status == 303
    worked(client)
    assert "As the reader will have it" in client.get(PAGE).words
    assert len(slow.asked) == 2


@pytest.mark.parametrize(("asked", "chosen"), [("", "fr"), ("?language=en", "en")])
def test_it_speaks_as_the_page_does_unless_another_language_is_chosen(
    client: Client, slow: Slow, asked: str, chosen: str
) -> None:
    html = client.get(f"{PAGE}{asked}", accept_language="fr").html
    assert f'<option value="{chosen}" lang="{chosen}" selected>' in html


def test_paper_does_not_wait_for_the_page(client: Client, slow: Slow) -> None:
    reply = client.get(f"{PAGE}/files/plain-cream.pdf")
    assert reply.body.startswith(b"%PDF") and reply.headers["content-type"] == "application/pdf"
    assert slow.asked == []


def test_the_recipe_page_waits_and_leads_on(client: Client, slow: Slow) -> None:
    waiting = client.get("/desserts/plain-cream/page")
    assert "being worked out" in waiting.words
    again = re.search(r'hx-get="([^"]+progress[^"]*)"', waiting.html)[1].replace("&amp;", "&")
    assert "hx-redirect" not in client.get(again).headers
    slow.let.release(20)
    worked(client)
    assert client.get(again).headers["hx-redirect"].startswith("/desserts/plain-cream/page")


def test_the_frame_is_shut_and_its_page_keeps_its_own_policy(client: Client) -> None:
    worked(client)
    html = client.get(PAGE).html
    assert 'sandbox="allow-scripts"' in html and f'src="{PAGE}/preview?"' in html
    reply = client.get(f"{PAGE}/preview")
    policy = reply.headers["content-security-policy"]
    assert "frame-ancestors 'self'; sandbox allow-scripts" in policy
    assert "script-src 'sha256-" in policy and "unsafe" not in policy
    assert reply.headers["x-frame-options"] == "SAMEORIGIN"
    alone = client.get("/desserts/plain-cream/page")
    assert alone.headers["x-frame-options"] == "DENY"
    assert "frame-ancestors 'none'" in alone.headers["content-security-policy"]


def test_one_zip_holds_what_the_command_writes(client: Client) -> None:
    reply = client.get(f"{PAGE}/all.zip?pieces=9")
    assert reply.headers["content-disposition"] == 'attachment; filename="plain-cream.zip"'
    with ZipFile(BytesIO(reply.body)) as archive:
        names = archive.namelist()
        text = archive.read("plain-cream-description.txt").decode()
    assert names == ["plain-cream" + ending for form in Form for ending in ENDINGS[form]]
    assert "9 pieces" in text.replace("\u00a0", " ")


def test_only_what_was_chosen_is_in_it(client: Client) -> None:
    reply = client.get(f"{PAGE}/all.zip?form-tables=yes&limit=500&paper=letter")
    with ZipFile(BytesIO(reply.body)) as archive:
        assert archive.namelist() == ["plain-cream.xlsx", "plain-cream.ods"]


@pytest.mark.parametrize(
    ("query", "words"),
    [
        ("form-page=yes&limit=many&paper=letter", "Found 'many'; a whole number"),
        ("limit=500&paper=letter", "Choose at least one."),
    ],
)
def test_what_cannot_be_is_said_in_place_and_nothing_is_lost(
    client: Client, query: str, words: str
) -> None:
    reply = client.get(f"{PAGE}/all.zip?{query}")
    assert words in reply.words and reply.headers["content-type"].startswith("text/html")
    assert '<option value="letter" selected>' in reply.html
    assert f'value="{"many" if "many" in query else "500"}"' in reply.html


def test_a_file_nobody_makes_is_not_found(client: Client) -> None:
    assert client.get(f"{PAGE}/files/plain-cream.exe").status == 404
    assert client.get("/desserts/no/publish").status == 404


def test_a_dessert_that_cannot_be_made_says_why(client: Client) -> None:
    reply = client.get(f"{PAGE}?mould=hemisphere-7")
    assert "This cannot be published yet" in reply.words and "did you mean" in reply.words


def test_a_form_from_elsewhere_stops_nothing(client: Client) -> None:
    assert client.send(f"{PAGE}/stop", {}).status == 403


def test_the_page_is_the_one_that_publishing_writes(client: Client) -> None:
    worked(client)
    shown = client.get("/desserts/plain-cream/page").html
    ready = prepared_of_text(CREAM, file="plain-cream")
    assert shown == page_of(ready, publish_page.date.today())
