"""An ingredient is found while its name is typed, and says who says so."""

from __future__ import annotations

from playwright.sync_api import Page, expect


def test_an_ingredient_is_found_while_typing(page: Page) -> None:
    page.get_by_role("link", name="Larder").click()
    page.get_by_label("Look for an ingredient").press_sequentially("cream 35")
    expect(page.get_by_role("status")).to_contain_text("for “cream 35”")
    page.get_by_role("link", name="Cream 35 %").first.click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Cream 35 %")
    expect(page.get_by_role("region", name="Made of")).to_contain_text("milk fat")
    expect(page.get_by_role("region", name="Allergens")).to_contain_text("milk")
    expect(page.get_by_role("region", name="Who says so")).to_contain_text("Nutrient Database")


def test_a_slip_of_the_finger_is_forgiven(page: Page) -> None:
    page.get_by_role("link", name="Larder").click()
    page.get_by_label("Look for an ingredient").press_sequentially("blakcurrant")
    expect(page.get_by_text("Nothing bears that name.")).to_be_visible()
    page.locator("#found a").first.click()
    expect(page.get_by_role("status")).to_contain_text("ingredient")
    expect(page.locator("#found")).to_contain_text("lackcurrant")
