"""Adapting a dessert: a size is asked for, what changes is read, it is kept as a new one."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect

Keep = Callable[[Page, str], Path]
GLASS = "desserts/mango-coconut-lime-glass"
PATIENCE = 240_000.0  # ms, while the solver is made ready on a busy machine


def test_a_glass_of_another_size_becomes_a_new_dessert(
    page: Page, workbench: str, keep_screen: Keep
) -> None:
    page.set_default_navigation_timeout(PATIENCE)
    page.goto(workbench + GLASS)
    page.get_by_role("link", name="Adapt", exact=True).click()
    page.get_by_label("Kind").select_option("glass")
    page.get_by_label("Across (mm)", exact=True).fill("80")
    page.get_by_role("button", name="Show what changes").first.click()
    expect(page.get_by_text("Say how much, such as 75 mm.")).to_be_visible()
    expect(page.get_by_label("Across (mm)", exact=True)).to_have_value("80")
    page.get_by_label("Height (mm)").fill("60")
    page.get_by_role("button", name="Show what changes").first.click()
    expect(page.get_by_role("heading", name="Before and after")).to_be_focused()
    keep_screen(page, "adapt")
    page.get_by_label("Name of the new dessert").fill("Mango in a low glass")
    page.get_by_role("button", name="Keep it as a new dessert").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Mango in a low glass")
