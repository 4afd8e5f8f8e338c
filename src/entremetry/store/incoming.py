"""Look at a file that somebody brings as a backup, before anything in it is believed."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from sqlalchemy import Column, Integer, String, Table

from entremetry.errors import StoreError
from entremetry.store.database import MIGRATIONS
from entremetry.store.tables import METADATA
from entremetry.words import say, say_later

HEADER = b"SQLite format 3\x00"
VERSIONS = "alembic_version"
ACCEPTED = say_later("accepted: a file that 'Download a backup' gave, or 'library.sqlite'")
LARGEST_CELL = 10_000_000
"""Bytes of one text: a document has at most a tenth of them."""


def require_library(path: Path, *, name: str) -> None:
    """Refuse a file that is no library of ours, or is damaged; `name` is what its owner calls it.

    Only plain tables of ours are let in: no view, no trigger, no computed column.

    Raises
    ------
    StoreError
        If it is anything else, was cut short, or was written by a newer version.
    """
    with path.open("rb") as stream:
        if stream.read(len(HEADER)) != HEADER:
            raise StoreError(
                say(
                    "{file} is no backup: it does not begin as one; {accepted}",
                    file=name,
                    accepted=say(ACCEPTED),
                )
            )
    with _reading(path, name) as connection:
        tables = _tables(connection, name)
        _require_version(connection, name)
        _require_sound(connection, name)
        for table in tables:
            _require_columns(connection, table, name)
            _require_types(connection, table, name)


@contextmanager
def _reading(path: Path, name: str) -> Iterator[sqlite3.Connection]:
    address = f"{path.resolve().as_uri()}?mode=ro&immutable=1"
    try:
        with closing(sqlite3.connect(address, uri=True)) as connection:
            connection.setlimit(sqlite3.SQLITE_LIMIT_LENGTH, LARGEST_CELL)
            connection.execute("PRAGMA trusted_schema = OFF")
            connection.execute("PRAGMA cell_size_check = ON")
            yield connection
    except sqlite3.Error as error:
        raise StoreError(damaged(name, str(error))) from error


def _tables(connection: sqlite3.Connection, name: str) -> list[Table]:
    """Our tables in a file that holds nothing else."""
    rows = connection.execute("SELECT type, name, rootpage, sql FROM sqlite_master").fetchall()
    named = {found for kind, found, page, _ in rows if kind == "table" and page}
    others = [
        found
        for kind, found, page, sql in rows
        if not (kind == "index" and sql is None) and not (kind == "table" and page)
    ]
    foreign = sorted({*others, *(named - set(METADATA.tables) - {VERSIONS})})
    if foreign or VERSIONS not in named:
        raise StoreError(
            say(
                "{file} is no library of this program: {found} in it is not ours; {accepted}",
                file=name,
                found=f"'{(foreign or [VERSIONS])[0][:60]}'",
                accepted=say(ACCEPTED),
            )
        )
    return [table for key, table in METADATA.tables.items() if key in named]


def _require_version(connection: sqlite3.Connection, name: str) -> None:
    versions = [row[0] for row in connection.execute(f"SELECT version_num FROM {VERSIONS}")]
    if len(versions) != 1 or versions[0] not in MIGRATIONS:
        said = str(versions[0])[:20] if versions else "none"
        raise StoreError(
            say(
                "{file} was written by a newer version of this program: its tables are of version "
                "{found}, known here are {known}; install that version first",
                file=name,
                found=said,
                known=", ".join(MIGRATIONS),
            )
        )


def _require_sound(connection: sqlite3.Connection, name: str) -> None:
    told = connection.execute("PRAGMA quick_check(1)").fetchone()[0]
    orphan = connection.execute("PRAGMA foreign_key_check").fetchone()
    if told != "ok" or orphan:
        why = f"FOREIGN KEY: {orphan[0]}" if orphan else str(told)[:200]
        raise StoreError(damaged(name, why))


def _require_columns(connection: sqlite3.Connection, table: Table, name: str) -> None:
    rows = connection.execute(f"PRAGMA table_xinfo({table.name})").fetchall()
    found = {row[1] for row in rows}
    if found != set(table.columns.keys()) or any(row[6] for row in rows):
        raise StoreError(damaged(name, f"{table.name}: {', '.join(sorted(found))[:200]}"))


def _require_types(connection: sqlite3.Connection, table: Table, name: str) -> None:
    for column in table.columns:
        wrong = connection.execute(
            f"SELECT count(*) FROM {table.name} WHERE {_amiss(column)}"
        ).fetchone()[0]
        if wrong:
            raise StoreError(damaged(name, f"{table.name}.{column.name}: {wrong}"))


def damaged(name: str, where: str) -> str:
    """What a person reads whose file is not whole; `where` is for whoever looks into it."""
    return say(
        "{file} is damaged or was cut short ({where}); take another copy of it",
        file=name,
        where=where,
    )


def _amiss(column: Column[object]) -> str:
    """Condition for a value that we would never have written."""
    kind = "integer" if isinstance(column.type, Integer) else "text"
    amiss = f"typeof({column.name}) <> '{kind}'"
    if isinstance(column.type, String) and column.type.length:
        amiss += f" OR length({column.name}) > {column.type.length}"
    return f"{column.name} IS NOT NULL AND ({amiss})" if column.nullable else amiss
