"""What is kept: pages to read while the workbench is away, and the library as one file."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from browser.planned_workbench import PlannedWorkbench
from unit.web.conftest import CREAM

Keep = Callable[[Page, str], Path]
Barriers = Callable[[Page], list[str]]

PATIENCE = 60.0  # s, on a busy machine
SETTLED = 5000  # ms, when a page counts as read
AGAIN = 15.0  # s until the page is loaded again, which makes a browser try once more
CONTROLLED = "Boolean(navigator.serviceWorker.controller)"
IS_KEPT = """
async (path) => {
  const cache = await caches.open("entremetry/pages");
  return Boolean(await cache.match(path));
}
"""


@pytest.fixture
def cook(browser: Browser, planned: PlannedWorkbench) -> Iterator[Page]:
    """A tablet that keeps pages, before a library with a plain dessert."""
    planned.write("plain-cream", CREAM)
    visitor = browser.new_context(
        viewport={"width": 820, "height": 1180}, locale="en-GB", service_workers="allow"
    )
    page = visitor.new_page()
    page.clock.install()
    page.goto(f"{planned.address}desserts/plain-cream")
    controlled(page)
    yield page
    visitor.close()


def controlled(page: Page) -> None:
    """Wait until the worker stands before the page."""
    begun = time.monotonic()
    loads = 1
    while not page.evaluate(CONTROLLED):
        passed = time.monotonic() - begun
        assert passed < PATIENCE, "no worker ever stood before the page"
        if passed > AGAIN * loads:
            loads += 1
            page.reload()
        page.wait_for_timeout(50)


def kept(page: Page, path: str) -> None:
    """Wait until a page is kept; the worker keeps it after the page has it."""
    deadline = time.monotonic() + PATIENCE
    while not page.evaluate(IS_KEPT, path):
        assert time.monotonic() < deadline, f"{path} was never kept"
        page.wait_for_timeout(50)


def test_pages_are_read_without_the_workbench(
    cook: Page, planned: PlannedWorkbench, keep_screen: Keep, barriers: Barriers
) -> None:
    dessert = f"{planned.address}desserts/plain-cream"
    banner = cook.get_by_role("complementary").get_by_role("status")
    cook.goto(f"{dessert}/page")
    expect(cook.locator("script[type='application/ld+json']")).to_be_attached(
        timeout=PATIENCE * 1e3
    )
    for path in ("/edit", ""):
        cook.goto(f"{dessert}{path}")
        expect(cook.get_by_role("heading", level=1)).to_contain_text("Plain cream")
    cook.clock.fast_forward(SETTLED)
    for path in ("/desserts/plain-cream", "/desserts/plain-cream/page", "/plans"):
        kept(cook, path)
    cook.context.set_offline(True)
    for path in ("", "/page"):
        cook.goto(f"{dessert}{path}")
        expect(cook.get_by_role("heading", level=1)).to_contain_text("Plain cream")
        expect(banner).to_contain_text("Kept copy from")
        expect(cook.locator("main")).to_contain_text("aster sugar")
    cook.goto(f"{planned.address}plans")
    expect(banner).to_contain_text("the workbench does not answer")
    assert barriers(cook) == []
    cook.goto(f"{dessert}/edit")
    expect(cook.get_by_role("heading", level=1)).to_have_text(
        "This page is not kept on this device"
    )
    assert barriers(cook) == []
    keep_screen(cook, "nothing-kept")
    cook.get_by_role("link", name="Plain cream", exact=True).click()
    expect(banner).to_contain_text("Kept copy from")
    keep_screen(cook, "kept-copy")
    cook.context.set_offline(False)
    expect(banner).to_have_count(0, timeout=20_000)
    expect(cook.get_by_role("heading", level=1)).to_contain_text("Plain cream")


def test_a_kept_page_changes_nothing(cook: Page, planned: PlannedWorkbench) -> None:
    cook.goto(f"{planned.address}kitchen")
    kept(cook, "/kitchen")
    save = cook.get_by_role("button", name="Save")
    expect(save).to_be_enabled()
    cook.context.set_offline(True)
    cook.reload()
    expect(save).to_be_disabled()
    expect(cook.get_by_text("This needs the workbench.").first).to_be_visible()


def test_a_backup_is_taken_away_and_brought_back(
    cook: Page, planned: PlannedWorkbench, tmp_path: Path, keep_screen: Keep, barriers: Barriers
) -> None:
    cook.goto(planned.address)
    cook.get_by_role("link", name="Safe keeping").click()
    with cook.expect_download() as taken:
        cook.get_by_role("link", name="Download a backup").click()
    taken.value.save_as(tmp_path / "backup.sqlite")
    planned.write("late-cream", CREAM.replace("plain-cream", "late-cream"))
    cook.get_by_label("The file").set_input_files(tmp_path / "backup.sqlite")
    cook.get_by_role("button", name="See what is in it").click()
    expect(cook.get_by_role("region", name="Only here")).to_contain_text("Plain cream")
    assert barriers(cook) == []
    keep_screen(cook, "safe-look")
    cook.get_by_role("button", name="Put the backup in place").click()
    expect(cook.get_by_role("status")).to_contain_text("The backup is in place.")
    assert barriers(cook) == []
    keep_screen(cook, "safe-taken")
    cook.goto(f"{planned.address}desserts/late-cream")
    expect(cook.get_by_role("heading", level=1)).to_have_text("Not found")
