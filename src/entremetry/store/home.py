"""Where the user's own data lie."""

from __future__ import annotations

import os
from pathlib import Path

from entremetry.errors import StoreError
from entremetry.words import say

HOME_SETTING = "ENTREMETRY_HOME"
STORE_SETTING = "ENTREMETRY_STORE"


def home_folder(home: Path | None = None) -> Path:
    """Return the data folder, made if missing: as asked, by setting, or the system's own.

    Raises
    ------
    StoreError
        If it cannot be made.
    """
    folder = home or _by_setting() or _by_system()
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise StoreError(
            say(
                "the data folder {folder} cannot be made: {why}; name another one in {setting}",
                folder=folder,
                why=error.strerror or error,
                setting=HOME_SETTING,
            )
        ) from error
    return folder


def store_address(home: Path) -> str | Path:
    """Address in ENTREMETRY_STORE, or the SQLite file in the data folder."""
    return os.environ.get(STORE_SETTING, "").strip() or home / "library.sqlite"


def _by_setting() -> Path | None:
    setting = os.environ.get(HOME_SETTING, "").strip()
    return Path(setting).expanduser() if setting else None


def _by_system() -> Path:
    from platformdirs import user_data_path

    return user_data_path("entremetry", appauthor=False)
