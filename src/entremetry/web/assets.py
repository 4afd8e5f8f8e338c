"""Our static files under addresses that change with their content."""

from __future__ import annotations

import hashlib
from functools import cache
from pathlib import Path

from starlette.responses import Response
from starlette.staticfiles import StaticFiles
from starlette.types import Scope

FOLDER = Path(__file__).parent / "static"
FOREVER = "public, max-age=31536000, immutable"


@cache
def address(name: str) -> str:
    """Address of a static file, with a mark of its content."""
    mark = hashlib.sha256((FOLDER / name).read_bytes()).hexdigest()[:10]
    return f"/static/{name}?v={mark}"


class Static(StaticFiles):
    """Static files; a browser keeps for good what bears our mark or, in vendor/, its version."""

    def __init__(self) -> None:
        super().__init__(directory=FOLDER)

    async def get_response(self, path: str, scope: Scope) -> Response:
        """Answer with a file, its charset, and how long it may be kept."""
        response = await super().get_response(path, scope)
        if response.status_code == 200:
            marked = scope.get("query_string", b"").startswith(b"v=")
            kept = marked or path.startswith("vendor/")
            response.headers["Cache-Control"] = FOREVER if kept else "no-cache"
        return response
