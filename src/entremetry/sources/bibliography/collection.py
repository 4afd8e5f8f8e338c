"""The entries of all rooms joined into one bibliography."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType

from entremetry.errors import UnknownName
from entremetry.sources.bibliography import (
    checks,
    dessert,
    formula,
    general,
    kitchen,
    labels,
    larder,
    method,
    physics,
    planning,
    publish,
    quantities,
    shapes,
    solution,
)
from entremetry.sources.source import Source

ROOMS = (
    general,
    quantities,
    larder,
    shapes,
    solution,
    physics,
    planning,
    formula,
    method,
    kitchen,
    dessert,
    publish,
    checks,
    labels,
)


def joined(entries: Iterable[Source]) -> Mapping[str, Source]:
    """Entries by key, in the order of their keys.

    Raises
    ------
    ValueError
        If two entries bear one key.
    """
    by_key: dict[str, Source] = {}
    for entry in entries:
        if entry.key in by_key:
            raise ValueError(f"two sources bear the key {entry.key}")
        by_key[entry.key] = entry
    return MappingProxyType(dict(sorted(by_key.items())))


BIBLIOGRAPHY: Mapping[str, Source] = joined(entry for room in ROOMS for entry in room.ENTRIES)


def cite(key: str) -> Source:
    """Return the source with this key.

    Raises
    ------
    UnknownName
        With the nearest keys, if there is none.
    """
    if key not in BIBLIOGRAPHY:
        raise UnknownName("source", key, BIBLIOGRAPHY)
    return BIBLIOGRAPHY[key]
