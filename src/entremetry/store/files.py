"""Read and write the files that people name, with one clear refusal for each fault."""

from __future__ import annotations

import os
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from entremetry.errors import StoreError
from entremetry.words import decimal, say, say_later

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
    with _told(say("the {what} in {place} cannot be read", what=say(what), place=place)):
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
    with _told(_unreadable(what, place)), place.open("rb") as stream:
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
        raise StoreError(say("{place} is a folder; name a file to write", place=place))
    with _told(say("{place} cannot be written", place=place)), _scratch_beside(place) as scratch:
        _write_through(scratch, content)
        scratch.replace(place)


def _refuse_what_is_no_file(place: Path, what: str, largest: int) -> None:
    with _told(_unreadable(what, place)):
        if place.is_dir():
            raise _no_file(say_later("{place} is a folder; a {what} is one text file"), place, what)
        if not place.exists():
            raise _no_file(
                say_later("there is no file {place}; a {what} was to be read from it"), place, what
            )
        if not place.is_file():
            raise _no_file(
                say_later("{place} is not a regular file; a {what} is one text file"), place, what
            )
        _refuse_large(place.stat().st_size, place, what, largest)


def _unreadable(what: str, place: Path) -> str:
    return say("the {what} {place} cannot be read", what=say(what), place=place)


def _no_file(message: str, place: Path, what: str) -> StoreError:
    return StoreError(say(message, place=place, what=say(what)))


def _refuse_large(size: int, place: Path, what: str, largest: int) -> None:
    if size > largest:
        raise StoreError(
            say(
                "{place} holds more than {size}, the most a {what} may have",
                place=place,
                size=decimal(f"{largest / 1e6:g} MB"),
                what=say(what),
            )
        )


def _decoded(content: bytes, place: Path, what: str) -> str:
    if b"\0" in content:
        at = content.index(b"\0") + 1
        raise StoreError(
            say(
                "{place} is not text: byte {at} is NUL; a {what} is UTF-8 text",
                place=place,
                at=at,
                what=say(what),
            )
        )
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        at = error.start + 1
        line = content.count(b"\n", 0, error.start) + 1
        raise StoreError(
            say(
                "{place} is not UTF-8 text: byte {at} (line {line}) is {byte}; "
                "save the {what} as UTF-8",
                place=place,
                at=at,
                line=line,
                byte=f"0x{content[error.start]:02x}",
                what=say(what),
            )
        ) from None


@contextmanager
def _told(message: str) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        why = error.strerror or error
        raise StoreError(say("{message}: {why}", message=message, why=why)) from error


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
