"""A library in a folder of its own, with a clock that ticks by the minute."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from entremetry.store.database import Database, open_database
from entremetry.store.library import Library


def ticking() -> Callable[[], datetime]:
    """Clock that starts at eight and goes on by a minute each time it is read."""
    minutes = iter(range(100_000))
    start = datetime(2026, 3, 2, 8, 0, tzinfo=UTC)
    return lambda: start + timedelta(minutes=next(minutes))


@pytest.fixture
def database(tmp_path: Path) -> Iterator[Database]:
    opened = open_database(tmp_path / "library.sqlite")
    yield opened
    opened.close()


@pytest.fixture
def library(database: Database) -> Library:
    return Library(database, ticking())
