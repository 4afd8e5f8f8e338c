"""What is committed names no machine, no registry and no private path."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
LOCKED = frozenset({"uv.lock"})
# Cut in two here, so that this file does not hold what it looks for.
FORBIDDEN = {
    "a path of one machine": r"(?<![\w.$}])/(?:wor" r"k|tm" r"p|roo" r"t|hom" r"e)/",
    "the host of a package registry": r"pypi" r"\.org|python" r"hosted|npm" r"js",
    "a mark left by a merge": r"^(?:<{7}|>{7}) ",
    "an unfinished place": r"TO" r"DO|FIX" r"ME|XX" r"X|NotImplemented" r"Error",
    "a test that does not run": r"pytest\.(?:mark\.)?(?:sk" r"ip|xf" r"ail|importorsk" r"ip)",
}


def committed() -> list[Path]:
    """Files that git knows or would add."""
    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    ).stdout.splitlines()
    return [ROOT / name for name in listed if name not in LOCKED and (ROOT / name).is_file()]


def text_of(path: Path) -> str:
    """Text of a file; empty for one that holds no text, and for vendored front-end files."""
    if "vendor" in path.parts:
        return ""
    raw = path.read_bytes()
    return "" if b"\0" in raw[:4096] else raw.decode("utf-8", errors="replace")


@pytest.mark.parametrize("thing", FORBIDDEN)
def test_no_file_holds(thing: str) -> None:
    pattern = re.compile(FORBIDDEN[thing], re.MULTILINE)
    found = [
        f"{path.relative_to(ROOT)}: {match.group()!r}"
        for path in committed()
        for match in pattern.finditer(text_of(path))
    ]
    assert not found


def test_every_module_says_what_it_is_for() -> None:
    """Tests are left out: their names make the claim."""
    modules = [p for p in committed() if p.suffix == ".py" and ROOT / "tests" not in p.parents]
    silent = [
        str(path.relative_to(ROOT))
        for path in modules
        if (text := text_of(path).strip()) and not text.startswith(('"""', 'r"""'))
    ]
    assert not silent
