"""A real workbench on a free loopback port, and a real Chromium that opens it."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from browser.chromium import arguments, executable
from browser.planned_workbench import PlannedWorkbench

ROOT = Path(__file__).parents[2]
GIVEN_UP = ("htmx:sendAbort", "htmx:afterRequest")
"""A request given up for a newer one, or as the page is left, which is no fault; of one that
fails, the console says `htmx:sendError` or `htmx:responseError` as well."""
SCREENS = ROOT / ".screens"
COMMAND = Path(sys.executable).parent / "entremetry"


@pytest.fixture(scope="session")
def home(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A data folder of the tests' own, empty at the start."""
    return tmp_path_factory.mktemp("entremetry-home")


@pytest.fixture(scope="session")
def workbench(home: Path) -> Iterator[str]:
    """Address of a running workbench, such as http://127.0.0.1:40123/."""
    command = [str(COMMAND), "serve", "--port", "0", "--no-browser"]
    environment = {**os.environ, "ENTREMETRY_HOME": str(home), "PYTHONUNBUFFERED": "1"}
    log = home / "server.log"
    with (
        log.open("w", encoding="utf-8") as errors,
        subprocess.Popen(
            command, env=environment, stdout=subprocess.PIPE, stderr=errors, text=True
        ) as server,
    ):
        try:
            yield address_printed_by(server, log)
        finally:
            server.terminate()
            server.communicate(timeout=10)


def address_printed_by(server: subprocess.Popen[str], log: Path) -> str:
    """First line that the server prints: it prints it when it listens."""
    assert server.stdout is not None
    line = server.stdout.readline().strip()
    if not line.startswith("http://127.0.0.1:"):
        pytest.fail(f"the workbench said {line!r} and:\n{log.read_text(encoding='utf-8')}")
    return line


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """One Chromium for a file of tests, that keeps no page unless a test allows service workers.

    Not for the whole run: Playwright keeps an event loop running as long as it is open, and tests
    elsewhere that start one of their own would then fail in the same worker.
    """
    program = executable()
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=program, args=arguments())
        chromium.new_context = partial(chromium.new_context, service_workers="block")
        yield chromium
        chromium.close()


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    """A fresh visitor, who reads British English on a desk screen."""
    visitor = browser.new_context(viewport={"width": 1280, "height": 900}, locale="en-GB")
    yield visitor
    visitor.close()


@pytest.fixture
def touch_context(browser: Browser) -> Iterator[BrowserContext]:
    """A fresh visitor with a telephone at the bench."""
    visitor = browser.new_context(
        viewport={"width": 390, "height": 844}, has_touch=True, is_mobile=True, locale="en-GB"
    )
    yield visitor
    visitor.close()


@pytest.fixture
def page(context: BrowserContext, workbench: str) -> Iterator[Page]:
    """A page of the visitor; an error in its console, or a request elsewhere, fails the test."""
    yield from watched(context.new_page(), workbench)


@pytest.fixture
def touch_page(touch_context: BrowserContext, workbench: str) -> Iterator[Page]:
    """A page on the telephone, watched like the other one."""
    yield from watched(touch_context.new_page(), workbench)


def watched(page: Page, workbench: str) -> Iterator[Page]:
    """Yield the page, then fail if it complained or asked another host for anything."""
    complaints: list[str] = []
    page.on("pageerror", lambda error: complaints.append(f"script: {error}"))
    page.on(
        "console",
        lambda message: (
            complaints.append(f"console: {message.text}")
            if message.type == "error" and not message.text.startswith(GIVEN_UP)
            else None
        ),
    )
    page.on(
        "request",
        lambda request: (
            None
            if request.url.startswith((workbench, "data:", "blob:", "about:"))
            else complaints.append(f"asked {request.url}")
        ),
    )
    page.goto(workbench)
    yield page
    assert not complaints, "\n".join(complaints)


@pytest.fixture
def keep_screen() -> Callable[[Page, str], Path]:
    """Function that keeps a picture of the whole page under .screens/ by name."""

    def keep(page: Page, name: str) -> Path:
        SCREENS.mkdir(exist_ok=True)
        path = SCREENS / f"{name}.png"
        page.screenshot(path=path, full_page=True)
        return path

    return keep


@pytest.fixture
def barriers() -> Callable[[Page], list[str]]:
    """Function that lists what the accessibility engine finds, target sizes included."""

    def found(page: Page) -> list[str]:
        options: dict[str, Any] = {
            "rules": {"target-size": {"enabled": True}},
            "resultTypes": ["violations"],  # where each sound element stands takes long to tell
        }
        violations = Axe().run(page, options=options).response["violations"]
        return [
            f"{violation['id']}: {violation['help']}: {node['html'][:120]}"
            for violation in violations
            for node in violation["nodes"]
        ]

    return found


@pytest.fixture(scope="module")
def planned(tmp_path_factory: pytest.TempPathFactory) -> Iterator[PlannedWorkbench]:
    """A workbench whose plans are written by hand."""
    running = PlannedWorkbench(home=tmp_path_factory.mktemp("planned-home")).start()
    yield running
    running.kill()
