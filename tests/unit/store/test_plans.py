"""A plan is kept whole, a bench entry counts once, and both are in the backup."""

from __future__ import annotations

import signal
import sqlite3
import subprocess
import sys
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from entremetry.errors import StoreError, UnknownName
from entremetry.store import BenchEntry, Happening
from entremetry.store.database import open_database
from entremetry.store.library import Library

NOON = datetime(2026, 11, 27, 12, 0, tzinfo=UTC)
NOTE_AND_DIE = """
import os, pathlib, signal, sys
from datetime import UTC, datetime
from entremetry.store import BenchEntry, Happening
from entremetry.store.database import open_database
from entremetry.store.library import Library

library = Library(open_database(pathlib.Path(sys.argv[1])))
library.plans.keep("dome", "text")
library.plans.note(1, BenchEntry(key="a", what=Happening.DONE, at=datetime.now(UTC), task="bake"))
with library.database.unit_of_work() as connection:
    connection.exec_driver_sql("DELETE FROM bench_entries")
    os.kill(os.getpid(), signal.SIGKILL)
"""


def entry(key: str, what: Happening = Happening.DONE, **others: object) -> BenchEntry:
    """An entry about one task at noon."""
    told = {"task": "dome/base/bake-1", "at": NOON, **others}
    return BenchEntry(key=key, what=what, **told)  # type: ignore[arg-type]


def test_plans_are_listed_with_the_newest_first(library: Library) -> None:
    for name in ("first", "second"):
        library.plans.keep(name, f"text of the {name}")
    assert [(plan.name, plan.text) for plan in library.plans.all()] == [
        ("second", "text of the second"),
        ("first", "text of the first"),
    ]


def test_missing_plan_is_told(library: Library) -> None:
    for ask in (library.plans.plan, library.plans.entries):
        with pytest.raises(UnknownName, match="no plan is called '7'"):
            ask(7)
    with pytest.raises(UnknownName):
        library.plans.note(7, entry("a"))


def test_entry_sent_again_counts_once(library: Library) -> None:
    plan = library.plans.keep("dome", "text").id
    first = library.plans.note(plan, entry("a"))
    again = library.plans.note(plan, entry("a", Happening.BEGUN, at=NOON + timedelta(hours=1)))
    assert again == first
    assert library.plans.entries(plan) == (first,)


def test_the_same_key_may_serve_two_plans(library: Library) -> None:
    plans = [library.plans.keep("dome", "text").id for _ in range(2)]
    for plan in plans:
        library.plans.note(plan, entry("a"))
    assert [len(library.plans.entries(plan)) for plan in plans] == [1, 1]


def test_entries_come_in_the_order_in_which_they_came_in(library: Library) -> None:
    plan = library.plans.keep("dome", "text").id
    library.plans.note(plan, entry("late", at=NOON + timedelta(hours=1)))
    library.plans.note(plan, entry("early", Happening.TAKES, minutes=40))
    kept = library.plans.entries(plan)
    assert [(each.key, each.minutes) for each in kept] == [("late", 0), ("early", 40)]
    assert kept[0].number < kept[1].number
    assert kept[1].until == NOON + timedelta(minutes=40)


def test_plan_made_anew_takes_the_place_of_the_one_before(library: Library) -> None:
    first = library.plans.keep("dome", "first")
    anew = library.plans.replace(first, "second", heard=5)
    assert (anew.id, anew.text, anew.heard) == (first.id, "second", 5)
    assert anew.made_at > first.made_at
    assert library.plans.all() == (anew,)


def test_plan_replaced_meanwhile_is_left_alone(library: Library) -> None:
    first = library.plans.keep("dome", "first")
    library.plans.replace(first, "second", heard=0)
    with pytest.raises(StoreError, match="made anew meanwhile"):
        library.plans.replace(first, "third", heard=0)
    assert library.plans.plan(first.id).text == "second"


def test_backup_holds_plans_and_entries(library: Library, tmp_path: Path) -> None:
    plan = library.plans.keep("dome", "text").id
    library.plans.note(plan, entry("a"))
    library.backup_to(tmp_path / "backup.sqlite")
    copy = Library(open_database(tmp_path / "backup.sqlite"))
    assert copy.plans.all() == library.plans.all()
    assert copy.plans.entries(plan) == library.plans.entries(plan)
    copy.close()


def test_library_from_before_there_were_plans_is_brought_up_to_date(tmp_path: Path) -> None:
    place = tmp_path / "library.sqlite"
    open_database(place).close()
    with sqlite3.connect(place) as old:
        old.execute("DROP TABLE bench_entries")
        old.execute("DROP TABLE plans")
        old.execute("UPDATE alembic_version SET version_num = '0001'")
    old.close()
    library = Library(open_database(place))
    assert library.plans.keep("dome", "text").id == 1
    library.close()


def test_what_was_noted_survives_a_killed_process(tmp_path: Path) -> None:
    place = tmp_path / "library.sqlite"
    victim = subprocess.run([sys.executable, "-c", NOTE_AND_DIE, str(place)], check=False)
    assert victim.returncode == -signal.SIGKILL
    library = Library(open_database(place))
    assert [each.key for each in library.plans.entries(1)] == ["a"]
    library.close()
