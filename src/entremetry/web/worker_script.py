"""Scripts of workers: what they are told, what all of them share, and the part of each."""

from __future__ import annotations

import json

from starlette.responses import Response

from entremetry.web.assets import FOLDER

SHARED = "worker_keeping.js"


def worker_script(name: str, *, scope: str = "/", **told: object) -> Response:
    """One script for a browser, which asks each time whether it changed."""
    head = (f"const {each} = {json.dumps(value)};\n" for each, value in told.items())
    parts = ((FOLDER / part).read_text(encoding="utf-8") for part in (SHARED, name))
    headers = {"Service-Worker-Allowed": scope, "Cache-Control": "no-cache"}
    script = "".join((*head, *parts))
    return Response(script, media_type="text/javascript; charset=utf-8", headers=headers)
