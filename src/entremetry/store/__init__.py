"""Persistence: files that people name, and the library with its history."""

from entremetry.store.files import read_text, write_atomically
from entremetry.store.home import home_folder
from entremetry.store.opening import open_library
from entremetry.store.stored import Draft, Kind, Origin, Revision, StoredDocument
from entremetry.store.stored_plan import BenchEntry, Happening, KeptPlan

__all__ = [
    "BenchEntry",
    "Draft",
    "Happening",
    "KeptPlan",
    "Kind",
    "Origin",
    "Revision",
    "StoredDocument",
    "home_folder",
    "open_library",
    "read_text",
    "write_atomically",
]
