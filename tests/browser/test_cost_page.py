"""Prices are typed beside the ingredients; the cost of a piece follows."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect

Keep = Callable[[Page, str], Path]
GLASS = "desserts/mango-coconut-lime-glass"


def test_prices_are_typed_and_the_cost_follows(
    page: Page, workbench: str, keep_screen: Keep
) -> None:
    page.goto(workbench + GLASS)
    page.get_by_role("link", name="Cost", exact=True).click()
    expect(
        page.get_by_role("heading", name=re.compile("At least 0.00 EUR a piece"))
    ).to_be_visible()
    page.get_by_label("An hour of hands").fill("30")
    page.get_by_label("Wanted margin").fill("65 %")
    first = page.locator(".price-rows li").first
    first.get_by_label(re.compile("Pack$")).fill("1 kg")
    first.get_by_label(re.compile("Price$")).fill("8,40")
    page.get_by_role("button", name="Keep these prices").click()
    expect(page.get_by_text("Sell a piece for")).to_be_visible()
    expect(first.get_by_label(re.compile("Price$"))).to_have_value("8.4")
    keep_screen(page, "cost")


def test_a_narrow_dark_page_holds_it(page: Page, workbench: str, keep_screen: Keep) -> None:
    page.emulate_media(color_scheme="dark")
    page.set_viewport_size({"width": 320, "height": 800})
    page.goto(f"{workbench}{GLASS}/cost")
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    keep_screen(page, "cost-narrow-dark")
