"""Each page says what a person came for."""

from __future__ import annotations

import re
from html import unescape
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook
from pypdf import PdfReader

from entremetry.store import Kind
from entremetry.store.database import open_database
from entremetry.store.library import Library
from entremetry.usecases.batch import batch_of_text
from entremetry.usecases.library import dessert_name, listed_name
from unit.web.conftest import CREAM

Client = Any


def plain(text: str) -> str:
    """Text with plain blanks."""
    return re.sub(r"[\u00a0\u202f]", " ", text)


def test_empty_library_teaches_how_to_begin(empty: Client) -> None:
    words = empty.get("/").words
    assert "Nothing here yet" in words
    assert "Write the first one" in words


def test_library_shows_a_card_with_drawing_pieces_and_mould(client: Client) -> None:
    reply = client.get("/")
    assert "Plain cream" in reply.words
    assert "6 pieces Cylinder 60 × 40 mm" in plain(reply.words)
    assert 'href="/desserts/plain-cream"' in reply.html
    assert '<svg viewBox="0 0' in reply.html


def test_dessert_in_trouble_keeps_its_card_and_its_name(client: Client) -> None:
    library = client.app.state.workbench.library
    text = library.document(Kind.DESSERT, "plain-cream").text
    library.save(Kind.DESSERT, "plain-cream", text.replace("cream-35", "creem-35"), started_from=1)
    words = plain(client.get("/").words)
    assert "Plain cream Needs a look: 1 fault in the document" in words
    page = client.get("/desserts/plain-cream").words
    assert "This does not work yet" in page
    assert "Line 12" in page and "cream-35" in page


def test_dessert_page_says_the_numbers_of_the_use_case(client: Client) -> None:
    text = client.app.state.workbench.library.document(Kind.DESSERT, "plain-cream").text
    sheet = batch_of_text(text)
    words = plain(client.get("/desserts/plain-cream").words)
    total = sum(component.mass.value for component in sheet.components)
    assert f"{total * 1e3:.0f} g to make" in words
    assert all(step.text in words for step in sheet.fill_steps)
    assert all(purchase.name in words for purchase in sheet.shopping)


def test_every_computed_number_opens_to_its_reason(client: Client) -> None:
    reply = client.get("/desserts/plain-cream")
    text = client.app.state.workbench.library.document(Kind.DESSERT, "plain-cream").text
    component = batch_of_text(text).components[0]
    words = plain(reply.words)
    for figure in (component.mass, component.volume, component.per_piece):
        assert plain(figure.because) in words
    assert reply.html.count('<details class="figure">') >= 7


def test_what_the_author_wrote_is_escaped(client: Client) -> None:
    reply = client.get("/desserts/plain-cream")
    assert "bloomed &lt;well&gt;" in reply.html and "<well>" not in reply.html
    assert "cream &amp; sugar" in reply.html


def test_twice_the_pieces_take_twice_as_much(client: Client) -> None:
    six = plain(client.get("/desserts/plain-cream?pieces=6").words)
    twelve = plain(client.get("/desserts/plain-cream?pieces=12").words)
    masses = [
        int(re.search(r"([\d ]+) g to make", words)[1].replace(" ", "")) for words in (six, twelve)
    ]
    assert masses[1] == pytest.approx(2 * masses[0], abs=1)
    assert "12 pieces in Cylinder 60" in twelve


def test_another_mould_changes_the_sheet_and_the_drawing(client: Client) -> None:
    here = client.get("/desserts/plain-cream").html
    there = client.get("/desserts/plain-cream?mould=hemisphere-70").html
    drawings = [
        re.search(r'id="drawing">(.*?)</div>', html, re.DOTALL)[1] for html in (here, there)
    ]
    assert drawings[0] != drawings[1]
    assert "in Half-sphere 70" in plain(there)


def test_live_answer_holds_only_what_changes(client: Client) -> None:
    reply = client.get("/desserts/plain-cream/sheet?pieces=3&mould=hemisphere-70")
    assert "<html" not in reply.html
    assert 'id="status" hx-swap-oob="innerHTML"' in reply.html
    assert "3 pieces in Half-sphere 70" in plain(reply.words)


@pytest.mark.parametrize(
    ("query", "told"),
    [
        ("pieces=0", "1 to 10000 pieces"),
        ("pieces=12345678", "1 to 10000 pieces"),
        ("pieces=-3", "a whole number, such as 12"),
        ("pieces=many", "a whole number, such as 12"),
        ("mould=hemisphere-7", "did you mean"),
        ("have_of=cream-35&have_g=1", "not enough for one piece"),
        ("have_of=cream-35&have_g=lots", "found"),
    ],
)
def test_choice_that_cannot_be_is_told_and_costs_nothing(
    client: Client, query: str, told: str
) -> None:
    reply = client.get(f"/desserts/plain-cream?{query}")
    assert reply.status == 200
    assert "This does not work yet" in reply.words
    assert told in plain(reply.words)
    assert "Plain cream" in reply.words


