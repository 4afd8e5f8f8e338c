"""Read an STL file that a document names, from the document's own folder only."""

from __future__ import annotations

from pathlib import Path, PurePosixPath

from entremetry.errors import StoreError

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
        raise StoreError(f"the mesh '{name}' must be an .stl file in the folder of its document")
    place = folder / asked
    try:
        if place.stat().st_size > LARGEST:
            raise StoreError(f"{place} holds more than {LARGEST / 1e6:g} MB; use a coarser mesh")
        return place.read_bytes()
    except OSError as error:
        raise StoreError(f"the mesh {place} cannot be read: {error.strerror or error}") from error
