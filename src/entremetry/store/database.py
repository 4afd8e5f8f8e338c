"""A database that is opened, brought up to date, and written in whole units of work."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from sqlalchemy import URL, Connection, Engine, create_engine, event, inspect, make_url, text
from sqlalchemy.exc import ArgumentError, DBAPIError, NoSuchModuleError

from entremetry.errors import StoreError
from entremetry.store.home import STORE_SETTING
from entremetry.words import say

MIGRATIONS = ("0001", "0002")
NEWEST_MIGRATION = MIGRATIONS[-1]
BUSY_MILLISECONDS = 10_000
MIGRATION_LOCK = 7_302_118
PRAGMAS = (
    f"PRAGMA busy_timeout = {BUSY_MILLISECONDS}",
    "PRAGMA journal_mode = WAL",
    "PRAGMA foreign_keys = ON",
    "PRAGMA synchronous = FULL",
)


@dataclass(frozen=True, slots=True)
class Database:
    """An engine whose tables are those of the newest migration."""

    engine: Engine

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """Give a connection that sees one state of the data throughout."""
        with _told(), self.engine.connect() as connection:
            if connection.dialect.name == "postgresql":
                connection = connection.execution_options(isolation_level="REPEATABLE READ")
            with connection.begin():
                yield connection

    @contextmanager
    def unit_of_work(self) -> Iterator[Connection]:
        """Give a connection whose writes are kept all together, or not at all."""
        with _told(), self.engine.connect() as connection:
            writer = connection.execution_options(entremetry_writes=True)
            with writer.begin():
                yield writer

    def close(self) -> None:
        """Let go of all connections."""
        self.engine.dispose()


def open_database(address: str | Path) -> Database:
    """Open a SQLite file, or the database at an address, and run the migrations it lacks.

    Raises
    ------
    StoreError
        If the address or its driver is unknown, or the database cannot be opened.
    """
    database = Database(_engine(address))
    with database.unit_of_work() as connection:
        if connection.dialect.name == "postgresql":
            connection.execute(text(f"SELECT pg_advisory_xact_lock({MIGRATION_LOCK})"))
        if _migration(connection) != NEWEST_MIGRATION:
            _migrate(connection)
    return database


def _engine(address: str | Path) -> Engine:
    try:
        engine = create_engine(_url(address))
    except (ArgumentError, NoSuchModuleError) as error:
        raise StoreError(
            say(
                "{setting} is no database address; accepted: {one} or {other}",
                setting=STORE_SETTING,
                one="sqlite:///FILE",
                other="postgresql://USER@HOST/NAME",
            )
        ) from error
    except ImportError as error:
        raise StoreError(
            say(
                "{setting} asks for PostgreSQL, whose driver is not installed: "
                "install the package {package}",
                setting=STORE_SETTING,
                package="psycopg[binary]",
            )
        ) from error
    if engine.dialect.name == "sqlite":
        event.listen(engine, "connect", _prepare_sqlite)
        event.listen(engine, "begin", _begin_sqlite)
    return engine


def _url(address: str | Path) -> URL:
    if isinstance(address, Path):
        return URL.create("sqlite", database=str(address))
    url = make_url(address)
    return url.set(drivername="postgresql+psycopg") if url.drivername == "postgresql" else url


def _prepare_sqlite(connection: Any, _record: object) -> None:
    connection.isolation_level = None
    for pragma in PRAGMAS:
        connection.execute(pragma)


def _begin_sqlite(connection: Connection) -> None:
    writes = connection.get_execution_options().get("entremetry_writes", False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")


def _migration(connection: Connection) -> str | None:
    if not inspect(connection).has_table("alembic_version"):
        return None
    return connection.execute(text("SELECT version_num FROM alembic_version")).scalar()


def _migrate(connection: Connection) -> None:
    from alembic import command
    from alembic.config import Config
    from alembic.util.exc import CommandError

    settings = Config()
    settings.set_main_option("script_location", str(Path(__file__).parent / "migrations"))
    settings.attributes["connection"] = connection
    try:
        command.upgrade(settings, "head")
    except CommandError as error:
        raise StoreError(
            say("the library was written by a newer version of this program; install that version")
        ) from error


@contextmanager
def _told() -> Iterator[None]:
    try:
        yield
    except DBAPIError as error:
        why = " ".join(str(error.orig).split())
        raise StoreError(say("the library cannot be used: {why}", why=why)) from error
