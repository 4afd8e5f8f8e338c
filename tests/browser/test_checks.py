"""The panel of bench checks on the page of a dessert, and from a symptom to its causes."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, Route, expect

Keep = Callable[[Page, str], Path]
Barriers = Callable[[Page], list[str]]

DOME = "desserts/blackcurrant-vanilla-dome"
PATIENCE = 120_000.0  # ms, for a first computation on a busy machine


def checked(page: Page, address: str) -> Page:
    """The page of a dessert, once its times have been looked at as well."""
    page.goto(address)
    expect(page.get_by_role("heading", name="Bench checks")).to_be_visible(timeout=PATIENCE)
    expect(page.get_by_text("are being looked at")).to_have_count(0, timeout=PATIENCE)
    return page


def test_the_panel_comes_by_itself_and_is_quiet(
    page: Page, workbench: str, keep_screen: Keep
) -> None:
    checked(page, workbench + DOME)
    fine = page.get_by_text(re.compile(r"^\d+\schecks are fine"))
    expect(fine).to_be_visible()
    expect(page.get_by_text("It does not turn rubbery").first).to_be_hidden()
    keep_screen(page, "checks-panel")


def test_a_number_opens_to_where_it_comes_from_by_keyboard(page: Page, workbench: str) -> None:
    checked(page, workbench + DOME)
    fine = page.locator("summary", has_text=re.compile(r"checks are fine"))
    fine.focus()
    page.keyboard.press("Enter")
    opened = page.locator("details.fine", has_text="It does not turn rubbery").first
    opened.locator("summary").focus()
    page.keyboard.press("Enter")
    expect(opened.get_by_text("Who sets the limit:")).to_be_visible()
    expect(opened.get_by_text("linear rule")).to_be_visible()


def test_what_is_open_stays_open_as_the_times_come(page: Page, workbench: str) -> None:
    waiting: list[Route] = []
    page.route(re.compile(r"/checks\?times=yes(&mould=)?$"), lambda route: waiting.append(route))
    page.goto(workbench + DOME)
    page.locator("#checks-fine").click(timeout=PATIENCE)
    expect(page.locator("details.fine").first).to_be_visible(timeout=PATIENCE)
    expect(page.get_by_text("are being looked at")).to_be_visible()
    while not waiting:
        page.wait_for_timeout(50)
    waiting[0].continue_()
    expect(page.get_by_text("are being looked at")).to_have_count(0, timeout=PATIENCE)
    expect(page.locator("details.fine", has_text="Time to freeze").first).to_be_visible()


def test_another_mould_is_checked_as_it_is_chosen(page: Page, workbench: str) -> None:
    checked(page, workbench + DOME)
    page.get_by_text("Choose another").click()
    with page.expect_response(re.compile(r"/checks\?mould=hemisphere-30")):
        page.locator("label.tile", has_text="Half-sphere 30 mm").click()
    expect(page.get_by_text("Nothing to check yet")).to_be_visible(timeout=PATIENCE)


def test_from_a_symptom_to_what_to_measure(page: Page, workbench: str, keep_screen: Keep) -> None:
    checked(page, workbench + DOME)
    page.get_by_role("link", name="Something went wrong?").click()
    page.get_by_role("link", name="The glaze ran or slid off").click()
    expect(page.get_by_role("heading", name="The glaze ran or slid off")).to_be_visible(
        timeout=PATIENCE
    )
    expect(page.get_by_text("Measure:").first).to_be_visible()
    keep_screen(page, "diagnosis")


def test_nobody_is_kept_out(page: Page, workbench: str, barriers: Barriers) -> None:
    checked(page, workbench + DOME + "/checks")
    page.locator("summary", has_text="checks are fine").click()
    page.locator(".figure summary").first.click()
    assert barriers(page) == []
    page.goto(workbench + DOME + "/diagnosis?symptom=weeping")
    assert barriers(page) == []


def test_nothing_scrolls_sideways_at_320_pixels(page: Page, workbench: str) -> None:
    page.set_viewport_size({"width": 320, "height": 800})
    for address in ("/checks", "/diagnosis?symptom=soggy"):
        page.goto(workbench + DOME + address)
        page.locator("main summary").first.click()
        assert page.evaluate("document.documentElement.scrollWidth") <= 320
