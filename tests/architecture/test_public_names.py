"""What each room offers to the others is pinned in public_names.toml; change it on purpose."""

from __future__ import annotations

import ast
import importlib
import tomllib
from pathlib import Path

import pytest

SOURCE_TREE = Path(__file__).parents[2] / "src" / "entremetry"
PINNED: dict[str, list[str]] = tomllib.loads(
    (Path(__file__).parent / "public_names.toml").read_text(encoding="utf-8")
)


def rooms() -> list[str]:
    """Folders directly under the package."""
    return sorted(
        folder.name
        for folder in SOURCE_TREE.iterdir()
        if folder.is_dir() and any(folder.glob("*.py"))
    )


def test_every_room_is_pinned() -> None:
    assert sorted(PINNED) == rooms()


@pytest.mark.parametrize("room", rooms())
def test_a_room_offers_what_is_pinned(room: str) -> None:
    module = importlib.import_module(f"entremetry.{room}")
    assert sorted(getattr(module, "__all__", [])) == sorted(PINNED[room])


@pytest.mark.parametrize("room", rooms())
def test_every_public_name_is_there(room: str) -> None:
    module = importlib.import_module(f"entremetry.{room}")
    missing = [name for name in getattr(module, "__all__", []) if not hasattr(module, name)]
    assert not missing


@pytest.mark.parametrize("room", rooms())
def test_the_front_of_a_room_holds_no_code(room: str) -> None:
    front = SOURCE_TREE / room / "__init__.py"
    allowed = (ast.Import, ast.ImportFrom, ast.Assign, ast.Expr)
    body = ast.parse(front.read_text(encoding="utf-8")).body
    assert all(isinstance(node, allowed) for node in body)
    assert ast.get_docstring(ast.Module(body=body, type_ignores=[]))
