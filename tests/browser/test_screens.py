"""Each page comes whole: light, in one piece that does not jump; its picture is kept.

`make pictures` takes these pictures into the documentation.
"""

from __future__ import annotations

import time
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, Request

from browser.conftest import SCREENS
from browser.every_page import PAGES
from browser.planned_workbench import PlannedWorkbench

PICTURES = SCREENS / "pages"
HEAVIEST = 400_000  # bytes of a page with all it loads, as they are before any compression
STILL = 0.005  # share of the window times share of its height that moved; 0.1 is called good
PATIENCE = 120_000.0  # ms, for a first computation on a busy machine
WATCH = """
window.moved = 0;
new PerformanceObserver((list) => {
  for (const entry of list.getEntries()) if (!entry.hadRecentInput) window.moved += entry.value;
}).observe({ type: 'layout-shift', buffered: true });
"""
DOME = "desserts/blackcurrant-vanilla-dome"
COMPUTED = {
    "checks": f"{DOME}/checks",
    "diagnosis": f"{DOME}/diagnosis?symptom=weeping",
    "temperatures": f"{DOME}/temperatures",
    "recipe page": f"{DOME}/page",
    "publish": f"{DOME}/publish",
}
PLANNED = {"plan": "", "bench": "/bench", "day sheet": "/sheet"}


class Loading:
    """A page that is watched while it comes."""

    def __init__(self, page: Page) -> None:
        self.page, self.bytes = page, 0
        page.add_init_script(WATCH)
        page.on("requestfinished", self._weigh)

    def _weigh(self, request: Request) -> None:
        answer = request.response()
        if answer is not None and answer.status == 200:
            self.bytes += len(answer.body())

    def come(self, address: str) -> None:
        """Open an address once it is worked out, and wait until nothing more is asked for."""
        deadline = time.monotonic() + PATIENCE / 1e3
        while self.page.request.get(address, timeout=PATIENCE).status == 202:
            assert time.monotonic() < deadline, f"{address} was never worked out"
            self.page.wait_for_timeout(500)
        self.page.goto(address, timeout=PATIENCE)
        self.page.wait_for_load_state("networkidle", timeout=PATIENCE)

    def moved(self) -> float:
        """How far things jumped, all jumps together."""
        return float(self.page.evaluate("window.moved"))

    def keep(self, name: str) -> None:
        """Keep a picture of what a visitor sees first."""
        PICTURES.mkdir(parents=True, exist_ok=True)
        path = PICTURES / f"{name.replace(', ', '-').replace(' ', '-')}.jpg"
        self.page.screenshot(path=path, type="jpeg", quality=72)


@pytest.fixture
def loading(browser: Browser) -> Iterator[Loading]:
    """A fresh visitor on a desk screen, who has nothing kept."""
    visitor = browser.new_context(viewport={"width": 1280, "height": 860}, locale="en-GB")
    yield Loading(visitor.new_page())
    visitor.close()


@pytest.mark.parametrize("name", [*PAGES, *COMPUTED])
def test_a_page_is_light_and_does_not_jump(name: str, loading: Loading, workbench: str) -> None:
    loading.come(workbench + (PAGES | COMPUTED)[name])
    loading.keep(name)
    assert loading.bytes <= HEAVIEST
    assert loading.moved() <= STILL


@pytest.mark.parametrize("name", PLANNED)
def test_a_plan_is_light_and_does_not_jump(
    name: str, loading: Loading, planned: PlannedWorkbench
) -> None:
    loading.come(planned.keep() + PLANNED[name])
    loading.keep(name)
    assert loading.bytes <= HEAVIEST
    assert loading.moved() <= STILL


def test_the_watch_sees_a_jump(loading: Loading, workbench: str) -> None:
    loading.come(workbench)
    loading.page.evaluate(
        """() => new Promise((done) => { const wedge = document.createElement('div');
        wedge.style.height = '300px'; document.getElementById('main').prepend(wedge);
        setTimeout(done, 300); })"""
    )
    assert loading.moved() > STILL
