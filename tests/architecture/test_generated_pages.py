"""The generated pages say what the program says today."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]


def test_no_generated_page_is_stale() -> None:
    done = subprocess.run(
        [sys.executable, "tools/reference", "--check"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
