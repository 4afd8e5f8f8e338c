"""The data folder is the one asked for, the one set, or the system's own."""

from __future__ import annotations

from pathlib import Path

import pytest

from entremetry.errors import StoreError
from entremetry.store.home import home_folder, store_address


def test_folder_asked_for_is_made(tmp_path: Path) -> None:
    assert home_folder(tmp_path / "a" / "b").is_dir()


def test_setting_names_the_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("ENTREMETRY_HOME", str(tmp_path / "mine"))
    assert home_folder() == tmp_path / "mine"


def test_system_folder_bears_our_name(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("ENTREMETRY_HOME", raising=False)
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    assert home_folder().name == "entremetry"


def test_folder_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    with pytest.raises(StoreError, match="ENTREMETRY_HOME"):
        home_folder(tmp_path / "file" / "below")


def test_store_is_a_file_at_home_unless_set(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("ENTREMETRY_STORE", raising=False)
    assert store_address(tmp_path) == tmp_path / "library.sqlite"
    monkeypatch.setenv("ENTREMETRY_STORE", "postgresql://cook@pantry/library")
    assert store_address(tmp_path) == "postgresql://cook@pantry/library"
