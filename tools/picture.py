"""Takes the picture of the README: the demo dome on the workbench, as a visitor sees it."""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from pathlib import Path

from playwright.sync_api import sync_playwright

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT / "tests"))
from browser.chromium import arguments, executable  # noqa: E402

COMMAND = str(Path(sys.executable).parent / "entremetry")
PICTURE = ROOT / "docs" / "images" / "dome.png"
PAGE = "desserts/blackcurrant-vanilla-dome"


def take(address: str) -> None:
    """Open the dessert page and keep what stands above the fold."""
    program = executable()
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=program, args=arguments())
        page = chromium.new_page(viewport={"width": 1280, "height": 860}, device_scale_factor=1.25)
        page.goto(address + PAGE)
        page.evaluate("document.fonts.ready")
        page.get_by_text("checks are fine").wait_for()
        page.screenshot(path=PICTURE)
        chromium.close()


def main() -> None:
    """Serve from an empty data folder, take the picture, end the server."""
    with tempfile.TemporaryDirectory() as home:
        environment = {**os.environ, "ENTREMETRY_HOME": home, "PYTHONUNBUFFERED": "1"}
        command = [COMMAND, "serve", "--port", "0", "--no-browser"]
        with subprocess.Popen(
            command, env=environment, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True
        ) as server:
            try:
                assert server.stdout is not None
                take(server.stdout.readline().strip())
            finally:
                server.terminate()
                server.communicate(timeout=10)
    print(f"wrote {PICTURE.relative_to(ROOT)}")


if __name__ == "__main__":
    main()
