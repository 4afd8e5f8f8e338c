"""From a dessert to how long it freezes, where the cold is, and when; by mouse, key and touch."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

Keep = Callable[[Page, str], Path]
Barriers = Callable[[Page], list[str]]

DOME = "desserts/blackcurrant-vanilla-dome"
FREEZING = f"{DOME}/temperatures/assembly-2"
SMALL_TARGETS = """
() => [...document.querySelectorAll('main a, main button, main input, main summary')]
  .filter((e) => e.getClientRects().length && !e.closest('p, li > p'))
  .filter((e) => e.getBoundingClientRect().height < 43.5)
  .map((e) => e.outerHTML.slice(0, 80))
"""
PATIENCE = 120_000.0  # ms, for a first computation on a busy machine


def answered(page: Page, address: str) -> Page:
    """The page, once its answer is there."""
    page.goto(address)
    expect(verdict(page)).to_be_visible(timeout=PATIENCE)
    return page


def verdict(page: Page) -> Locator:
    """The one big line."""
    return page.get_by_role("heading", name=re.compile(r"^About .*(h|min)"))


def hours(words: str) -> float:
    """Hours in words such as '4 h 50 min'."""
    amounts = re.findall(r"(\d+)\s(h|min)", words)
    return sum(float(amount) / (1.0 if unit == "h" else 60.0) for amount, unit in amounts)


def shown_moment(page: Page) -> str:
    """Words of the section that is seen."""
    (frame,) = [each for each in page.locator(".frame").all() if each.is_visible()]
    return frame.inner_text().splitlines()[0]


def test_a_dessert_leads_to_the_time_its_freezing_takes(page: Page, workbench: str) -> None:
    page.goto(workbench + DOME)
    page.get_by_role("link", name="Temperatures").click()
    expect(verdict(page)).to_be_visible(timeout=PATIENCE)
    best = hours(verdict(page).inner_text())
    low, high = (
        hours(words)
        for words in re.findall(
            r"[\d]+\s(?:h|min)(?:\s\d+\smin)?",
            page.get_by_text(re.compile(r"^between")).inner_text(),
        )
    )
    # Common practice, no source: a dome for one needs at least four hours, better a night.
    assert low < best < high
    assert 2.0 < best < 12.0
    expect(page.get_by_role("status")).to_contain_text("between")


def test_the_slider_moves_through_time(page: Page, workbench: str, keep_screen: Keep) -> None:
    answered(page, workbench + FREEZING)
    keep_screen(page, "temperatures-wide")
    slider = page.get_by_role("slider", name="Move through time")
    slider.focus()
    page.keyboard.press("Home")
    first = shown_moment(page)
    page.keyboard.press("ArrowRight")
    second = shown_moment(page)
    page.keyboard.press("End")
    last = shown_moment(page)
    assert hours(first) < hours(second) < hours(last)
    expect(slider).to_have_attribute("aria-valuetext", re.compile(r"^After .*\s°C"))
    expect(page.get_by_role("button", name="Later")).to_be_disabled()
    page.get_by_role("button", name="Earlier").click()
    assert hours(shown_moment(page)) < hours(last)


def test_touch_moves_through_time(touch_page: Page, workbench: str) -> None:
    answered(touch_page, workbench + FREEZING)
    before = shown_moment(touch_page)
    touch_page.get_by_role("button", name="Later").tap()
    assert hours(shown_moment(touch_page)) > hours(before)


def test_another_step_is_a_link_away(page: Page, workbench: str) -> None:
    answered(page, workbench + FREEZING)
    page.get_by_role("link", name=re.compile("^Thaw")).click()
    expect(page.get_by_text("Thaw until")).to_be_visible()
    expect(verdict(page)).to_be_visible(timeout=PATIENCE)
    way = page.get_by_role("region", name="On the way")
    expect(way).to_contain_text("no ice left in Blackcurrant mousse")


def test_numbers_and_their_reasons_open(page: Page, workbench: str) -> None:
    answered(page, workbench + FREEZING)
    page.get_by_text("The same in numbers").click()
    table = page.get_by_role("region", name="Temperatures at even times")
    expect(table.get_by_role("row", name=re.compile("done"))).to_contain_text("°C")
    page.get_by_text("Where does this number come from?").click()
    expect(page.get_by_text("heat conduction with freezing", exact=False)).to_be_visible()


def test_without_scripts_some_moments_are_shown(
    browser: Browser, page: Page, workbench: str
) -> None:
    answered(page, workbench + FREEZING)
    visitor = browser.new_context(java_script_enabled=False, locale="en-GB")
    bare = visitor.new_page()
    answered(bare, workbench + FREEZING)
    moments = [frame for frame in bare.locator(".frame").all() if frame.is_visible()]
    assert len(moments) == 6
    expect(bare.get_by_role("slider")).to_have_count(0)
    visitor.close()


def test_print_shows_moments_and_no_controls(page: Page, workbench: str) -> None:
    answered(page, workbench + FREEZING)
    page.emulate_media(media="print")
    expect(page.get_by_role("slider")).to_have_count(0)
    assert len([frame for frame in page.locator(".frame").all() if frame.is_visible()]) == 6
    expect(verdict(page)).to_be_visible()


def test_a_step_that_is_not_there_says_so(page: Page, workbench: str) -> None:
    reply = page.request.get(f"{workbench}{DOME}/temperatures/assembly-77")
    assert reply.status == 404


@pytest.mark.parametrize(
    ("name", "width", "scheme"),
    [
        ("wide", 1280, "light"),
        ("dark", 1280, "dark"),
        ("tablet", 820, "light"),
        ("narrow", 320, "light"),
    ],
)
def test_no_barrier_and_no_sideways_scrolling(
    name: str,
    width: int,
    scheme: str,
    browser: Browser,
    workbench: str,
    barriers: Barriers,
    keep_screen: Keep,
) -> None:
    visitor = browser.new_context(
        viewport={"width": width, "height": 900},
        color_scheme=scheme,
        locale="en-GB",  # type: ignore[arg-type]
    )
    page = answered(visitor.new_page(), workbench + FREEZING)
    keep_screen(page, f"temperatures-{name}")
    page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true; })")
    assert barriers(page) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    small = page.evaluate(SMALL_TARGETS)
    assert small == []
    visitor.close()
