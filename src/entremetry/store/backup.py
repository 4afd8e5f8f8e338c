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


def backup(database: Database, path: Path) -> None:
    """Write one file that opens as a library of its own; StoreError if a file is there."""
    if path.exists():
        raise StoreError(say("{path} exists; name a new file for the backup", path=path))
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "copy.sqlite"
        _copy(database, copy)
        write_atomically(path, copy.read_bytes())


def _copy(database: Database, path: Path) -> None:
    target = open_database(path)
    try:
        with database.reading() as source, target.unit_of_work() as sink:
            _copy_rows(source, sink)
    finally:
        target.close()


def _copy_rows(source: Connection, sink: Connection) -> None:
    for table in METADATA.sorted_tables:
        rows = [dict(row._mapping) for row in source.execute(select(table))]
        if rows:
            sink.execute(insert(table), rows)
