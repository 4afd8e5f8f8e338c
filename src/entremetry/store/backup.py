"""Copy a whole library, from whichever database, into one SQLite file."""

from __future__ import annotations

import tempfile
from pathlib import Path

from sqlalchemy import Connection, insert, select

from entremetry.errors import StoreError
from entremetry.store.database import Database, open_database
from entremetry.store.files import write_atomically
from entremetry.store.tables import METADATA
from entremetry.words import say

AT_ONCE = 500
"""Rows that are held in memory at a time."""


def backup(database: Database, path: Path) -> None:
    """Write one file that opens as a library of its own; StoreError if a file is there."""
    with database.reading() as connection:
        backup_of(connection, path)


def backup_of(connection: Connection, path: Path) -> None:
    """Write what a connection sees into one file; StoreError if a file is there."""
    if path.exists():
        raise StoreError(say("{path} exists; name a new file for the backup", path=path))
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "copy.sqlite"
        target = open_database(copy)
        try:
            with target.unit_of_work() as sink:
                copy_rows(connection, sink)
        finally:
            target.close()
        write_atomically(path, copy.read_bytes())


def copy_rows(source: Connection, sink: Connection) -> None:
    """Write every row of one library into another that has none."""
    for table in METADATA.sorted_tables:
        for rows in source.execute(select(table)).mappings().partitions(AT_ONCE):
            sink.execute(insert(table), [dict(row) for row in rows])
