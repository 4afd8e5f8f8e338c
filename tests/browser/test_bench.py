"""At the bench: one step after the other, timers, no network, no server, and nothing lost."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import datetime
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Route, expect

from agendas import AGENDA
from browser.planned_workbench import PlannedWorkbench

Keep = Callable[[Page, str], Path]
Barriers = Callable[[Page], list[str]]

EVENING = datetime.fromisoformat("2026-11-27T18:32:00+01:00")
COOK, FILL, FREEZE = (task.id for task in AGENDA.tasks[:3])
TABLET = {"width": 820, "height": 1180}
CONTROLLED = """
() => new Promise((settled) => {
  const look = () => navigator.serviceWorker.controller && settled(true);
  navigator.serviceWorker.addEventListener("controllerchange", look);
  look();
})
"""
SMALL_KNOBS = """
() => [...document.querySelectorAll('button, a')]
  .filter((e) => e.getClientRects().length)
  .filter((e) => e.offsetHeight < 64 || e.offsetWidth < 64)
  .map((e) => `${e.textContent.trim()} ${e.offsetWidth} x ${e.offsetHeight}`)
"""


@pytest.fixture
def tablet(browser: Browser) -> Iterator[BrowserContext]:
    """A tablet at the bench, touched with wet hands."""
    visitor = browser.new_context(
        viewport=TABLET,
        has_touch=True,
        locale="en-GB",
        timezone_id="Europe/Paris",
        service_workers="allow",
    )
    yield visitor
    visitor.close()


@pytest.fixture
def mortal(tmp_path: Path) -> Iterator[PlannedWorkbench]:
    """A workbench of the test's own, which it may kill."""
    running = PlannedWorkbench(home=tmp_path).start()
    yield running
    running.kill()


def at_bench(context: BrowserContext, plan: str, moment: datetime = EVENING) -> Page:
    """The bench of a plan at a moment, kept for when the network goes."""
    page = context.new_page()
    page.clock.install(time=moment)
    return opened(page, plan)


def opened(page: Page, plan: str) -> Page:
    """The bench, once it shows the plan and its worker has everything."""
    page.goto(f"{plan}/bench")
    expect(page.locator("#main")).to_be_visible()
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    page.evaluate(CONTROLLED)
    return page


def tap(page: Page, name: str) -> None:
    """Touch the big button, which has to say this by now; a second touch too soon is no answer."""
    knob = page.locator("#main-knob")
    expect(knob).to_have_text(name)
    knob.tap()
    page.clock.run_for(1000)


def connected(page: Page, words: str) -> None:
    """What the page says of its connection."""
    expect(page.locator("#connection")).to_contain_text(words, timeout=20_000)


def frozen_compote(page: Page) -> None:
    """The first three steps: cooked, filled, and left in the freezer at 19:01."""
    for name in ("Begin", "Done", "Begin", "Done", "Begin"):
        tap(page, name)
    page.clock.set_fixed_time(datetime.fromisoformat("2026-11-27T19:01:00+01:00"))
    tap(page, "Hands off: it waits")


def test_french_is_spoken_without_the_network_too(
    browser: Browser, planned: PlannedWorkbench
) -> None:
    visitor = browser.new_context(
        viewport=TABLET,
        has_touch=True,
        locale="fr-FR",
        timezone_id="Europe/Paris",
        service_workers="allow",
    )
    page = at_bench(visitor, planned.keep())
    visitor.set_offline(True)
    page.reload()
    expect(page.locator("#now-when")).to_contain_text("Maintenant : prévu pour 18:30")
    tap(page, "Commencer")
    expect(page.locator("#connection")).to_contain_text("Pas de connexion")
    expect(page.locator("#connection")).to_contain_text("1 saisie attend sur cet appareil.")
    expect(page.locator("#now-text")).to_have_attribute("lang", "en")
    visitor.close()


def test_steps_follow_one_another_by_touch(
    tablet: BrowserContext, planned: PlannedWorkbench, keep_screen: Keep
) -> None:
    plan = planned.keep()
    page = at_bench(tablet, plan)
    expect(page.get_by_role("heading", name="Pear compote").first).to_be_visible()
    expect(page.locator("#now-text")).to_have_text(
        "Cook the pear, the sugar and the pectin to 84 °C, stirring."
    )
    expect(page.locator("#now-amounts")).to_contain_text("5.2 g pectin NH")
    expect(page.locator("#next")).to_contain_text("Fill 8 insert cavities with 36 g each.")
    keep_screen(page, "bench-begin")
    tap(page, "Begin")
    expect(page.locator("#now-when")).to_contain_text("under way since 18:32")
    tap(page, "Done")
    expect(page.locator("#now-text")).to_contain_text("Fill 8 insert cavities")
    connected(page, "Everything is kept")
    assert [(e.what, e.task) for e in planned.told(plan)] == [("begun", COOK), ("done", COOK)]


