"""Starting is light: heavy libraries are loaded by the use case that needs them."""

from __future__ import annotations

import subprocess
import sys

import pytest

HEAVY = frozenset(
    {
        "alembic",
        "jinja2",
        "matplotlib",
        "numba",
        "pydantic",
        "ruamel",
        "scipy",
        "sqlalchemy",
        "starlette",
        "svgelements",
        "trimesh",
        "uvicorn",
    }
)
LIGHT_ROOMS = ("sources", "quantities", "documents", "larder", "shapes", "physics", "formula")
HELP = """
import sys
from entremetry.cli.app import main
sys.argv = ["entremetry", "--help"]
try:
    main()
except SystemExit:
    pass
"""


def loaded_by(code: str) -> set[str]:
    """Top names of the modules that a fresh Python has loaded after running `code`."""
    shown = "import sys; print(*{name.partition('.')[0] for name in sys.modules}, file=sys.stderr)"
    done = subprocess.run(
        [sys.executable, "-c", f"{code}\n{shown}"], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    return set(done.stderr.split())


def test_help_loads_no_heavy_library() -> None:
    assert not loaded_by(HELP) & (HEAVY | {"numpy"})


def test_the_commands_load_no_heavy_library() -> None:
    assert not loaded_by("import entremetry.cli.app") & (HEAVY | {"numpy"})


@pytest.mark.parametrize("room", LIGHT_ROOMS)
def test_a_light_room_loads_no_heavy_library(room: str) -> None:
    assert not loaded_by(f"import entremetry.{room}") & HEAVY


def test_the_measure_sees_a_heavy_library() -> None:
    assert {"scipy", "numpy"} <= loaded_by("import scipy")
