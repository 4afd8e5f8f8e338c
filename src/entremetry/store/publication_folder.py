"""Write several files into a folder so that either all of them are there, or none is new."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from entremetry.errors import StoreError
from entremetry.words import say


def write_together(folder: Path, contents: Mapping[str, bytes]) -> tuple[Path, ...]:
    """Write contents by file name into a folder, which is made if it is not there.

    Raises
    ------
    StoreError
        If the folder cannot be made, or a file not be written; what was there is then as it was.
    """
    with _folder(folder), _staged(folder, contents) as stage:
        for name in contents:
            _refuse_a_folder(folder / name)
        with _told(say("{place} cannot be written", place=folder)):
            for name in contents:
                (stage / name).replace(folder / name)
    return tuple(folder / name for name in contents)


@contextmanager
def _folder(folder: Path) -> Iterator[None]:
    """Make the folder, and take away again what was made of it if what follows fails."""
    missing = [place for place in (folder, *folder.parents) if not place.exists()]
    with _told(say("the folder {folder} cannot be made", folder=folder)):
        folder.mkdir(parents=True, exist_ok=True)
    try:
        yield
    except StoreError:
        for place in missing:
            place.rmdir()
        raise


@contextmanager
def _staged(folder: Path, contents: Mapping[str, bytes]) -> Iterator[Path]:
    """Write all files in full in a hidden folder beside their place."""
    with _told(say("{place} cannot be written", place=folder)):
        scratch = tempfile.TemporaryDirectory(prefix=".publishing-", dir=folder)
    with scratch as name:
        stage = Path(name)
        with _told(say("{place} cannot be written", place=folder)):
            for each, content in contents.items():
                (stage / each).write_bytes(content)
        yield stage


def _refuse_a_folder(place: Path) -> None:
    if place.is_dir():
        raise StoreError(say("{place} is a folder; a file is to be written there", place=place))


@contextmanager
def _told(message: str) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        why = error.strerror or error
        raise StoreError(say("{message}: {why}", message=message, why=why)) from error
