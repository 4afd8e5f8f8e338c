"""Two libraries beside each other: what only one holds, and what is not alike."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest

from entremetry.store import Kind
from entremetry.store.database import open_database
from entremetry.store.library import Library
from entremetry.usecases.safe_keeping import beside, bring_back, look_into

BARS, DOME = "name: Bars\n", "name: Dome\n"


@pytest.fixture
def libraries(tmp_path: Path) -> Iterator[tuple[Library, Library]]:
    """The one that was brought and the one that is here."""
    made = tuple(
        Library(
            open_database(tmp_path / f"{name}.sqlite"), lambda: datetime(2026, 3, 2, tzinfo=UTC)
        )
        for name in ("there", "here")
    )
    yield made[0], made[1]
    for library in made:
        library.close()


def test_what_is_the_same_is_named_in_neither(libraries: tuple[Library, Library]) -> None:
    there, here = libraries
    for library in libraries:
        library.add(Kind.DESSERT, "dome", DOME)
    there.add(Kind.DESSERT, "bars", BARS)
    there.add(Kind.KITCHEN, "kitchen", "{}")
    here.add(Kind.DESSERT, "log", "name: Log\n")
    found = beside(there, here)
    assert (found.only_there, found.only_here, found.unlike) == (("Bars",), ("Log",), ())
    assert found.there.desserts == ("Bars", "Dome")
    assert (found.there.kitchen, found.here.kitchen) == (True, False)
    here.save(Kind.DESSERT, "dome", DOME + "# more\n", started_from=1)
    assert beside(there, here).unlike == ("Dome",)


def test_empty_library_never_changed(libraries: tuple[Library, Library]) -> None:
    assert beside(*libraries).there.changed_at is None


def test_what_was_seen_is_what_comes_back(
    libraries: tuple[Library, Library], tmp_path: Path
) -> None:
    there, here = libraries
    there.add(Kind.DESSERT, "bars", BARS)
    there.backup_to(tmp_path / "backup.sqlite")
    seen = look_into(here, tmp_path / "backup.sqlite", name="x")
    bring_back(here, tmp_path / "backup.sqlite", name="x", aside=tmp_path / "aside.sqlite")
    assert beside(there, here).here == seen.there
