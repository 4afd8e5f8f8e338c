"""Writes the larder as one SQLite file, the same bytes from the same ingredients."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable
from pathlib import Path

from entremetry.larder import NAMES, NUTRIENTS, Ingredient

FORMAT = 2
FIGURES = (
    "density",
    "sodium",
    "energy",
    "refuse",
    "bloom",
    "brix",
    "cocoa",
    "acidity",
    "ph",
    "dextrose_equivalent",
)
WORDS = ("id", "name", "source", "density_source")
LISTS = ("aliases", "allergens_eu", "allergens_us", "tags", "not_reported", "notes")
SCHEMA = f"""
create table ingredient (
    position integer primary key,
    {", ".join(f"{word} text not null" for word in WORDS)},
    grp text not null,
    {", ".join(f"{word} real" for word in FIGURES)},
    {", ".join(f"{word} real not null" for word in NAMES)},
    {", ".join(f"{word} text not null" for word in LISTS)},
    {", ".join(f"{word} real" for word in NUTRIENTS)}
);
create unique index ingredient_id on ingredient (id);
create table household (
    position integer primary key,
    ingredient integer not null references ingredient (position),
    measure text not null, amount real not null, mass real not null,
    source text not null, wording text not null
);
create table pack (
    position integer primary key,
    ingredient integer not null references ingredient (position),
    name text not null, mass real not null, whole integer not null
);
create table part (
    position integer primary key,
    ingredient integer not null references ingredient (position),
    id text not null, share real not null
);
"""
CHANGE_COUNTER = slice(24, 28)
VERSION_VALID_FOR = slice(92, 96)
LIBRARY_VERSION = slice(96, 100)


def write(path: Path, ingredients: Iterable[Ingredient]) -> None:
    """Write the file anew."""
    path.unlink(missing_ok=True)
    connection = sqlite3.connect(path, isolation_level=None)
    try:
        connection.execute("pragma page_size = 4096")
        connection.execute("pragma journal_mode = off")
        connection.execute(f"pragma user_version = {FORMAT}")
        connection.executescript(SCHEMA)
        connection.execute("begin")
        fill(connection, ingredients)
        connection.execute("commit")
        connection.execute("vacuum")
    finally:
        connection.close()
    path.write_bytes(without_history(path.read_bytes()))


def without_history(raw: bytes) -> bytes:
    """The same database without how often and by which library it was written."""
    header = bytearray(raw)
    header[CHANGE_COUNTER] = (1).to_bytes(4, "big")
    header[VERSION_VALID_FOR] = (1).to_bytes(4, "big")
    header[LIBRARY_VERSION] = (3_040_000).to_bytes(4, "big")
    return bytes(header)


def fill(connection: sqlite3.Connection, ingredients: Iterable[Ingredient]) -> None:
    """Insert all rows in order."""
    for position, ingredient in enumerate(ingredients, 1):
        insert(connection, "ingredient", [position, *columns(ingredient)])
        for weight in ingredient.household:
            row = [weight.measure, weight.amount, weight.mass, weight.source, weight.wording]
            insert(connection, "household", [None, position, *row])
        for pack in ingredient.packs:
            insert(connection, "pack", [None, position, pack.name, pack.mass, int(pack.whole)])
        for part in ingredient.parts:
            insert(connection, "part", [None, position, part.id, rounded(part.share)])


def insert(connection: sqlite3.Connection, table: str, values: list[object]) -> None:
    """Insert one row."""
    marks = ", ".join("?" * len(values))
    connection.execute(f"insert into {table} values ({marks})", values)


def columns(ingredient: Ingredient) -> list[object]:
    """Values of one ingredient in the order of the table; 12 digits are more than is known."""
    return [
        *(getattr(ingredient, word) for word in WORDS),
        ingredient.group,
        *(rounded(getattr(ingredient, word)) for word in FIGURES),
        *(rounded(getattr(ingredient.composition, word)) for word in NAMES),
        *(joined(getattr(ingredient, word)) for word in LISTS),
        *(rounded(getattr(ingredient.nutrients, word)) for word in NUTRIENTS),
    ]


def rounded(value: float | None) -> float | None:
    """Twelve decimals, so that no machine's last bit shows."""
    return None if value is None else round(value, 12)


def joined(words: Iterable[str]) -> str:
    """Words one a line; those without an order of their own are sorted."""
    ordered = words if isinstance(words, tuple) else sorted(words)
    return "\n".join(ordered)