def test_what_i_have_decides_how_many(client: Client) -> None:
    words = plain(client.get("/desserts/plain-cream?have_of=cream-35&have_g=500").words)
    pieces = int(re.search(r"(\d+) pieces? in", words)[1])
    text = client.app.state.workbench.library.document(Kind.DESSERT, "plain-cream").text

    def cream(count: int) -> float:
        lines = batch_of_text(text, pieces=count).components[0].lines
        return next(line.mass for line in lines if line.id == "cream-35")

    assert cream(pieces) <= 0.5 < cream(pieces + 1)


def test_mass_with_a_comma_or_a_unit_is_understood(client: Client) -> None:
    asked = ("have_g=500", "have_g=500,0", "have_g=0.5+kg")
    replies = {
        re.search(
            r"\d+ pieces? in",
            plain(client.get(f"/desserts/plain-cream?have_of=cream-35&{q}").words),
        )[0]
        for q in asked
    }
    assert len(replies) == 1


def test_unknown_dessert_offers_the_nearest(client: Client) -> None:
    reply = client.get("/desserts/plane-cream")
    assert reply.status == 404
    assert 'href="/desserts/plain-cream"' in reply.html


def test_unknown_address_is_told(client: Client) -> None:
    reply = client.get("/absent")
    assert reply.status == 404
    assert "no page at this address" in reply.words


def test_larder_finds_by_part_of_a_name(client: Client) -> None:
    words = client.get("/larder?q=blackcurrant+pur").words
    assert "Blackcurrant purée" in words
    assert "Cocoa" not in words


def test_larder_offers_the_nearest_when_nothing_fits(client: Client) -> None:
    words = client.get("/larder/found?q=blakcurant+puree").words
    assert "Nothing bears that name" in words
    assert "Did you mean" in words


def test_ingredient_says_what_the_source_says(client: Client) -> None:
    # USDA SR28, table WEIGHT, fluid heavy whipping cream (01053): 238 g a cup, 120 g whipped.
    words = plain(client.get("/larder/cream-35").words)
    assert "1 US cup 238 g" in words
    assert "1 US cup, whipped 120 g" in words
    assert "EU: milk" in words and "US: milk" in words
    assert "USDA" in words


def test_own_and_changed_ingredients_are_marked(client: Client) -> None:
    kitchen = "entremetry_kitchen: 1\nname: Mine\ningredients:\n  cream-35: {density: 0.99 g/ml}\n"
    assert client.post("/kitchen", {"text": kitchen, "started_from": "0"}).status == 303
    assert "changed by you" in client.get("/larder?q=cream+35").words
    assert "Changed by you" in client.get("/larder/cream-35").words


def test_sources_say_where_there_is_none(client: Client) -> None:
    words = client.get("/sources").words
    assert "Choi, Y. and Okos, M. R. (1986)" in words
    assert "Common practice, no source" in words


def test_pages_are_light(client: Client) -> None:
    html = client.get("/desserts/plain-cream").html
    files = set(re.findall(r'(?:href|src)="(/static/[^"]+)"', html))
    files |= {"/static/vendor/figtree-5.3.0.woff2"}
    weight = len(html) + sum(len(client.get(address).body) for address in files)
    assert weight < 400_000


def test_nothing_is_asked_from_elsewhere(client: Client) -> None:
    for path in ("/", "/desserts/plain-cream", "/new", "/static/workbench.css"):
        assert not re.search(
            r'(?:href|src|action)="(?:https?:)?//|url\("?https?:', client.get(path).html
        )


def test_recipe_page_is_of_what_was_chosen(client: Client) -> None:
    html = client.get("/desserts/plain-cream?pieces=9&mould=hemisphere-70").html
    link = re.search(r'id="recipe-link" href="([^"]+)"', html)[1].replace("&amp;", "&")
    words = plain(client.get(link).words)
    assert "Half-sphere 70 mm" in words and "9 pieces" in words


