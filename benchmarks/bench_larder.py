"""One look-up in the larder, against one query by key to the same kind of file."""

from __future__ import annotations

import sqlite3
from itertools import cycle

from figure import Figure, median_seconds

from entremetry.store.larder_file import open_larder


def measure(rounds: int = 2000) -> Figure:
    """Time finding an ingredient by id, going round all of them."""
    larder = open_larder()
    ids = [ingredient.id for ingredient in larder]
    wanted, keys = cycle(ids), cycle(ids)
    with sqlite3.connect(":memory:") as table:
        table.execute("create table ingredient (id text primary key, name text) without rowid")
        table.executemany("insert into ingredient values (?, ?)", [(name, name) for name in ids])
        query = "select name from ingredient where id = ?"
        reference = median_seconds(lambda: table.execute(query, (next(keys),)).fetchone(), rounds)
    table.close()
    return Figure(
        name=f"look-up among {len(ids)} ingredients",
        seconds=median_seconds(lambda: larder.find(next(wanted)), rounds),
        reference="a query by key in SQLite",
        reference_seconds=reference,
        target=0.001,
    )
