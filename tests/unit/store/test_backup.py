"""A backup is one file that opens as a library."""

from __future__ import annotations

from pathlib import Path

import pytest

from entremetry.errors import StoreError
from entremetry.store.database import open_database
from entremetry.store.library import Library
from entremetry.store.stored import Kind

DESSERT = Kind.DESSERT


def test_backup_holds_documents_history_and_drafts(library: Library, tmp_path: Path) -> None:
    library.add(DESSERT, "dome", "first")
    library.save(DESSERT, "dome", "second", started_from=1)
    library.keep_draft(DESSERT, "dome", "half a thought", started_from=2)
    library.backup_to(tmp_path / "backup.sqlite")
    copy = Library(open_database(tmp_path / "backup.sqlite"))
    assert copy.documents(DESSERT) == library.documents(DESSERT)
    assert copy.history(DESSERT, "dome") == library.history(DESSERT, "dome")
    assert copy.draft(DESSERT, "dome") == library.draft(DESSERT, "dome")
    copy.close()


def test_backup_is_one_file(library: Library, tmp_path: Path) -> None:
    (tmp_path / "safe").mkdir()
    library.backup_to(tmp_path / "safe" / "backup.sqlite")
    assert [entry.name for entry in (tmp_path / "safe").iterdir()] == ["backup.sqlite"]


def test_backup_never_overwrites(library: Library, tmp_path: Path) -> None:
    (tmp_path / "backup.sqlite").write_text("precious")
    with pytest.raises(StoreError, match="exists; name a new file"):
        library.backup_to(tmp_path / "backup.sqlite")
    assert (tmp_path / "backup.sqlite").read_text() == "precious"
