"""No page puts a barrier before anyone: contrast, names, targets, narrow screens, both schemes."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import Browser, Page

from browser.every_page import PAGES

Barriers = Callable[[Page], list[str]]

TEXT_SPACING = """
* { line-height: 1.5 !important; }
* { letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
p { margin-bottom: 2em !important; }
"""
SMALL_TARGETS = """
() => [...document.querySelectorAll('a, button, input, select, textarea, summary')]
  .filter((e) => e.getClientRects().length && e.type !== 'hidden' && e.type !== 'radio')
  .filter((e) => !e.closest('p, li > p, dd, .skip') && !e.classList.contains('skip'))
  .filter((e) => e.getBoundingClientRect().height < 43.5)
  .map((e) => `${e.tagName} ${e.textContent.trim().slice(0, 30)} ${e.offsetHeight}`)
"""


@pytest.fixture(params=["light", "dark"])
def schemed_page(request: pytest.FixtureRequest, browser: Browser) -> Iterator[Page]:
    """A page in a light or a dark scheme."""
    visitor = browser.new_context(color_scheme=request.param, locale="en-GB")
    yield visitor.new_page()
    visitor.close()


@pytest.fixture
def narrow_page(browser: Browser) -> Iterator[Page]:
    """A page 320 CSS pixels wide."""
    visitor = browser.new_context(viewport={"width": 320, "height": 640}, locale="en-GB")
    yield visitor.new_page()
    visitor.close()


def all_opened(page: Page) -> Page:
    """The page with everything opened that can be opened."""
    page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true; })")
    return page


@pytest.mark.parametrize("name", PAGES)
def test_the_accessibility_engine_finds_no_barrier(
    name: str, schemed_page: Page, workbench: str, barriers: Barriers
) -> None:
    schemed_page.goto(workbench + PAGES[name])
    assert barriers(all_opened(schemed_page)) == []


@pytest.mark.parametrize("name", PAGES)
def test_a_narrow_page_is_read_and_touched(name: str, narrow_page: Page, workbench: str) -> None:
    """Nothing scrolls sideways, a wet knuckle hits every target, wider spacing loses nothing.

    320 pixels are a desk screen of 1280 at 400 %, and 640 the same at 200 %.
    """
    narrow_page.goto(workbench + PAGES[name])
    narrow_page.set_viewport_size({"width": 640, "height": 640})
    assert narrow_page.evaluate("document.documentElement.scrollWidth") <= 640
    narrow_page.set_viewport_size({"width": 320, "height": 640})
    assert narrow_page.evaluate("document.documentElement.scrollWidth") <= 320
    assert all_opened(narrow_page).evaluate(SMALL_TARGETS) == []
    assert narrow_page.evaluate("document.documentElement.scrollWidth") <= 320
    narrow_page.evaluate(
        """(rules) => { const sheet = new CSSStyleSheet(); sheet.replaceSync(rules);
        document.adoptedStyleSheets = [sheet]; }""",
        TEXT_SPACING,
    )
    assert narrow_page.evaluate("document.documentElement.scrollWidth") <= 320


def test_the_measures_above_see_a_barrier(page: Page, barriers: Barriers) -> None:
    page.evaluate(
        """() => { const row = document.createElement('div'); row.style.display = 'flex';
        for (const words of ['pale words', 'more pale words']) {
          const button = document.createElement('button'); button.textContent = words;
          Object.assign(button.style, { color: '#ddd', background: '#eee', height: '12px',
            width: '12px', padding: '0', border: '0', overflow: 'hidden' });
          row.append(button); }
        document.getElementById('main').append(row); }"""
    )
    found = "\n".join(barriers(page))
    assert "color-contrast" in found and "target-size" in found
    assert page.evaluate(SMALL_TARGETS) != []


def test_text_is_large_enough_to_read_at_arms_length(page: Page) -> None:
    size = page.evaluate("parseFloat(getComputedStyle(document.body).fontSize)")
    assert size >= 18


def test_reduced_motion_is_respected(browser: Browser, workbench: str) -> None:
    visitor = browser.new_context(reduced_motion="reduce")
    page = visitor.new_page()
    page.goto(workbench)
    moving = page.evaluate(
        """() => [...document.querySelectorAll('*')].filter((each) =>
        getComputedStyle(each).transitionDuration !== '0s'
        || getComputedStyle(each).animationName !== 'none').length"""
    )
    visitor.close()
    assert moving == 0


def test_every_stop_of_the_keyboard_can_be_seen(page: Page, workbench: str) -> None:
    page.goto(f"{workbench}desserts/blackcurrant-vanilla-dome")
    for _ in range(24):
        page.keyboard.press("Tab")
        seen = page.evaluate(
            """() => { const e = document.activeElement; const ring = e.closest('.tile') || e;
            const box = e.getBoundingClientRect(); const style = getComputedStyle(ring);
            return [e.textContent.trim().slice(0, 40), parseFloat(style.outlineWidth) >= 2
              && style.outlineStyle !== 'none' && box.bottom > 0 && box.top < innerHeight]; }"""
        )
        assert seen[1], seen[0]


def test_skip_link_leads_past_the_menu(page: Page) -> None:
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent") == "Skip to the content"
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "main"
