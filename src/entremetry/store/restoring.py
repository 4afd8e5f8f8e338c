"""Put the content of a backup in place of a library, in one unit of work."""

from __future__ import annotations

from pathlib import Path

from sqlalchemy import Connection, delete, func, select, text

from entremetry.store.backup import backup_of, copy_rows
from entremetry.store.database import Database
from entremetry.store.tables import BENCH_ENTRIES, METADATA, PLANS


def replace_all(database: Database, source: Database, aside: Path) -> None:
    """Put all rows of `source` in place of those here, which are in the file `aside` before.

    Whoever reads meanwhile sees the library as it was, and after that as it is: never half of it.

    Raises
    ------
    StoreError
        If the file cannot be written or the rows cannot be kept; nothing is changed then.
    """
    with source.reading() as rows, database.unit_of_work() as sink:
        _shut_others_out(sink)
        backup_of(sink, aside)
        for table in reversed(METADATA.sorted_tables):
            sink.execute(delete(table))
        copy_rows(rows, sink)
        _count_on(sink)


def _shut_others_out(connection: Connection) -> None:
    """SQLite lets nobody else write by now; PostgreSQL has to be asked."""
    if connection.dialect.name == "postgresql":
        names = ", ".join(METADATA.tables)
        connection.execute(text(f"LOCK TABLE {names} IN EXCLUSIVE MODE"))


def _count_on(connection: Connection) -> None:
    """Let PostgreSQL number the next row after those that came with their numbers."""
    if connection.dialect.name != "postgresql":
        return
    for column in (PLANS.c.id, BENCH_ENTRIES.c.number):
        sequence = func.pg_get_serial_sequence(column.table.name, column.name)
        last = select(func.coalesce(func.max(column), 0) + 1).scalar_subquery()
        connection.execute(select(func.setval(sequence, last, False)))
