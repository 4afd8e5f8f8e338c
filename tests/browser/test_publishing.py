"""Publishing from the workbench: progress, the page in its frame, files to take along."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from zipfile import ZipFile

from playwright.sync_api import Page, expect

Keep = Callable[[Page, str], Path]
Barriers = Callable[[Page], list[str]]

GLASS = "desserts/mango-coconut-lime-glass"
DOME = "desserts/blackcurrant-vanilla-dome"
PATIENCE = 240_000.0  # ms, for the tables of a frozen dessert on a busy machine


def test_a_frozen_dessert_shows_how_far_it_is_and_can_be_stopped(
    page: Page, workbench: str, keep_screen: Keep, barriers: Barriers
) -> None:
    page.goto(f"{workbench}{DOME}?pieces=23")
    page.get_by_role("link", name="Publish").click()
    expect(page.get_by_role("heading", name="The page is being worked out")).to_be_visible()
    expect(page.get_by_text(re.compile(r"of 127 sizes of mould are done"))).to_be_visible(
        timeout=PATIENCE
    )
    keep_screen(page, "publish-progress")
    page.get_by_role("button", name="Stop").click()
    expect(page.get_by_role("heading", name="Stopped")).to_be_visible()
    assert barriers(page) == []
    page.get_by_role("button", name="Work it out after all").click()
    expect(page.get_by_role("heading", name="The page is being worked out")).to_be_visible()
    page.get_by_role("button", name="Stop").click()


def test_the_page_stands_in_its_frame_and_answers_there(
    page: Page, workbench: str, keep_screen: Keep, barriers: Barriers
) -> None:
    page.goto(f"{workbench}{GLASS}/publish")
    frame = page.frame_locator("iframe.preview")
    expect(frame.get_by_role("heading", level=1)).to_contain_text("Mango", timeout=PATIENCE)
    expect(frame.locator("script").first).to_be_attached()
    keep_screen(page, "publish-ready")
    assert barriers(page) == []


def test_files_are_taken_along(page: Page, workbench: str, tmp_path: Path) -> None:
    page.goto(f"{workbench}{GLASS}/publish")
    page.get_by_label("Pictures").uncheck()
    with page.expect_download(timeout=PATIENCE) as taken:
        page.get_by_role("button", name="Take all as one ZIP").click()
    place = tmp_path / "all.zip"
    taken.value.save_as(place)
    with ZipFile(place) as archive:
        names = archive.namelist()
    assert "mango-coconut-lime-glass.html" in names and "mango-coconut-lime-glass.pdf" in names
    assert not any(name.endswith(".png") for name in names)
    with page.expect_download(timeout=PATIENCE) as one:
        page.get_by_role("link", name="the sheet for the wall").click()
    assert one.value.suggested_filename == "mango-coconut-lime-glass-wall.pdf"


def test_a_wrong_limit_is_told_beside_it(page: Page, workbench: str) -> None:
    page.goto(f"{workbench}{GLASS}/publish")
    page.get_by_label("Most letters of the description").fill("a few")
    page.get_by_label("Paper").select_option("Letter")
    page.get_by_role("button", name="Take all as one ZIP").click()
    expect(page.get_by_text("Found 'a few'")).to_be_focused()
    expect(page.get_by_label("Paper")).to_have_value("letter")


def test_nothing_scrolls_sideways_at_320_pixels(
    page: Page, workbench: str, keep_screen: Keep
) -> None:
    page.set_viewport_size({"width": 320, "height": 800})
    page.goto(f"{workbench}{GLASS}/publish")
    expect(page.locator("iframe.preview")).to_be_visible(timeout=PATIENCE)
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    keep_screen(page, "publish-narrow")
