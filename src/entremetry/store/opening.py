"""Open the user's library, whichever database keeps it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from entremetry.store.home import home_folder, store_address

if TYPE_CHECKING:
    from entremetry.store.library import Library


def open_library(home: Path | None = None) -> Library:
    """Open the library, bring its tables up to date and load the demos it has not seen.

    Raises
    ------
    StoreError
        If the data folder or the database cannot be used.
    """
    from entremetry.store.database import open_database
    from entremetry.store.demo import demo_texts, load_demos
    from entremetry.store.library import Library

    library = Library(open_database(store_address(home_folder(home))))
    load_demos(library, demo_texts())
    return library
