"""Files beside the library: a backup that is being looked at, and libraries that were set aside."""

from __future__ import annotations

import re
import secrets
import shutil
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from datetime import datetime
from itertools import chain, count
from pathlib import Path
from typing import BinaryIO

from starlette.exceptions import HTTPException

from entremetry.errors import StoreError
from entremetry.words import say, say_later

FOLDER = "safe-keeping"
BROUGHT, ASIDE = "brought-", "library-"
KEY = re.compile(r"[0-9a-f]{32}")
GONE = say_later("This backup is no longer being looked at. Choose the file again.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Aside:
    """A library that was set aside: name of its file, its size [bytes], and since when."""

    name: str
    size: int
    since: datetime


def folder(home: Path) -> Path:
    """The folder for them, made if missing."""
    place = home / FOLDER
    with _told(place):
        place.mkdir(exist_ok=True)
    return place


def bring(home: Path, stream: BinaryIO) -> str:
    """Copy what somebody brings, in place of what was brought before; its key."""
    place, key = folder(home), secrets.token_hex(16)
    for earlier in place.glob(f"{BROUGHT}*"):
        with suppress(OSError):
            earlier.unlink()
    target = place / f"{BROUGHT}{key}.sqlite"
    with _told(target):
        try:
            with target.open("xb") as copy:
                shutil.copyfileobj(stream, copy)
        except OSError:
            target.unlink(missing_ok=True)
            raise
    return key


def brought(home: Path, key: str) -> Path:
    """The file of a key; HTTPException if it is there no more."""
    place = home / FOLDER / f"{BROUGHT}{key}.sqlite"
    if not KEY.fullmatch(key) or not place.is_file():
        raise HTTPException(410, say(GONE))
    return place


def leave(home: Path, key: str) -> None:
    """Take away the file of a key."""
    with suppress(OSError):
        brought(home, key).unlink()


def aside_file(home: Path, now: datetime) -> Path:
    """A new file for the library as it is now."""
    stem = f"{ASIDE}{now.astimezone():%Y-%m-%d-%H%M%S}"
    names = chain([stem], (f"{stem}-{number}" for number in count(2)))
    places = (folder(home) / f"{name}.sqlite" for name in names)
    return next(place for place in places if not place.exists())


def asides(home: Path) -> tuple[Aside, ...]:
    """What was set aside, the last first."""
    found = sorted((home / FOLDER).glob(f"{ASIDE}*.sqlite"), reverse=True)
    return tuple(_aside(place) for place in found)


def aside(home: Path, name: str) -> Path:
    """The file of a library that was set aside; HTTPException if there is none of that name."""
    found = {each.name for each in asides(home)}
    if name not in found:
        raise HTTPException(404, say(GONE))
    return home / FOLDER / name


def _aside(place: Path) -> Aside:
    stat = place.stat()
    since = datetime.fromtimestamp(stat.st_mtime).astimezone()
    return Aside(name=place.name, size=stat.st_size, since=since)


@contextmanager
def _told(place: Path) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        raise StoreError(f"{place} cannot be written: {error.strerror or error}") from error
