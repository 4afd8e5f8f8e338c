"""The larder file: read whole, read once, built again to the same bytes."""

from __future__ import annotations

import sqlite3
import subprocess
import sys
from importlib.resources import as_file, files
from pathlib import Path

import pytest

from entremetry.errors import StoreError
from entremetry.store.larder_file import open_larder, read_larder

BUILD = Path(__file__).parents[3] / "tools" / "larder" / "build.py"


def build(path: Path) -> bytes:
    """Run the build script; return the bytes it wrote."""
    subprocess.run([sys.executable, str(BUILD), "--to", str(path)], check=True, capture_output=True)
    return path.read_bytes()


def committed() -> bytes:
    with as_file(files("entremetry.store") / "data" / "larder.sqlite") as path:
        return path.read_bytes()


@pytest.fixture(scope="module")
def rebuilt(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("larder") / "larder.sqlite"
    build(path)
    return path


def test_the_tables_give_the_committed_bytes(rebuilt: Path) -> None:
    assert rebuilt.read_bytes() == committed()


def test_the_tables_give_the_committed_contents(rebuilt: Path) -> None:
    assert read_larder(rebuilt).ingredients == open_larder().ingredients


def test_building_twice_gives_the_same_bytes(rebuilt: Path, tmp_path: Path) -> None:
    assert build(tmp_path / "again.sqlite") == rebuilt.read_bytes()


def test_it_is_read_once() -> None:
    assert open_larder() is open_larder()


def test_it_holds_what_the_trade_needs() -> None:
    from_sr28 = [i for i in open_larder() if any(n.startswith("SR28 ") for n in i.notes)]
    assert len(from_sr28) >= 250
    assert len(open_larder()) - len(from_sr28) >= 60


def test_a_list_comes_back_as_it_was() -> None:
    cream = open_larder().find("cream-35")
    assert "whipping cream" in cream.aliases
    assert cream.packs[0].mass == pytest.approx(1.0)
    assert cream.allergens_eu == {"milk"}
    assert {"whippable", "liquid", "dairy"} <= cream.tags


def test_a_missing_file_is_told(tmp_path: Path) -> None:
    with pytest.raises(StoreError, match=r"gone\.sqlite"):
        read_larder(tmp_path / "gone.sqlite")


def test_a_file_that_is_none_is_told(tmp_path: Path) -> None:
    path = tmp_path / "junk.sqlite"
    path.write_bytes(b"no database at all" * 100)
    with pytest.raises(StoreError, match="cannot be read"):
        read_larder(path)


def test_a_file_of_another_format_is_told(tmp_path: Path) -> None:
    path = tmp_path / "later.sqlite"
    connection = sqlite3.connect(path)
    connection.execute("pragma user_version = 99")
    connection.execute("create table ingredient (id text)")
    connection.commit()
    connection.close()
    with pytest.raises(StoreError, match="format 99"):
        read_larder(path)


def test_reading_leaves_the_file_alone(rebuilt: Path) -> None:
    before = rebuilt.read_bytes()
    read_larder(rebuilt)
    assert rebuilt.read_bytes() == before
    assert [path.name for path in rebuilt.parent.iterdir()] == [rebuilt.name]
