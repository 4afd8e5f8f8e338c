"""A question asked in the browser: chosen by hand, answered in place, the adapted dessert kept."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Browser, Page, expect

Keep = Callable[[Page, str], Path]
Barriers = Callable[[Page], list[str]]

DOME = "desserts/blackcurrant-vanilla-dome"
PATIENCE = 120_000.0  # ms, for a first computation on a busy machine


def test_from_the_dessert_to_a_new_one_without_its_insert(
    page: Page, workbench: str, keep_screen: Keep, barriers: Barriers
) -> None:
    page.goto(workbench + DOME)
    page.get_by_role("link", name="Questions").click()
    page.get_by_role("link", name="Can I leave it out?").click()
    page.get_by_label("What", exact=True).select_option("vanilla-insert")
    page.get_by_role("button", name="Ask").click()
    answer = page.locator("#answer")
    expect(answer.get_by_role("heading")).to_have_text(
        "Yes: no bench check says worse of it than before.", timeout=PATIENCE
    )
    expect(answer).to_contain_text("no longer contains egg")
    assert barriers(page) == []
    keep_screen(page, "questions-without")
    page.get_by_role("button", name="Keep it as a new dessert").click()
    expect(page.get_by_role("heading", level=1)).to_have_text(
        "Blackcurrant and vanilla dome, without Vanilla cream insert"
    )


def test_another_gelatine_by_keyboard(page: Page, workbench: str, keep_screen: Keep) -> None:
    page.goto(f"{workbench}{DOME}/questions?kind=instead")
    page.get_by_label("What you do not have").select_option(
        "blackcurrant-mousse/gelatine-sheet-gold"
    )
    page.get_by_role("button", name="Show what may stand in").press("Enter")
    page.get_by_label("What you have").select_option("gelatine-sheet-silver")
    page.get_by_role("button", name="Ask").first.press("Enter")
    expect(page.locator("#answer")).to_contain_text("silver 160", timeout=PATIENCE)
    keep_screen(page, "questions-instead")


def test_it_works_without_script(browser: Browser, workbench: str) -> None:
    visitor = browser.new_context(java_script_enabled=False, locale="en-GB")
    page = visitor.new_page()
    page.goto(f"{workbench}{DOME}/questions?kind=contains")
    page.get_by_label("Allergen").select_option("nuts")
    page.get_by_role("button", name="Ask").click()
    expect(page.locator("#answer")).to_contain_text("Ground hazelnuts")
    visitor.close()
