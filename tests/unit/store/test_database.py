"""A database is safe as set, up to date when opened, and written all or nothing."""

from __future__ import annotations

import sqlite3
from pathlib import Path

import pytest
from sqlalchemy import inspect, text

from entremetry.errors import StoreError
from entremetry.store.database import NEWEST_MIGRATION, Database, open_database
from entremetry.store.tables import METADATA


@pytest.mark.parametrize(
    ("pragma", "value"),
    [("journal_mode", "wal"), ("foreign_keys", 1), ("synchronous", 2), ("busy_timeout", 10_000)],
)
def test_sqlite_is_set_to_lose_nothing(database: Database, pragma: str, value: object) -> None:
    with database.reading() as connection:
        assert connection.exec_driver_sql(f"PRAGMA {pragma}").scalar() == value


def test_migrations_make_the_tables_that_are_used(database: Database) -> None:
    with database.reading() as connection:
        inspector = inspect(connection)
        for table in METADATA.sorted_tables:
            found = {column["name"] for column in inspector.get_columns(table.name)}
            assert found == {column.name for column in table.columns}


def test_migrations_and_tables_agree(database: Database) -> None:
    from alembic.autogenerate import compare_metadata
    from alembic.migration import MigrationContext

    with database.reading() as connection:
        assert compare_metadata(MigrationContext.configure(connection), METADATA) == []


def test_newest_migration_is_the_head_of_the_scripts() -> None:
    from alembic.script import ScriptDirectory

    import entremetry.store.migrations as migrations

    scripts = ScriptDirectory(str(Path(migrations.__path__[0])))
    assert scripts.get_current_head() == NEWEST_MIGRATION


def test_opening_again_changes_nothing(tmp_path: Path) -> None:
    for _ in range(2):
        database = open_database(tmp_path / "library.sqlite")
        with database.reading() as connection:
            assert connection.execute(text("SELECT version_num FROM alembic_version")).all() == [
                (NEWEST_MIGRATION,)
            ]
        database.close()


def test_unit_of_work_that_fails_leaves_nothing(database: Database) -> None:
    with pytest.raises(ZeroDivisionError), database.unit_of_work() as connection:
        connection.execute(text("INSERT INTO demos VALUES ('dome', 'digest')"))
        raise ZeroDivisionError
    with database.reading() as connection:
        assert connection.execute(text("SELECT count(*) FROM demos")).scalar() == 0


def test_writer_holds_the_lock_from_its_first_moment(database: Database, tmp_path: Path) -> None:
    other = sqlite3.connect(tmp_path / "library.sqlite", isolation_level=None, timeout=0)
    with (
        database.unit_of_work(),
        pytest.raises(sqlite3.OperationalError, match="database is locked"),
    ):
        other.execute("BEGIN IMMEDIATE")
    other.close()


def test_file_that_is_no_database_is_told(tmp_path: Path) -> None:
    (tmp_path / "library.sqlite").write_text("a shopping list " * 100)
    with pytest.raises(StoreError, match="file is not a database"):
        open_database(tmp_path / "library.sqlite")


def test_library_of_a_newer_program_is_left_alone(tmp_path: Path) -> None:
    database = open_database(tmp_path / "library.sqlite")
    with database.unit_of_work() as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    database.close()
    with pytest.raises(StoreError, match="newer version of this program"):
        open_database(tmp_path / "library.sqlite")


@pytest.mark.parametrize("address", ["nonsense", "unheard://of", "postgresql"])
def test_nonsense_address_is_told(address: str) -> None:
    with pytest.raises(StoreError, match="ENTREMETRY_STORE is no database address"):
        open_database(address)


def test_missing_driver_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    def without_driver(url: object) -> None:
        raise ModuleNotFoundError("No module named 'psycopg'")

    monkeypatch.setattr("entremetry.store.database.create_engine", without_driver)
    with pytest.raises(StoreError, match=r"install the package psycopg\[binary\]"):
        open_database("postgresql://cook@pantry/library")


def test_folder_in_place_of_the_file_is_told(tmp_path: Path) -> None:
    with pytest.raises(StoreError, match="the library cannot be used: unable to open"):
        open_database(tmp_path)
