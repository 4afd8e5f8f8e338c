"""A backup that somebody brings, opened as a library once its rows make sense."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path

from sqlalchemy import Connection, select

from entremetry.errors import StoreError
from entremetry.store.database import Database, open_database
from entremetry.store.incoming import damaged, require_library
from entremetry.store.library import Library
from entremetry.store.stored import Kind, Origin
from entremetry.store.stored_plan import Happening
from entremetry.store.tables import BENCH_ENTRIES, DOCUMENTS, DRAFTS, PLANS, REVISIONS

MOMENTS = (
    REVISIONS.c.changed_at,
    DRAFTS.c.changed_at,
    PLANS.c.made_at,
    BENCH_ENTRIES.c.at,
    BENCH_ENTRIES.c.received_at,
)
KNOWN = (
    (DOCUMENTS.c.kind, Kind),
    (DRAFTS.c.kind, Kind),
    (REVISIONS.c.origin, Origin),
    (BENCH_ENTRIES.c.what, Happening),
)


@contextmanager
def opened_backup(path: Path, *, name: str) -> Iterator[Library]:
    """Open a file of our own that somebody's backup was copied to, and bring it up to date.

    Raises
    ------
    StoreError
        If it is no library of ours, is damaged, or was written by a newer version.
    """
    require_library(path, name=name)
    database = open_database(path)
    try:
        _require_sense(database, name)
        yield Library(database)
    finally:
        database.close()


def _require_sense(database: Database, name: str) -> None:
    """Refuse rows that no version of this program would have written."""
    with database.reading() as connection:
        for column in MOMENTS:
            for moment in connection.execute(select(column).distinct()).scalars():
                if not _is_moment(moment):
                    raise StoreError(damaged(name, f"{column}: {moment[:60]}"))
        for column, words in KNOWN:
            for word in connection.execute(select(column).distinct()).scalars():
                if word not in set(words):
                    raise StoreError(damaged(name, f"{column}: {word[:60]}"))
        if lost := _without_text(connection):
            raise StoreError(damaged(name, f"revisions: {lost[:60]}"))


def _is_moment(written: str) -> bool:
    try:
        return datetime.fromisoformat(written).tzinfo is not None
    except ValueError:
        return False


def _without_text(connection: Connection) -> str | None:
    """Id of a document whose newest revision is not there."""
    newest = (
        (REVISIONS.c.kind == DOCUMENTS.c.kind)
        & (REVISIONS.c.id == DOCUMENTS.c.id)
        & (REVISIONS.c.number == DOCUMENTS.c.revision)
    )
    wanted = select(DOCUMENTS.c.id).outerjoin(REVISIONS, newest).where(REVISIONS.c.id.is_(None))
    return connection.execute(wanted.limit(1)).scalar()
