"""The demo library: loaded once, renewed only where the user has changed nothing."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from importlib.resources import files

from sqlalchemy import Connection, delete, insert, select

from entremetry.store import revisions
from entremetry.store.library import Library
from entremetry.store.stored import Kind, Origin
from entremetry.store.tables import DEMOS


def demo_texts() -> dict[str, str]:
    """Texts of the demo desserts that come with the program, by id."""
    folder = files("entremetry.store") / "data" / "demo"
    found = {
        entry.name.removesuffix(".yaml"): entry.read_text(encoding="utf-8")
        for entry in folder.iterdir()
        if entry.name.endswith(".yaml")
    }
    return dict(sorted(found.items()))


def load_demos(library: Library, texts: Mapping[str, str]) -> None:
    """Bring in the demos not seen before and renew those that nobody touched."""
    with library.database.unit_of_work() as connection:
        seen = {row.id: row.digest for row in connection.execute(select(DEMOS))}
        for demo_id, text in texts.items():
            digest = hashlib.sha256(text.encode()).hexdigest()
            if seen.get(demo_id) != digest:
                _load(connection, library, demo_id, text)
                _remember(connection, demo_id, digest)


def _load(connection: Connection, library: Library, demo_id: str, text: str) -> None:
    if demo_id not in revisions.ids(connection, Kind.DESSERT):
        revisions.create(
            connection, Kind.DESSERT, demo_id, text, origin=Origin.DEMO, when=library.clock()
        )
    elif _untouched(connection, demo_id):
        current = revisions.newest(connection, Kind.DESSERT, demo_id)
        revisions.revise(
            connection,
            current,
            text,
            parent=current.revision.number,
            origin=Origin.DEMO,
            when=library.clock(),
        )


def _untouched(connection: Connection, demo_id: str) -> bool:
    past = revisions.history(connection, Kind.DESSERT, demo_id)
    return all(revision.origin is Origin.DEMO for revision in past)


def _remember(connection: Connection, demo_id: str, digest: str) -> None:
    connection.execute(delete(DEMOS).where(DEMOS.c.id == demo_id))
    connection.execute(insert(DEMOS).values(id=demo_id, digest=digest))
