"""The label of a dessert: read, asked where a number is from, drafted for another mould."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect

Keep = Callable[[Page, str], Path]
DOME = "desserts/blackcurrant-vanilla-dome"


def test_from_the_dessert_to_where_a_number_is_from(
    page: Page, workbench: str, keep_screen: Keep
) -> None:
    page.goto(workbench + DOME)
    page.get_by_role("link", name="Label", exact=True).click()
    union = page.get_by_role("region", name="European Union", exact=True)
    expect(union.get_by_role("table", name="Nutrition declaration")).to_be_visible()
    expect(union.locator(".printed strong").first).to_be_visible()
    keep_screen(page, "label")
    fat = union.locator("details.figure", has_text="Fat").first
    fat.locator("summary").focus()
    page.keyboard.press("Enter")
    expect(fat.locator(".reason").first).to_be_visible()


def test_it_is_drafted_for_another_mould(page: Page, workbench: str) -> None:
    page.goto(f"{workbench}{DOME}/label")
    before = page.locator(".printed-us .facts-serving").inner_text()
    page.get_by_label("Mould").select_option("hemisphere-80")
    page.get_by_role("button", name="Draft it for these").click()
    expect(page.locator(".printed-us .facts-serving")).not_to_have_text(before)


def test_the_dark_scheme_keeps_the_label_black_on_white(
    page: Page, workbench: str, keep_screen: Keep
) -> None:
    page.emulate_media(color_scheme="dark")
    page.set_viewport_size({"width": 320, "height": 800})
    page.goto(f"{workbench}{DOME}/label")
    colour = page.locator(".printed").first.evaluate("(e) => getComputedStyle(e).backgroundColor")
    assert colour == "rgb(255, 255, 255)"
    keep_screen(page, "label-narrow-dark")