def test_a_second_touch_too_soon_is_no_answer(
    tablet: BrowserContext, planned: PlannedWorkbench
) -> None:
    page = at_bench(tablet, planned.keep())
    knob = page.locator("#main-knob")
    page.clock.pause_at(datetime.fromisoformat("2026-11-27T18:33:00+01:00"))
    knob.tap()
    expect(knob).to_have_text("Done")
    knob.tap()
    expect(page.locator("#now-when")).to_contain_text("under way")


def test_a_wait_runs_as_a_timer_and_says_when_it_is_over(
    tablet: BrowserContext, planned: PlannedWorkbench, keep_screen: Keep
) -> None:
    page = at_bench(tablet, planned.keep())
    for name in ("Begin", "Done", "Begin", "Done", "Begin", "Hands off: it waits"):
        tap(page, name)
    for name in ("Begin", "Done", "Begin", "Hands off: it waits"):
        tap(page, name)
    timers = page.locator("#timers li")
    expect(timers).to_have_count(2)
    expect(timers.first).to_contain_text("Almond base, round 1 of 2")
    keep_screen(page, "bench-timers")
    page.clock.fast_forward("00:12:00")
    page.clock.fast_forward("00:02:00")
    expect(timers.first).to_contain_text("Over")
    expect(page.locator("#said")).to_have_text("Timer over: Almond base, round 1 of 2.")
    expect(page.locator("#now-when")).to_contain_text("its wait is over")
    keep_screen(page, "bench-over")
    page.get_by_role("button", name="Heard: Almond base").tap()
    expect(page.get_by_role("button", name="Heard: Almond base")).to_have_count(0)
    tap(page, "Done")
    expect(timers).to_have_count(1)


def test_sound_is_turned_on_by_a_touch(tablet: BrowserContext, planned: PlannedWorkbench) -> None:
    page = at_bench(tablet, planned.keep())
    page.get_by_role("button", name="Sound is off").tap()
    expect(page.get_by_role("button", name="Sound is on")).to_have_attribute("aria-pressed", "true")
    page.get_by_role("button", name="Sound is on").tap()
    expect(page.get_by_role("button", name="Sound is off")).to_be_visible()


def test_the_keyboard_does_everything(tablet: BrowserContext, planned: PlannedWorkbench) -> None:
    plan = planned.keep()
    page = at_bench(tablet, plan)
    page.locator("#main-knob").focus()
    page.keyboard.press("Enter")
    expect(page.locator("#main-knob")).to_have_text("Done")
    expect(page.locator("#main-knob")).to_be_focused()
    page.keyboard.press("Tab")
    expect(page.locator("#problem-knob")).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.get_by_role("dialog", name="What is wrong?")).to_be_visible()
    page.keyboard.press("Escape")
    expect(page.locator("#problem-knob")).to_be_focused()
    page.keyboard.press("Enter")
    page.keyboard.press("Enter")
    expect(page.locator("#now-when")).to_have_text("Again: it failed before")
    connected(page, "Everything is kept")
    assert [entry.what for entry in planned.told(plan)] == ["begun", "again"]


def test_late_means_later_before_a_step_and_longer_within_it(
    tablet: BrowserContext, planned: PlannedWorkbench
) -> None:
    plan = planned.keep()
    page = at_bench(tablet, plan)
    page.clock.pause_at(datetime.fromisoformat("2026-11-27T18:40:00+01:00"))
    page.get_by_role("button", name="+10 min", exact=True).tap()
    expect(page.locator("#now-when")).to_have_text("You begin again at 18:50")
    tap(page, "Begin")
    page.get_by_role("button", name="+5 min", exact=True).tap()
    expect(page.locator("#now-when")).to_contain_text("25 min in all")
    connected(page, "Everything is kept")
    told = [(entry.what, entry.minutes) for entry in planned.told(plan)]
    assert told == [("held", 10), ("begun", 0), ("takes", 25)]


def test_a_slip_is_taken_back(tablet: BrowserContext, planned: PlannedWorkbench) -> None:
    page = at_bench(tablet, planned.keep())
    page.locator("#done-knob").tap()
    expect(page.locator("#now-text")).to_contain_text("Fill 8 insert cavities")
    page.get_by_role("button", name="Take it back").tap()
    expect(page.locator("#now-text")).to_contain_text("Cook the pear")


def test_the_bench_goes_on_without_the_network_and_tells_it_once_after(
    tablet: BrowserContext, planned: PlannedWorkbench
) -> None:
    plan = planned.keep()
    page = at_bench(tablet, plan)
    tablet.set_offline(True)
    frozen_compote(page)
    connected(page, "No connection")
    connected(page, "6 entries wait on this device")
    expect(page.locator("#timers")).to_contain_text("Ready at 21:09")
    page.reload()
    expect(page.locator("#timers")).to_contain_text("Ready at 21:09")
    expect(page.locator("#now-name")).to_have_text("Almond base")
    connected(page, "6 entries wait on this device")
    tablet.set_offline(False)
    page.evaluate("window.dispatchEvent(new Event('online'))")
    connected(page, "Connected. Everything is kept.")
    told = [(entry.what, entry.task) for entry in planned.told(plan)]
    done = [("begun", COOK), ("done", COOK), ("begun", FILL), ("done", FILL)]
    assert told == [*done, ("begun", FREEZE), ("left", FREEZE)]
    page.reload()
    expect(page.locator("#timers")).to_contain_text("Ready at 21:09")
    connected(page, "Connected. Everything is kept.")
    assert len(planned.told(plan)) == 6


