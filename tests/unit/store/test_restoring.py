"""A backup comes back whole, what was here is set aside, and nothing else is let in."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from pathlib import Path

import pytest
from sqlalchemy import select

from entremetry.errors import StoreError
from entremetry.store.database import Database, open_database
from entremetry.store.incoming_library import opened_backup
from entremetry.store.library import Library
from entremetry.store.stored import Kind
from entremetry.store.tables import METADATA
from unit.store.conftest import ticking

DESSERT = Kind.DESSERT
Spoil = Callable[[sqlite3.Connection], object]


def everything(database: Database) -> dict[str, list[tuple[object, ...]]]:
    """All rows of all tables."""
    with database.reading() as connection:
        return {
            name: sorted((tuple(row) for row in connection.execute(select(table))), key=str)
            for name, table in METADATA.tables.items()
        }


@pytest.fixture
def backup(library: Library, tmp_path: Path) -> Path:
    """A backup of a library with a dessert, a draft and a plan."""
    library.add(DESSERT, "dome", "first")
    library.save(DESSERT, "dome", "second", started_from=1)
    library.keep_draft(DESSERT, "dome", "half a thought", started_from=2)
    library.plans.keep("Dome", "{}")
    library.backup_to(tmp_path / "backup.sqlite")
    return tmp_path / "backup.sqlite"


def come_back(library: Library, backup: Path, aside: Path) -> None:
    with opened_backup(backup, name="the file") as other:
        library.become(other, aside)


def test_backup_comes_back_whole_and_what_was_here_is_set_aside(
    library: Library, backup: Path, tmp_path: Path
) -> None:
    then = everything(library.database)
    library.save(DESSERT, "dome", "third", started_from=2)
    library.add(DESSERT, "bars", "bars")
    library.plans.keep("Bars", "{}")
    now = everything(library.database)
    come_back(library, backup, tmp_path / "aside.sqlite")
    assert everything(library.database) == then != now
    come_back(library, tmp_path / "aside.sqlite", tmp_path / "again.sqlite")
    assert everything(library.database) == now


def test_library_goes_on_after_a_backup_came_back(
    library: Library, backup: Path, tmp_path: Path
) -> None:
    come_back(library, backup, tmp_path / "aside.sqlite")
    assert library.save(DESSERT, "dome", "third", started_from=2).revision.number == 3
    assert library.plans.keep("Bars", "{}").id == 2


def test_nothing_changes_if_nothing_can_be_set_aside(
    library: Library, backup: Path, tmp_path: Path
) -> None:
    library.add(DESSERT, "bars", "bars")
    now = everything(library.database)
    (tmp_path / "aside.sqlite").write_text("precious")
    with pytest.raises(StoreError, match="exists"):
        come_back(library, backup, tmp_path / "aside.sqlite")
    assert everything(library.database) == now
    assert (tmp_path / "aside.sqlite").read_text() == "precious"


def test_whoever_reads_meanwhile_sees_one_library(
    library: Library, backup: Path, tmp_path: Path
) -> None:
    library.add(DESSERT, "bars", "bars")
    with library.database.reading() as reader:
        wanted = select(METADATA.tables["documents"].c.id)
        before = reader.execute(wanted).scalars().all()
        come_back(library, backup, tmp_path / "aside.sqlite")
        assert reader.execute(wanted).scalars().all() == before
    assert [each.id for each in library.documents(DESSERT)] == ["dome"]


def test_backup_of_an_older_version_comes_back(library: Library, tmp_path: Path) -> None:
    older = tmp_path / "older.sqlite"
    source = Library(open_database(older), ticking())
    source.add(DESSERT, "dome", "old")
    source.close()
    with sqlite3.connect(older) as connection:
        connection.execute("DROP TABLE bench_entries")
        connection.execute("DROP TABLE plans")
        connection.execute("UPDATE alembic_version SET version_num = '0001'")
    connection.close()
    come_back(library, older, tmp_path / "aside.sqlite")
    assert library.document(DESSERT, "dome").text == "old"


SPOILT: dict[str, tuple[Spoil, str]] = {
    "a newer version": (
        lambda c: c.execute("UPDATE alembic_version SET version_num = '0999'"),
        "newer version .* 0999",
    ),
    "no version": (lambda c: c.execute("DROP TABLE alembic_version"), "not ours"),
    "a table of another program": (lambda c: c.execute("CREATE TABLE songs (a)"), "'songs'"),
    "a view": (
        lambda c: c.executescript("DROP TABLE demos; CREATE VIEW demos AS SELECT 1 AS id"),
        "'demos'",
    ),
    "a trigger": (
        lambda c: c.execute(
            "CREATE TRIGGER t AFTER INSERT ON plans BEGIN DELETE FROM documents; END"
        ),
        "'t'",
    ),
    "a computed column": (
        lambda c: c.execute("ALTER TABLE demos ADD COLUMN more AS (hex(zeroblob(9)))"),
        "demos: digest, id, more",
    ),
    "bytes for text": (
        lambda c: c.execute("UPDATE revisions SET document = x'00ff'"),
        "revisions.document: 2",
    ),
    "words for a number": (lambda c: c.execute("UPDATE plans SET heard = 'all'"), "plans.heard: 1"),
    "too long a name": (
        lambda c: c.execute("UPDATE plans SET name = hex(zeroblob(200))"),
        "plans.name: 1",
    ),
    "a kind that there is not": (
        lambda c: c.execute("UPDATE drafts SET kind = 'song'"),
        "drafts.kind: song",
    ),
    "a moment that is none": (
        lambda c: c.execute("UPDATE plans SET made_at = '2026-11-27'"),
        "plans.made_at: 2026-11-27",
    ),
    "a revision that is gone": (
        lambda c: c.execute("DELETE FROM revisions WHERE number = 2"),
        "revisions: dome",
    ),
    "a row of nothing": (
        lambda c: c.execute("DELETE FROM documents"),
        "FOREIGN KEY: revisions",
    ),
}


@pytest.mark.parametrize("fault", SPOILT)
def test_what_is_no_library_is_refused(backup: Path, fault: str) -> None:
    spoil, said = SPOILT[fault]
    with sqlite3.connect(backup) as connection:
        spoil(connection)
    connection.close()
    with (
        pytest.raises(StoreError, match=f"the file .*{said}"),
        opened_backup(backup, name="the file"),
    ):
        pass


@pytest.mark.parametrize(
    "content", [b"", b"PK\x03\x04", b"entremetry: 1\n", b"SQLite format 3\x00"]
)
def test_what_is_no_database_is_refused(tmp_path: Path, content: bytes) -> None:
    place = tmp_path / "x.sqlite"
    place.write_bytes(content)
    with pytest.raises(StoreError, match="the file is"), opened_backup(place, name="the file"):
        pass


def test_what_was_cut_short_or_changed_on_the_way_is_refused(backup: Path) -> None:
    whole = backup.read_bytes()
    for content in (whole[: len(whole) // 2], whole[:4096] + b"\xa5" * 4096 + whole[8192:]):
        backup.write_bytes(content)
        with (
            pytest.raises(StoreError, match="damaged or was cut short"),
            opened_backup(backup, name="the file"),
        ):
            pass
