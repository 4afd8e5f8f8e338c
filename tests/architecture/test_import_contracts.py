"""Who may import whom, as pyproject.toml draws it."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]


def test_every_import_contract_is_kept() -> None:
    command = Path(sys.executable).parent / "lint-imports"
    done = subprocess.run(
        [command, "--no-logo", "--no-cache"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr
