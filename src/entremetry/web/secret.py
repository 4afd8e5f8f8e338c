"""The secret of this installation, from which the anti-forgery token is made."""

from __future__ import annotations

import hashlib
import hmac
import os
import secrets
from pathlib import Path

from entremetry.errors import StoreError

FILE = "workbench-secret"


def token(home: Path) -> str:
    """Anti-forgery token; the same after a restart, so that an open page can still be sent."""
    return hmac.new(secret(home), b"form", hashlib.sha256).hexdigest()


def secret(home: Path) -> bytes:
    """Read the secret of this installation; make one, readable by its owner only, if missing."""
    place = home / FILE
    try:
        _make(place)
        kept = place.read_bytes()
    except OSError as error:
        raise StoreError(f"{place} cannot be kept: {error.strerror or error}") from error
    if len(kept) < 32:
        raise StoreError(f"{place} is damaged; delete it and start the workbench again")
    return kept


def _make(place: Path) -> None:
    if place.exists():
        return
    scratch = place.with_name(f"{FILE}.{secrets.token_hex(8)}")
    handle = os.open(scratch, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    with os.fdopen(handle, "wb") as stream:
        stream.write(secrets.token_bytes(32))
    try:
        os.link(scratch, place)
    except FileExistsError:
        pass
    finally:
        scratch.unlink()
