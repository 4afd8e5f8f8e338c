"""From desserts to a plan, by mouse, touch and keyboard; and what to do when life intervenes."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from browser.conftest import watched
from browser.planned_workbench import PlannedWorkbench

Keep = Callable[[Page, str], Path]
Barriers = Callable[[Page], list[str]]

PATIENCE = 120_000.0  # ms, for a plan on a busy machine
DOME = "Blackcurrant and vanilla dome"
SMALL_TARGETS = """
() => [...document.querySelectorAll('main a, main button, main input, main summary')]
  .filter((e) => e.getClientRects().length && e.type !== 'hidden')
  .filter((e) => !e.closest('p:not(.buttons), li > p, dd'))
  .filter((e) => e.getBoundingClientRect().height < 43.5)
  .map((e) => e.outerHTML.slice(0, 80))
"""


@pytest.fixture
def desk(context: BrowserContext, planned: PlannedWorkbench) -> Iterator[Page]:
    """A page of the planned workbench; complaints of its console fail the test."""
    yield from watched(context.new_page(), planned.address)


@pytest.fixture
def telephone(touch_context: BrowserContext, planned: PlannedWorkbench) -> Iterator[Page]:
    """The same on a telephone."""
    yield from watched(touch_context.new_page(), planned.address)


def asked(page: Page, serve: str) -> None:
    """Ask for a plan of one dessert at an hour."""
    page.get_by_role("link", name="Plans", exact=True).click()
    page.get_by_role("link", name=re.compile("Plan an evening|Make the first plan")).click()
    page.get_by_text(DOME, exact=True).click()
    page.get_by_label("Served at").fill(serve)
    page.get_by_role("button", name="Make the plan").click()


def test_a_menu_leads_to_its_plan(desk: Page, keep_screen: Keep) -> None:
    asked(desk, "2026-11-28T19:00")
    expect(desk.get_by_role("heading", name="Friday 27 November")).to_be_visible()
    expect(desk.get_by_text("Left to itself when you go")).to_have_count(2)
    keep_screen(desk, "plan")
    step = desk.get_by_text("Freeze until the middle is at −15 °C.", exact=True)
    step.click()
    expect(desk.get_by_text("computed: about 1 h 50 min")).to_be_visible()


def test_a_dessert_of_the_library_is_planned_for_good(page: Page, keep_screen: Keep) -> None:
    asked(page, "2031-11-29T19:00")
    expect(page).to_have_url(re.compile(r"/plans/\d+$"), timeout=PATIENCE)
    expect(
        page.get_by_text(re.compile(r"^For Saturday 29\sNovember, 19:00: \d\ssession"))
    ).to_be_visible()
    keep_screen(page, "plan-for-good")
    page.get_by_role("link", name="At the bench").click()
    expect(page.locator("#now-when")).to_contain_text("Free until")
    expect(page.locator("#main-knob")).to_have_text("Begin")


def test_a_menu_is_planned_by_touch(telephone: Page, keep_screen: Keep) -> None:
    asked(telephone, "2026-11-28T19:00")
    expect(telephone.get_by_role("heading", name="Saturday 28 November")).to_be_visible()
    keep_screen(telephone, "plan-narrow")


def test_the_keyboard_asks_for_a_plan(desk: Page, planned: PlannedWorkbench) -> None:
    desk.goto(f"{planned.address}plans/new")
    box = desk.get_by_role("checkbox", name=DOME)
    box.focus()
    desk.keyboard.press("Space")
    desk.keyboard.press("Tab")
    expect(desk.get_by_role("button", name=f"One piece fewer of {DOME}")).to_be_focused()
    desk.keyboard.press("Tab")
    desk.keyboard.press("Control+A")
    desk.keyboard.type("9")
    desk.keyboard.press("Enter")
    expect(desk).to_have_url(re.compile(r"/plans/(making/\w+|\d+)$"))


def test_faults_stand_beside_the_field_and_are_read_first(
    context: BrowserContext, planned: PlannedWorkbench, keep_screen: Keep
) -> None:
    page = context.new_page()  # not watched: a browser's console tells of the refusal
    page.goto(f"{planned.address}plans/new")
    page.get_by_text(DOME, exact=True).click()
    page.get_by_role("spinbutton", name=f"Pieces of {DOME}").fill("0")
    page.get_by_role("button", name="Make the plan").click()
    expect(page.get_by_text("Found '0'; a whole number from 1.")).to_be_visible()
    expect(page.get_by_role("region", name="Not yet")).to_be_focused()
    expect(page.get_by_role("spinbutton", name=f"Pieces of {DOME}")).to_have_value("0")
    keep_screen(page, "plan-faults")


def test_a_plan_on_its_way_shows_the_best_so_far_and_is_stopped(
    desk: Page, barriers: Barriers, keep_screen: Keep
) -> None:
    asked(desk, "2026-11-30T19:00")
    expect(desk.get_by_text("2 so far, 1 at least")).to_be_visible()
    assert barriers(desk) == []
    keep_screen(desk, "plan-making")
    desk.get_by_role("button", name="Stop, and keep the best so far").click()
    expect(desk.get_by_text("You stopped it early")).to_be_visible()


def test_where_no_plan_exists_there_are_reasons_and_ways_out(desk: Page, keep_screen: Keep) -> None:
    asked(desk, "2026-11-29T19:00")
    expect(desk.get_by_role("heading", name="No plan can do all of this")).to_be_visible()
    keep_screen(desk, "plan-impossible")
    desk.get_by_text("The plan that there would be").click()
    expect(desk.get_by_role("heading", name="Friday 27 November")).to_be_visible()
    desk.get_by_role("link", name="Change what you asked").click()
    expect(desk.get_by_label("Served at")).to_have_value("2026-11-28T19:00")


def test_life_intervenes_and_the_rest_is_planned_anew(
    desk: Page, planned: PlannedWorkbench, keep_screen: Keep
) -> None:
    desk.goto(planned.keep())
    desk.get_by_text("Fill 8 insert cavities with 36 g each.").click()
    desk.get_by_role("button", name=re.compile("Takes 30 min longer: Pear compote, Fill 8")).click()
    expect(desk.get_by_text("Pear compote (fill) takes 40 min in all")).to_be_visible()
    desk.get_by_role("button", name="I start in 1 h").click()
    expect(desk.get_by_text("nobody at the bench until")).to_be_visible()
    desk.get_by_role("button", name="Plan the rest anew").click()
    expect(desk.get_by_role("heading", name="What moves")).to_be_visible()
    keep_screen(desk, "plan-anew")
    desk.get_by_role("button", name="Take this plan").click()
    expect(desk.get_by_text("↷ 30 min later").first).to_be_visible()
    expect(desk.get_by_text("the first session ends at 22:05")).to_be_visible()


@pytest.fixture(params=["light", "dark"])
def schemed(request: pytest.FixtureRequest, browser: Browser) -> Iterator[Page]:
    """A page in a light or a dark scheme."""
    visitor = browser.new_context(color_scheme=request.param, locale="en-GB")
    yield visitor.new_page()
    visitor.close()


@pytest.fixture
def narrow(browser: Browser) -> Iterator[Page]:
    """A page 320 CSS pixels wide."""
    visitor = browser.new_context(viewport={"width": 320, "height": 640}, locale="en-GB")
    yield visitor.new_page()
    visitor.close()


def places(planned: PlannedWorkbench) -> list[str]:
    """Every kind of page there is about plans."""
    kept = [planned.keep(menu) for menu in ("made", "impossible", "begun")]
    form = f"{planned.address}plans/new?chosen:blackcurrant-vanilla-dome=yes"
    return [f"{planned.address}plans", form, *kept]


def shown(page: Page, place: str) -> Page:
    """A page with everything opened."""
    page.goto(place)
    page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true; })")
    return page


def test_the_accessibility_engine_finds_no_barrier(
    schemed: Page, planned: PlannedWorkbench, barriers: Barriers
) -> None:
    for place in places(planned):
        assert barriers(shown(schemed, place)) == []


def test_narrow_pages_scroll_down_only_and_every_target_is_hit(
    narrow: Page, planned: PlannedWorkbench
) -> None:
    for place in places(planned):
        shown(narrow, place)
        assert narrow.evaluate("document.documentElement.scrollWidth") <= 320
        assert narrow.evaluate(SMALL_TARGETS) == []
