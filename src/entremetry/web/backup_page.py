"""The whole library as one file to keep elsewhere."""

from __future__ import annotations

import tempfile
from datetime import date
from pathlib import Path

from starlette.requests import Request
from starlette.responses import Response

from entremetry.web.workbench import workbench_of


def send_backup(request: Request) -> Response:
    """GET /backup: an SQLite file that opens as a library of its own."""
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder) / "library.sqlite"
        workbench_of(request).library.backup_to(place)
        content = place.read_bytes()
    name = f"entremetry-library-{date.today():%Y-%m-%d}.sqlite"
    return Response(
        content,
        media_type="application/vnd.sqlite3",
        headers={"Content-Disposition": f'attachment; filename="{name}"'},
    )
