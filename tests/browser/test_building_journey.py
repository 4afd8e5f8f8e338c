"""A dessert built part by part: numbers, places, steps, by hand, by finger and by keyboard."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from browser.planned_workbench import PlannedWorkbench

Keep = Callable[[Page, str], Path]
Barriers = Callable[[Page], list[str]]
DOME = "desserts/blackcurrant-vanilla-dome"
DEPTH = "#f-placement-1-below_rim"


@pytest.fixture
def building(browser: Browser, workbench: str) -> Iterator[Page]:
    """The page on which the dome is built; what a test changes is undone after it."""
    visitor = browser.new_context(viewport={"width": 1280, "height": 900}, locale="en-GB")
    page = visitor.new_page()
    page.goto(f"{workbench}{DOME}/build")
    expect(page.locator("h1")).to_contain_text("dome")
    yield page
    visitor.close()


@pytest.fixture
def fresh(tmp_path: Path) -> Iterator[str]:
    """A workbench without a kitchen, which the test may set up."""
    running = PlannedWorkbench(home=tmp_path).start()
    yield running.address
    running.kill()


def kept(page: Page, words: str = "Kept.") -> None:
    """What the page says after a change."""
    expect(page.locator("#status")).to_contain_text(words)


def change(page: Page, field: str, value: str) -> None:
    """Type into a field and leave it."""
    page.fill(field, value)
    page.press(field, "Tab")


def undo(page: Page) -> None:
    page.get_by_role("button", name="Undo").click()
    kept(page, "undone")


def piece(page: Page) -> str:
    """What one piece weighs, as the page says."""
    return page.locator(".build-drawing .facts dd").first.inner_text()


def test_a_number_is_kept_at_once_and_undone_after_a_reload(building: Page) -> None:
    amount = "#f-components-vanilla-insert-formula-cream-35-amount"
    mass = building.locator("#card-vanilla-insert .kind")
    before = mass.inner_text()
    change(building, amount, "82 g")
    kept(building)
    expect(mass).not_to_have_text(before)
    building.reload()
    expect(building.locator(amount)).to_have_value("82 g")
    undo(building)
    expect(building.locator(amount)).to_have_value("62 g")
    building.get_by_role("button", name="Redo").click()
    kept(building, "back")
    expect(building.locator(amount)).to_have_value("82 g")
    undo(building)


def test_what_cannot_be_read_stays_in_its_field_and_says_why(building: Page) -> None:
    before = piece(building)
    change(building, DEPTH, "five thumbs")
    expect(building.get_by_role("alert")).to_contain_text("five thumbs")
    expect(building.locator(DEPTH)).to_have_value("five thumbs")
    expect(building.locator(DEPTH)).to_have_attribute("aria-invalid", "true")
    assert piece(building) == before
    change(building, DEPTH, "5 mm")
    expect(building.get_by_role("alert")).to_have_count(0)


def test_the_insert_is_pulled_with_the_finger_and_moved_with_the_keys(building: Page) -> None:
    grip = building.get_by_role("slider", name=re.compile("below the rim"))
    box = grip.locator("rect").bounding_box()
    assert box is not None
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    building.mouse.move(x, y)
    building.mouse.down()
    building.mouse.move(x, y - 14, steps=5)
    building.mouse.up()
    kept(building)
    pulled = building.locator(DEPTH).input_value()
    assert 5.0 < float(pulled.removesuffix(" mm")) < 15.0
    expect(building.locator(".build-drawing .hint").last).to_contain_text("At the thinnest")
    grip.focus()
    building.keyboard.press("ArrowDown")
    building.keyboard.press("ArrowDown")
    wanted = f"{float(pulled.removesuffix(' mm')) - 1.0:g} mm"
    expect(building.locator(DEPTH)).to_have_value(wanted)
    kept(building)
    undo(building)
    undo(building)
    expect(building.locator(DEPTH)).to_have_value("5 mm")


def test_rows_are_carried_and_moved_by_arrows(building: Page) -> None:
    names = building.locator(".place-name")
    first, second = names.nth(0).inner_text(), names.nth(1).inner_text()
    handle = building.locator(".place .drag").first
    target = building.locator(".place").nth(1)
    handle.scroll_into_view_if_needed()
    start, end = handle.bounding_box(), target.bounding_box()
    assert start is not None and end is not None
    building.mouse.move(start["x"] + 10, start["y"] + 10)
    building.mouse.down()
    building.mouse.move(start["x"] + 10, end["y"] + end["height"] - 4, steps=8)
    building.mouse.up()
    kept(building)
    expect(names.nth(0)).to_have_text(second)
    building.get_by_role("button", name=f"{first}: earlier").first.click()
    expect(names.nth(0)).to_have_text(first)
    undo(building)
    undo(building)
    expect(names.nth(0)).to_have_text(first)


def test_a_component_is_pasted_placed_and_taken_out(building: Page) -> None:
    building.locator("#new-component summary").click()
    building.fill("#new-name", "Pear jelly")
    building.select_option("#new-kind", "insert")
    building.select_option("#new-as", "layer")
    building.fill("#new-lines", "80 g pear-puree\n2 leaves gelatine")
    building.get_by_role("button", name="Add the component").click()
    expect(building.get_by_role("alert")).to_contain_text("gelatine")
    expect(building.locator("#new-lines")).to_have_value("80 g pear-puree\n2 leaves gelatine")
    building.fill("#new-lines", "80 g pear-puree\n2 sheets gelatine-sheet-gold")
    building.get_by_role("button", name="Add the component").click()
    kept(building)
    expect(building.locator("#card-pear-jelly")).to_be_visible()
    expect(building.locator(".place-name").last).to_have_text("Pear jelly")
    building.get_by_role("button", name="Take out: Pear jelly", exact=True).click()
    expect(building.locator("#card-pear-jelly")).to_have_count(0)
    expect(building.locator(".place-name")).to_have_count(5)


def test_a_step_is_added_changed_and_moved(building: Page) -> None:
    card = building.locator("#card-roasted-hazelnuts")
    card.get_by_label("Next step").select_option("bake")
    card.get_by_role("button", name="Add to Roasted hazelnuts").click()
    card.get_by_label("Oven at").fill("150 °C")
    card.get_by_label("Takes").fill("12 min")
    card.get_by_role("button", name="Add the step").click()
    kept(building)
    expect(card.locator(".step-words")).to_contain_text("150 °C")
    card.get_by_role("link", name="Change step 1").click()
    card.get_by_label("Takes").fill("14 min")
    card.get_by_label("Takes").press("Tab")
    kept(building)
    expect(card.locator(".step-words")).to_contain_text("14 minutes")
    undo(building)
    undo(building)
    expect(card.locator(".step-words")).to_have_count(0)


def test_two_tabs_change_different_parts_and_are_told_of_the_same_part(
    building: Page, workbench: str
) -> None:
    other = building.context.new_page()
    other.goto(f"{workbench}{DOME}/build")
    change(other, "#f-pieces", "8")
    kept(other)
    change(building, DEPTH, "6 mm")
    kept(building)
    expect(building.locator("#f-pieces")).to_have_value("8")
    change(other, DEPTH, "7 mm")
    expect(other.get_by_role("alert")).to_contain_text("7 mm")
    expect(other.locator(DEPTH)).to_have_value("6 mm")
    undo(building)
    undo(building)


@pytest.mark.parametrize("width", [1280, 820, 320])
def test_the_page_has_no_barriers(
    building: Page, barriers: Barriers, keep_screen: Keep, width: int
) -> None:
    building.set_viewport_size({"width": width, "height": 900})
    building.goto(f"{building.url}?open=components/vanilla-insert/method/%233")
    assert barriers(building) == []
    assert building.evaluate("document.documentElement.scrollWidth") <= width
    keep_screen(building, f"build-{width}")


def test_everything_is_done_without_a_script(browser: Browser, workbench: str) -> None:
    plain = browser.new_context(java_script_enabled=False)
    page = plain.new_page()
    page.goto(f"{workbench}{DOME}/build")
    row = page.locator("#place-1")
    row.locator("input[type=text]").nth(1).fill("9 mm")
    row.get_by_role("button", name="Keep").last.click()
    expect(page.locator("#place-1 input[type=text]").nth(1)).to_have_value("9 mm")
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("#place-1 input[type=text]").nth(1)).to_have_value("5 mm")
    plain.close()


def test_a_kitchen_is_set_up_by_a_walk(browser: Browser, fresh: str) -> None:
    visitor = browser.new_context(viewport={"width": 820, "height": 1180}, has_touch=True)
    page = visitor.new_page()
    page.goto(f"{fresh}kitchen")
    page.get_by_role("link", name="Walk through it").tap()
    for station in ("Heat", "Cold", "Bench", "Moulds"):
        page.get_by_role("link", name=f"Next: {station}").tap()
        expect(page.locator("h1")).to_have_text(station)
    page.fill("#mould-name", "Blossom")
    page.fill("#mould-holds", "92 thimbles")
    page.get_by_role("button", name="Add the mould").tap()
    expect(page.get_by_role("alert")).to_contain_text("92 thimbles")
    expect(page.locator("#mould-name")).to_have_value("Blossom")
    page.fill("#mould-holds", "92")
    page.fill("#mould-cavities", "6")
    page.get_by_role("button", name="Add the mould").tap()
    kept(page)
    page.get_by_role("link", name="Next: Hands").tap()
    page.get_by_label("Name").fill("Ada")
    page.get_by_role("button", name="Add to people").tap()
    expect(page.get_by_role("heading", name="Free hours of Ada")).to_be_visible()
    page.goto(f"{fresh}{DOME}/build?moulds=yes")
    expect(page.get_by_text("Blossom")).to_be_visible()
    visitor.close()
