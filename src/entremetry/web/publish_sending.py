"""Files of a publication as they are sent: one, or all in a ZIP."""

from __future__ import annotations

from collections.abc import Mapping
from io import BytesIO
from mimetypes import guess_type
from zipfile import ZIP_DEFLATED, ZipFile

from starlette.responses import Response


def zipped(files: Mapping[str, bytes]) -> bytes:
    """All files in one archive."""
    held = BytesIO()
    with ZipFile(held, "w", ZIP_DEFLATED) as archive:
        for name, content in files.items():
            archive.writestr(name, content)
    return held.getvalue()


def sent(content: bytes, name: str) -> Response:
    """One file, to be kept under its name."""
    headers = {"Content-Disposition": f'attachment; filename="{name}"'}
    kind = guess_type(name)[0] or "application/octet-stream"
    return Response(content, media_type=kind, headers=headers)
