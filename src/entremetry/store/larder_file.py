"""The built-in larder: one read-only SQLite file that comes with the program."""

from __future__ import annotations

import sqlite3
from collections import defaultdict
from collections.abc import Iterator
from contextlib import closing, contextmanager
from functools import cache
from importlib.resources import as_file, files
from pathlib import Path
from typing import Any

from entremetry.errors import StoreError
from entremetry.larder import (
    NAMES,
    NUTRIENTS,
    Constituents,
    HouseholdWeight,
    Ingredient,
    Larder,
    Nutrients,
    Pack,
    Part,
)
from entremetry.words import say

FORMAT = 2
FIRST = 16  # column in which the constituents begin
LAST = FIRST + len(NAMES)

_Grouped = dict[int, list[Any]]


@cache
def open_larder() -> Larder:
    """Return the built-in larder; it is read once.

    Raises
    ------
    StoreError
        If the file is missing or not one this version reads.
    """
    with as_file(files("entremetry.store") / "data" / "larder.sqlite") as path:
        return read_larder(path)


def read_larder(path: Path) -> Larder:
    """Read a larder file.

    Raises
    ------
    StoreError
        If it is missing or not one this version reads.
    """
    try:
        with _reading(path) as connection:
            return Larder(tuple(_ingredients(connection)))
    except sqlite3.Error as error:
        raise StoreError(
            say("the larder file {name} cannot be read: {why}", name=path.name, why=error)
        ) from error


@contextmanager
def _reading(path: Path) -> Iterator[sqlite3.Connection]:
    """Open a file that nobody writes."""
    address = f"{path.absolute().as_uri()}?mode=ro&immutable=1"
    with closing(sqlite3.connect(address, uri=True)) as connection:
        found = connection.execute("pragma user_version").fetchone()[0]
        if found != FORMAT:
            raise StoreError(
                say(
                    "the larder file {name} has format {found}, wanted {wanted}",
                    name=path.name,
                    found=found,
                    wanted=FORMAT,
                )
            )
        connection.row_factory = sqlite3.Row
        yield connection


def _ingredients(connection: sqlite3.Connection) -> Iterator[Ingredient]:
    household = _household(connection)
    packs, parts = _packs(connection), _parts(connection)
    for row in connection.execute("select * from ingredient order by position"):
        position = row["position"]
        yield _ingredient(
            row, tuple(household[position]), tuple(packs[position]), tuple(parts[position])
        )


def _household(connection: sqlite3.Connection) -> _Grouped:
    grouped: _Grouped = defaultdict(list)
    query = "select ingredient, measure, amount, mass, source, wording from household"
    for owner, measure, amount, mass, source, wording in connection.execute(
        f"{query} order by position"
    ):
        grouped[owner].append(
            HouseholdWeight(
                measure=measure, amount=amount, mass=mass, source=source, wording=wording
            )
        )
    return grouped


def _packs(connection: sqlite3.Connection) -> _Grouped:
    grouped: _Grouped = defaultdict(list)
    query = "select ingredient, name, mass, whole from pack order by position"
    for owner, name, mass, whole in connection.execute(query):
        grouped[owner].append(Pack(name=name, mass=mass, whole=bool(whole)))
    return grouped


def _parts(connection: sqlite3.Connection) -> _Grouped:
    grouped: _Grouped = defaultdict(list)
    for owner, part, share in connection.execute(
        "select ingredient, id, share from part order by position"
    ):
        grouped[owner].append(Part(id=part, share=share))
    return grouped


def _ingredient(
    row: sqlite3.Row,
    household: tuple[HouseholdWeight, ...],
    packs: tuple[Pack, ...],
    parts: tuple[Part, ...],
) -> Ingredient:
    source, density_source = row["source"], row["density_source"]
    return Ingredient(
        id=row["id"],
        name=row["name"],
        group=row["grp"],
        composition=Constituents(**dict(zip(NAMES, tuple(row)[FIRST:LAST], strict=True))),
        density=row["density"],
        density_source=density_source,
        source=source,
        aliases=_lines(row["aliases"]),
        household=household,
        packs=packs,
        parts=parts,
        nutrients=Nutrients(**{name: row[name] for name in NUTRIENTS}),
        dextrose_equivalent=row["dextrose_equivalent"],
        notes=_lines(row["notes"]),
        sodium=row["sodium"],
        energy=row["energy"],
        refuse=row["refuse"],
        bloom=row["bloom"],
        brix=row["brix"],
        cocoa=row["cocoa"],
        acidity=row["acidity"],
        ph=row["ph"],
        allergens_eu=frozenset(_lines(row["allergens_eu"])),
        allergens_us=frozenset(_lines(row["allergens_us"])),
        tags=frozenset(_lines(row["tags"])),
        not_reported=frozenset(_lines(row["not_reported"])),
    )


def _lines(text: str) -> tuple[str, ...]:
    return tuple(text.split("\n")) if text else ()
