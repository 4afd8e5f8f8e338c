"""Importing the room loads no database library."""

from __future__ import annotations

import subprocess
import sys


def test_room_is_light_to_import() -> None:
    code = (
        "import sys, entremetry.store\n"
        "heavy = {'sqlalchemy', 'alembic', 'platformdirs', 'numpy'} & set(sys.modules)\n"
        "print(sorted(heavy))"
    )
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "[]"
