"""Kept plans with what happened at the bench; each method is one unit of work."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, insert, select, update

from entremetry.errors import StoreError, UnknownName
from entremetry.store.database import Database
from entremetry.store.stored_plan import BenchEntry, Happening, KeptPlan
from entremetry.store.tables import BENCH_ENTRIES, PLANS
from entremetry.words import say


@dataclass(frozen=True, slots=True)
class Plans:
    """Plans by number, and the entries of each."""

    database: Database
    clock: Callable[[], datetime]

    def all(self) -> tuple[KeptPlan, ...]:
        """Every plan, the newest first."""
        with self.database.reading() as connection:
            rows = connection.execute(select(PLANS).order_by(PLANS.c.id.desc())).all()
        return tuple(_plan(row) for row in rows)

    def plan(self, plan_id: int) -> KeptPlan:
        """One plan; UnknownName if there is none of that number."""
        with self.database.reading() as connection:
            return _found(connection, plan_id)

    def keep(self, name: str, text: str) -> KeptPlan:
        """Keep a new plan."""
        with self.database.unit_of_work() as connection:
            values = {"made_at": self.clock().isoformat(), "name": name, "text": text, "heard": 0}
            kept = insert(PLANS).values(values).returning(PLANS.c.id)
            return _found(connection, connection.execute(kept).scalar_one())

    def replace(self, current: KeptPlan, text: str, *, heard: int) -> KeptPlan:
        """Put a plan that was made anew in the place of the one it was made from.

        Raises
        ------
        StoreError
            If that one was replaced meanwhile.
        """
        with self.database.unit_of_work() as connection:
            this = (PLANS.c.id == current.id, PLANS.c.made_at == current.made_at.isoformat())
            values = {"made_at": self.clock().isoformat(), "text": text, "heard": heard}
            changed = connection.execute(update(PLANS).where(*this).values(values))
            if changed.rowcount != 1:
                raise StoreError(
                    say(
                        "plan {id} was made anew meanwhile; look at it and plan again",
                        id=current.id,
                    )
                )
            return _found(connection, current.id)

    def entries(self, plan_id: int) -> tuple[BenchEntry, ...]:
        """What was told of a plan, in the order in which it came in."""
        with self.database.reading() as connection:
            _found(connection, plan_id)
            wanted = select(BENCH_ENTRIES).where(BENCH_ENTRIES.c.plan == plan_id)
            rows = connection.execute(wanted.order_by(BENCH_ENTRIES.c.number)).all()
        return tuple(_entry(row) for row in rows)

    def note(self, plan_id: int, entry: BenchEntry) -> BenchEntry:
        """Keep an entry; one whose key is known already is left as it was first told."""
        with self.database.unit_of_work() as connection:
            _found(connection, plan_id)
            known = _by_key(connection, plan_id, entry.key)
            if known is not None:
                return known
            values = {
                "plan": plan_id,
                "key": entry.key,
                "task": entry.task,
                "what": entry.what,
                "minutes": entry.minutes,
                "at": entry.at.isoformat(),
                "received_at": self.clock().isoformat(),
            }
            kept = insert(BENCH_ENTRIES).values(values).returning(BENCH_ENTRIES.c.number)
            return replace(entry, number=connection.execute(kept).scalar_one())


def _found(connection: Connection, plan_id: int) -> KeptPlan:
    row = connection.execute(select(PLANS).where(PLANS.c.id == plan_id)).first()
    if row is None:
        raise UnknownName("plan", str(plan_id), ())
    return _plan(row)


def _by_key(connection: Connection, plan_id: int, key: str) -> BenchEntry | None:
    this = (BENCH_ENTRIES.c.plan == plan_id, BENCH_ENTRIES.c.key == key)
    row = connection.execute(select(BENCH_ENTRIES).where(*this)).first()
    return None if row is None else _entry(row)


def _plan(row: Row[Any]) -> KeptPlan:
    return KeptPlan(
        id=row.id,
        made_at=datetime.fromisoformat(row.made_at),
        name=row.name,
        text=row.text,
        heard=row.heard,
    )


def _entry(row: Row[Any]) -> BenchEntry:
    return BenchEntry(
        key=row.key,
        what=Happening(row.what),
        at=datetime.fromisoformat(row.at),
        task=row.task,
        minutes=row.minutes,
        number=row.number,
    )
