"""Finds the Chromium that drives the browser tests; run as a script, it installs a missing one."""

from __future__ import annotations

import os
import platform
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

COMMANDS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
MAC_PROGRAMS = (
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
)
DEBIAN_PACKAGES = ("chromium", "fonts-dejavu-core")


def executable() -> str | None:
    """Path of the first Chromium or Chrome that answers, if there is one."""
    return next((path for path in candidates() if answers(path)), None)


def candidates() -> Iterator[str]:
    """Yield where a browser may be: on the path, among macOS programs, in Playwright's folder."""
    yield from filter(None, map(shutil.which, COMMANDS))
    yield from MAC_PROGRAMS
    yield playwright_executable()


def playwright_executable() -> str:
    """Where Playwright keeps the build it installs itself, whether it is there or not."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        return playwright.chromium.executable_path


def answers(path: str) -> bool:
    """Tell whether the program starts; some systems ship a command that only says 'not here'."""
    if not Path(path).is_file():
        return False
    asked = subprocess.run([path, "--version"], capture_output=True, check=False)
    return asked.returncode == 0


def arguments() -> list[str]:
    """Command-line arguments that keep the browser quiet and, for root, let it start at all."""
    quiet = [
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--no-first-run",
    ]
    return [*quiet, "--no-sandbox"] if is_root() else quiet


def is_root() -> bool:
    """Tell whether this process may install packages as it is."""
    return hasattr(os, "geteuid") and os.geteuid() == 0


def install() -> None:
    """Install a browser the way this system does it best."""
    if is_debian() and install_with_apt():
        return
    playwright = [sys.executable, "-m", "playwright", "install"]
    if platform.system() == "Linux" and may_be_root():
        playwright.append("--with-deps")
    run([*playwright, "chromium"])


def is_debian() -> bool:
    """Tell whether this is Debian itself: Ubuntu's package of that name needs a snap service."""
    release = Path("/etc/os-release")
    return release.is_file() and "ID=debian" in release.read_text(encoding="utf-8").splitlines()


def install_with_apt() -> bool:
    """Install Debian's Chromium and a font; tell whether that worked."""
    if not may_be_root():
        return False
    before = [] if is_root() else ["sudo", "-n"]
    environment = [*before, "env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "-qq"]
    return run([*environment, "update"]) and run(
        [*environment, "install", "--no-install-recommends", "-y", *DEBIAN_PACKAGES]
    )


def may_be_root() -> bool:
    """Tell whether packages can be installed without asking for a password."""
    return is_root() or (shutil.which("sudo") is not None and run(["sudo", "-n", "true"]))


def run(command: list[str]) -> bool:
    """Run a command without standard input; what it prints goes to standard error."""
    done = subprocess.run(command, stdin=subprocess.DEVNULL, stdout=sys.stderr, check=False)
    return done.returncode == 0


def main() -> None:
    """Make sure that a browser is there."""
    if executable() is None:
        sys.stderr.write("No Chromium found; installing one for the browser tests.\n")
        install()
    if executable() is None:
        sys.exit("No Chromium or Chrome could be found or installed; install one and try again.")


if __name__ == "__main__":
    main()
