"""Read an STL file that a document names, from the document's own folder only."""

from __future__ import annotations

from pathlib import Path, PurePosixPath

from entremetry.errors import StoreError
from entremetry.words import decimal, say

LARGEST = 20_000_000


def read_mesh_beside(folder: Path, name: str) -> bytes:
    """Bytes of an STL file in `folder`.

    Raises
    ------
    StoreError
        If the name leaves the folder, or there is no such file, or it is too large.
    """
    asked = PurePosixPath(name)
    if asked.is_absolute() or ".." in asked.parts or asked.suffix.casefold() != ".stl":
        raise StoreError(
            say("the mesh '{name}' must be an .stl file in the folder of its document", name=name)
        )
    place = folder / asked
    try:
        if place.stat().st_size > LARGEST:
            raise StoreError(
                say(
                    "{place} holds more than {size}; use a coarser mesh",
                    place=place,
                    size=decimal(f"{LARGEST / 1e6:g} MB"),
                )
            )
        return place.read_bytes()
    except OSError as error:
        why = error.strerror or error
        raise StoreError(
            say("the mesh {place} cannot be read: {why}", place=place, why=why)
        ) from error