def test_an_answer_that_was_lost_on_the_way_makes_no_second_entry(
    tablet: BrowserContext, planned: PlannedWorkbench
) -> None:
    plan = planned.keep()
    page = at_bench(tablet, plan)

    def lose(route: Route) -> None:
        route.fetch()
        route.abort()

    page.route("**/bench/entries", lose)
    with page.expect_event("requestfailed"):
        tap(page, "Begin")
    connected(page, "1 entry waits on this device")
    assert [entry.what for entry in planned.told(plan)] == ["begun"]
    page.unroute("**/bench/entries")
    page.evaluate("window.dispatchEvent(new Event('online'))")
    connected(page, "Everything is kept")
    assert [entry.what for entry in planned.told(plan)] == ["begun"]


def test_the_server_may_be_killed_and_come_again(
    tablet: BrowserContext, mortal: PlannedWorkbench
) -> None:
    plan = mortal.keep()
    page = at_bench(tablet, plan)
    tap(page, "Begin")
    connected(page, "Everything is kept")
    mortal.kill()
    tap(page, "Done")
    connected(page, "No connection")
    page.reload()
    expect(page.locator("#now-text")).to_contain_text("Fill 8 insert cavities")
    connected(page, "1 entry waits on this device")
    mortal.start()
    page.evaluate("window.dispatchEvent(new Event('online'))")
    connected(page, "Connected. Everything is kept.")
    assert [entry.what for entry in mortal.told(plan)] == ["begun", "done"]


def test_the_worker_gives_no_other_page(tablet: BrowserContext, planned: PlannedWorkbench) -> None:
    plan = planned.keep()
    page = at_bench(tablet, plan)
    scope = page.evaluate("navigator.serviceWorker.ready.then((found) => found.scope)")
    assert scope == f"{plan}/bench"
    for other in (plan, f"{planned.address}plans", planned.address):
        page.goto(other)
        worker = page.evaluate("navigator.serviceWorker.controller?.scriptURL ?? ''")
        assert not worker.startswith(plan)


def test_a_plan_made_anew_comes_to_the_bench(
    tablet: BrowserContext, planned: PlannedWorkbench
) -> None:
    plan = planned.keep()
    page = at_bench(tablet, plan)
    tap(page, "Begin")
    tap(page, "Done")
    connected(page, "Everything is kept")
    desk = tablet.new_page()
    desk.goto(plan)
    desk.get_by_role("button", name="Plan the rest anew").click()
    desk.get_by_role("button", name="Take this plan").click()
    expect(desk.get_by_text("✓ done")).to_be_visible()
    page.evaluate("window.dispatchEvent(new Event('online'))")
    expect(page.locator("#said")).to_have_text("The plan was made anew.")
    expect(page.locator("#now-when")).to_contain_text("19:20")
    expect(page.locator("#now-text")).to_contain_text("Fill 8 insert cavities")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_accessibility_engine_finds_no_barrier(
    browser: Browser, planned: PlannedWorkbench, barriers: Barriers, scheme: str, keep_screen: Keep
) -> None:
    visitor = browser.new_context(
        viewport=TABLET,
        has_touch=True,
        locale="en-GB",
        color_scheme=scheme,
        service_workers="allow",
    )
    page = at_bench(visitor, planned.keep())
    assert barriers(page) == []
    frozen_compote(page)
    page.clock.set_fixed_time(datetime.fromisoformat("2026-11-27T21:10:00+01:00"))
    page.clock.run_for(2000)
    expect(page.locator("#timers")).to_contain_text("Over")
    assert barriers(page) == []
    keep_screen(page, f"bench-{scheme}")
    page.locator("#problem-knob").tap()
    assert barriers(page) == []
    visitor.close()


@pytest.mark.parametrize("width", [320, 820, 1280])
def test_knobs_are_for_wet_hands_and_nothing_scrolls_sideways(
    browser: Browser, planned: PlannedWorkbench, width: int
) -> None:
    visitor = browser.new_context(
        viewport={"width": width, "height": 800},
        has_touch=True,
        locale="en-GB",
        service_workers="allow",
    )
    page = at_bench(visitor, planned.keep())
    frozen_compote(page)
    expect(page.locator("#timers li")).to_have_count(1)
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    assert page.evaluate(SMALL_KNOBS) == []
    visitor.close()


def test_nothing_moves_for_those_who_want_it_calm(
    browser: Browser, planned: PlannedWorkbench
) -> None:
    visitor = browser.new_context(reduced_motion="reduce", service_workers="allow")
    page = at_bench(visitor, planned.keep())
    moving = page.evaluate(
        """() => [...document.querySelectorAll('*')].filter((each) =>
        getComputedStyle(each).transitionDuration !== '0s'
        || getComputedStyle(each).animationName !== 'none').length"""
    )
    assert moving == 0
    visitor.close()
