"""A page published in French: its words, its numbers, and what its reader changes."""

from __future__ import annotations

import json
import re
import sys
from collections.abc import Callable, Iterator
from html.parser import HTMLParser
from io import BytesIO
from pathlib import Path
from typing import Any

import html5lib
import pytest
from babel.messages.pofile import read_po
from playwright.sync_api import Browser, Page, expect

from demo_pages import demo_page
from entremetry.publish.recipe_page import digest, stylesheet
from entremetry.publish.typography import grams, millilitres
from entremetry.words import speaking

sys.path.insert(0, str(Path(__file__).parents[2] / "tools" / "catalogue"))
from messages import CATALOGUES

DOME = "blackcurrant-vanilla-dome"
LARGEST = 500_000  # bytes


class Words(HTMLParser):
    """What a page shows, piece by piece."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.inside = ""
        self.found: set[str] = set()
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.inside = tag

    def handle_endtag(self, tag: str) -> None:
        self.inside = ""

    def handle_data(self, data: str) -> None:
        if self.inside not in {"script", "style"} and data.strip():
            self.found.add(" ".join(data.split()))


@pytest.fixture(scope="module")
def french() -> str:
    return demo_page(DOME, "fr")


@pytest.fixture(scope="module")
def english() -> str:
    return demo_page(DOME)


@pytest.fixture(scope="module")
def address(french: str, tmp_path_factory: pytest.TempPathFactory) -> str:
    place = tmp_path_factory.mktemp("french") / f"{DOME}.fr.html"
    place.write_text(french, encoding="utf-8")
    return place.as_uri()


@pytest.fixture
def opened(browser: Browser, address: str) -> Iterator[Callable[..., Page]]:
    """Function that opens the page in a browser of another language; a complaint fails."""
    complaints: list[str] = []
    contexts = []

    def open_(**settings: Any) -> Page:
        context = browser.new_context(locale="en-GB", timezone_id="Europe/Paris", **settings)
        contexts.append(context)
        page = context.new_page()
        page.on("pageerror", lambda error: complaints.append(f"script: {error}"))
        page.on(
            "console",
            lambda message: complaints.append(message.text) if message.type == "error" else None,
        )
        page.goto(address)
        return page

    yield open_
    for context in contexts:
        context.close()
    assert not complaints, "\n".join(complaints)


def pattern(message: str) -> re.Pattern[str]:
    """What a message may look like with its fields filled in."""
    parts = re.split(r"\{\w+\}", " ".join(message.split()))
    field = r"[\d\s]+" if message.startswith("{number}") else ".+?"
    return re.compile(field.join(re.escape(part).replace(r"\ ", r"\s") for part in parts))


def test_no_message_of_ours_is_left_in_english(french: str, english: str) -> None:
    catalogue = read_po(BytesIO((CATALOGUES / "fr.po").read_bytes()), locale="fr")
    page = ("publish/templates", "publish/page_words", "publish/reader_model", "publish/days_ahead")
    ours = [
        one
        for message in catalogue
        if message.id and any(name.startswith(page) for name, _ in message.locations)
        for one in (message.id if isinstance(message.id, tuple) else (message.id,))
        if one != message.string and len(re.sub(r"\{\w+\}|\W", "", one)) > 3
    ]
    shared = Words(french).found & Words(english).found
    assert len(ours) > 100
    slips = [text for text in shared for one in ours if pattern(one).fullmatch(text)]
    assert slips == []


def test_the_page_is_valid_small_and_needs_nothing_else(french: str) -> None:
    html5lib.HTMLParser(strict=True).parse(french)
    assert len(french.encode()) < LARGEST
    assert not re.search(r"@import|url\((?!#)|<link|\ssrc=", french)
    assert f"script-src '{digest(stylesheet('reader.js'))}'" in french


def test_the_script_is_the_same_in_all_languages(french: str, english: str) -> None:
    scripts = [re.findall(r"<script>(.*?)</script>", page, re.DOTALL) for page in (french, english)]
    assert scripts[0] == scripts[1] and len(scripts[0]) == 1


def test_the_language_is_told_to_machines(french: str, english: str) -> None:
    for page, tag in ((french, "fr"), (english, "en-GB")):
        assert f'<html lang="{tag}">' in page
        data = re.search(r'<script type="application/ld\+json">(.*?)</script>', page, re.DOTALL)
        assert data and json.loads(data[1])["inLanguage"] == tag
    assert '<time datetime="2026-03-08">8 mars 2026</time>' in french


def test_page_and_script_print_the_same_numbers(opened: Callable[..., Page]) -> None:
    page = opened()
    values = [1.07**n * 1e-7 for n in range(320)]
    for name, say, factor in (("grams", grams, 1.0), ("millilitres", millilitres, 1e-3)):
        shown = page.evaluate(
            f"(all) => all.map((value) => window.entremetry.{name}(value))",
            [value * factor for value in values],
        )
        with speaking("fr"):
            assert shown == [say(value * factor) for value in values]
    before = page.inner_text("[data-out=holds]")
    assert before == "89,8\u00a0ml"


def test_the_reader_chooses_in_french(opened: Callable[..., Page]) -> None:
    page = opened()
    published = page.inner_text("main")
    page.select_option("#shape", "cone")
    page.fill("#diameter", "70,5")
    page.fill("#base", "50")
    page.fill("#height", "45")
    page.fill("#pieces", "1")
    expect(page.locator("[data-out=pieces]")).to_have_text("1\u00a0pièce")
    expect(page.locator("[data-out=cavities]")).to_have_text(
        "1 × cône ou gobelet, 70,5 × 50 × 45\u00a0mm"
    )
    expect(page.locator("[data-out=times]")).to_contain_text("Congélation")
    page.fill("#serve", "2026-12-24T20:00")
    expect(page.locator("[data-out=start]")).to_contain_text("décembre")
    page.select_option("#gelatine", "strength")
    page.fill("#bloom", "180")
    expect(page.locator(".swap").first).to_have_text("en gélatine en poudre à 180 Bloom")
    page.select_option("#measures", "us")
    page.fill("#holds", "60,5")
    expect(page.locator("[data-out=holds]")).to_have_text("60,5\u00a0ml")
    page.click("button[type=reset]")
    expect(page.locator("[data-out=pieces]")).to_have_text("6\u00a0pièces")
    expect(page.locator("main")).to_have_text(published, use_inner_text=True)


@pytest.mark.parametrize(
    ("field", "wrong", "said"),
    [
        ("pieces", "0", "Pièces\u00a0: un nombre entier de 1 à 10\u202f000."),
        ("diameter", "large", "Diamètre\u00a0: de 5 à 1000\u00a0mm."),
        ("holds", "beaucoup", "Contenance\u00a0: de 1 à 100\u202f000\u00a0ml."),
    ],
)
def test_what_cannot_be_is_said_in_french(
    opened: Callable[..., Page], field: str, wrong: str, said: str
) -> None:
    page = opened()
    page.select_option("#shape", "cone")
    page.fill(f"#{field}", wrong)
    expect(page.locator("[data-out=refusal]")).to_have_text(said)


@pytest.mark.parametrize(("width", "scheme"), [(1280, "light"), (320, "dark")])
def test_the_page_has_no_barriers(
    opened: Callable[..., Page],
    barriers: Callable[[Page], list[str]],
    keep_screen: Callable[[Page, str], Path],
    width: int,
    scheme: str,
) -> None:
    page = opened(viewport={"width": width, "height": 900}, color_scheme=scheme)
    keep_screen(page, f"reader-fr-{width}-{scheme}")
    page.select_option("#shape", "cone")
    assert barriers(page) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_paper_is_french_too(opened: Callable[..., Page]) -> None:
    page = opened()
    page.fill("#pieces", "12")
    page.emulate_media(media="print")
    assert page.inner_text("[data-out=pieces]") == "12\u00a0pièces"
    assert page.pdf(format="A4", prefer_css_page_size=True).count(b"/Type /Page\n") <= 2