def test_paper_and_tables_are_of_what_was_chosen(client: Client) -> None:
    html = client.get("/desserts/plain-cream?pieces=9&mould=hemisphere-70").html
    links = [unescape(link) for link in re.findall(r'href="([^"]+)" download', html)]
    a4, letter, tables = (client.get(link) for link in links)
    for reply, width in ((a4, 595), (letter, 612)):
        assert reply.headers["content-type"] == "application/pdf"
        assert reply.headers["content-disposition"] == 'attachment; filename="plain-cream.pdf"'
        page = PdfReader(BytesIO(reply.body)).pages[0]
        assert round(float(page.mediabox.width)) == width
        assert "9 pieces" in plain(page.extract_text())
    book = load_workbook(BytesIO(tables.body))
    assert "attachment" in tables.headers["content-disposition"]
    chosen = client.app.state.workbench.library.document(Kind.DESSERT, "plain-cream").text
    sheet = batch_of_text(chosen, pieces=9, mould="hemisphere-70")
    masses = [round(line.mass * 1e3, 2) for each in sheet.components for line in each.lines]
    assert [row[2].value for row in list(book["Quantities"].rows)[1:]] == masses


def test_a_choice_brings_links_to_its_own_files(client: Client) -> None:
    html = client.get("/desserts/plain-cream/sheet?pieces=9").html
    assert 'id="downloads"' in html and 'hx-swap-oob="true"' in html
    assert html.count("pieces=9") >= 4


def test_drawing_that_the_recipe_names_is_there(client: Client) -> None:
    reply = client.get("/desserts/plain-cream/section.svg")
    assert reply.status == 200
    assert reply.headers["content-type"] == "image/svg+xml; charset=utf-8"
    assert reply.html.startswith("<svg")


def test_backup_opens_as_a_library(client: Client, tmp_path: Path) -> None:
    reply = client.get("/backup")
    assert reply.headers["content-disposition"].startswith('attachment; filename="entremetry-')
    (tmp_path / "copy.sqlite").write_bytes(reply.body)
    copy = Library(open_database(tmp_path / "copy.sqlite"))
    assert [stored.id for stored in copy.documents(Kind.DESSERT)] == ["plain-cream"]
    copy.close()


def test_choice_that_does_not_work_stays_chosen(client: Client) -> None:
    library = client.app.state.workbench.library
    text = library.document(Kind.DESSERT, "plain-cream").text
    library.save(
        Kind.DESSERT,
        "plain-cream",
        text
        + "  - {component: cream, as: insert, below_rim: 5 mm,"
        + " shape: {kind: hemisphere, diameter: 40 mm}}\n",
        started_from=1,
    )
    for path in ("/desserts/plain-cream", "/desserts/plain-cream/sheet"):
        reply = client.get(f"{path}?pieces=9&mould=hemisphere-30")
        assert "This does not work yet" in reply.words
        assert re.search(r'id="chosen-mould"[^>]*>Half-sphere 30\u00a0mm', reply.html)
    html = client.get("/desserts/plain-cream?pieces=9&mould=hemisphere-30").html
    assert re.search(r'id="pieces"[^>]* value="9"', html)


def test_a_large_library_is_shown_a_page_at_a_time_and_searched(client: Client) -> None:
    library = client.app.state.workbench.library
    for number in range(30):
        text = CREAM.replace("plain-cream", f"cream-{number}")
        library.add(
            Kind.DESSERT, f"cream-{number}", text.replace("Plain cream", f"Cream no {number:02}")
        )
    first, second = client.get("/").words, client.get("/?page=2").words
    assert "Page 1 of 2, 31 desserts" in first
    assert "Cream no 00" in first
    assert "Cream no 00" not in second
    assert "Plain cream" in second
    found = client.get("/?find=NO+2").words
    assert "12 desserts with “NO 2” in the name" in found
    assert "Cream no 29" in found
    assert "0 desserts with" in client.get("/?find=%3Cscript%3E").words
    assert "<script>" not in client.get("/?find=%3Cscript%3E").html.replace("<script src", "")
    assert "Page 2 of 2" in client.get("/?page=77").words


def test_what_is_further_down_a_page_is_drawn_when_it_is_seen(client: Client) -> None:
    library = client.app.state.workbench.library
    for number in range(15):
        text = CREAM.replace("plain-cream", f"cream-{number:02}")
        library.add(
            Kind.DESSERT, f"cream-{number:02}", text.replace("Plain cream", f"A{number:02}")
        )
    page = client.get("/").html
    assert 'hx-get="/desserts/cream-07/card"' not in page
    assert 'hx-get="/desserts/cream-08/card"' in page
    assert "A12" in page
    card = client.get("/desserts/cream-12/card")
    assert "<svg" in card.html
    assert "6 pieces" in card.words


@pytest.mark.parametrize(
    "line",
    [
        "name: Plum log",
        "name: 'Plum ''n'' log'",
        'name: "Plum \\"log\\""',
        "name: >-\n  Plum\n  log",
    ],
)
def test_the_quick_name_is_the_name(line: str) -> None:
    text = CREAM.replace("name: Plain cream", line, 1)
    assert listed_name("plain-cream", text) == dessert_name("plain-cream", text)
