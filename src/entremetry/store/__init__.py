"""Persistence: files that people name, and the library with its history."""

from entremetry.store.files import read_text, write_atomically
from entremetry.store.home import home_folder
from entremetry.store.opening import open_library
from entremetry.store.stored import Draft, Kind, Origin, Revision, StoredDocument

__all__ = [
    "Draft",
    "Kind",
    "Origin",
    "Revision",
    "StoredDocument",
    "home_folder",
    "open_library",
    "read_text",
    "write_atomically",
]
