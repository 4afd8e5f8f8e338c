"""Read and write the files that people name, with one clear refusal for each fault."""

from __future__ import annotations

import os
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from entremetry.errors import StoreError

LARGEST = 1_000_000
STANDARD_INPUT = "-"


def read_input(source: str, *, what: str, largest: int = LARGEST) -> str:
    """Read a text file, or standard input where `source` is '-'.

    Raises
    ------
    StoreError
        As `read_text` does.
    """
    if source != STANDARD_INPUT:
        return read_text(source, what=what, largest=largest)
    place = Path("standard input")
    with _told(f"the {what} in {place} cannot be read"):
        content = sys.stdin.buffer.read(largest + 1)
    return text_of(content, "standard input", what=what, largest=largest)


def read_text(path: Path | str, *, what: str, largest: int = LARGEST) -> str:
    """Read a whole UTF-8 text file; `what` names in the message what was wanted.

    Raises
    ------
    StoreError
        If there is no such file, or it is a folder, too large, unreadable, or no text.
    """
    place = Path(path)
    _refuse_what_is_no_file(place, what, largest)
    with _told(f"the {what} {place} cannot be read"), place.open("rb") as stream:
        content = stream.read(largest + 1)
    return text_of(content, str(place), what=what, largest=largest)


def text_of(content: bytes, name: str, *, what: str, largest: int = LARGEST) -> str:
    """Text of bytes that came under a name.

    Raises
    ------
    StoreError
        If they are more than `largest`, or no UTF-8 text.
    """
    place = Path(name)
    _refuse_large(len(content), place, what, largest)
    return _decoded(content, place, what)


def write_atomically(path: Path | str, content: bytes) -> None:
    """Write a file so that it holds either its old content or all of the new.

    Raises
    ------
    StoreError
        If the folder is missing, read-only or full; the old file is then as it was.
    """
    place = Path(path)
    if place.is_dir():
        raise StoreError(f"{place} is a folder; name a file to write")
    with _told(f"{place} cannot be written"), _scratch_beside(place) as scratch:
        _write_through(scratch, content)
        scratch.replace(place)


def _refuse_what_is_no_file(place: Path, what: str, largest: int) -> None:
    with _told(f"the {what} {place} cannot be read"):
        if place.is_dir():
            raise StoreError(f"{place} is a folder; a {what} is one text file")
        if not place.exists():
            raise StoreError(f"there is no file {place}; a {what} was to be read from it")
        if not place.is_file():
            raise StoreError(f"{place} is not a regular file; a {what} is one text file")
        _refuse_large(place.stat().st_size, place, what, largest)


def _refuse_large(size: int, place: Path, what: str, largest: int) -> None:
    if size > largest:
        raise StoreError(
            f"{place} holds more than {largest / 1e6:g} MB, the most a {what} may have"
        )


def _decoded(content: bytes, place: Path, what: str) -> str:
    if b"\0" in content:
        at = content.index(b"\0") + 1
        raise StoreError(f"{place} is not text: byte {at} is NUL; a {what} is UTF-8 text")
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        at = error.start + 1
        line = content.count(b"\n", 0, error.start) + 1
        raise StoreError(
            f"{place} is not UTF-8 text: byte {at} (line {line}) is "
            f"0x{content[error.start]:02x}; save the {what} as UTF-8"
        ) from None


@contextmanager
def _told(message: str) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        raise StoreError(f"{message}: {error.strerror or error}") from error


@contextmanager
def _scratch_beside(place: Path) -> Iterator[Path]:
    handle, name = tempfile.mkstemp(prefix=f".{place.name}.", suffix=".part", dir=place.parent)
    os.close(handle)
    scratch = Path(name)
    try:
        scratch.chmod(place.stat().st_mode & 0o777 if place.exists() else 0o644)
        yield scratch
    finally:
        scratch.unlink(missing_ok=True)


def _write_through(place: Path, content: bytes) -> None:
    with place.open("wb") as stream:
        stream.write(content)
        stream.flush()
        os.fsync(stream.fileno())
