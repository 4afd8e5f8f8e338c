"""What a browser needs to install the workbench as a program of its own."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from entremetry.web.assets import address
from entremetry.web.rendering import PAPER
from entremetry.words import current, say

MANIFEST = "/app.webmanifest"
ICONS = (
    ("mark.svg", "any", "image/svg+xml", "any"),
    ("icon-192.png", "192x192", "image/png", "any"),
    ("icon-512.png", "512x512", "image/png", "any"),
    ("icon-cut-512.png", "512x512", "image/png", "maskable"),
)
"""Our icons: file, sizes, type, and whether a system may cut it to a shape of its own."""


def send_manifest(request: Request) -> Response:
    """GET /app.webmanifest"""
    return JSONResponse(manifest(), media_type="application/manifest+json")


def manifest() -> dict[str, object]:
    """The workbench as the W3C's Web Application Manifest describes a program."""
    return {
        "id": "/",
        "name": "Entremetry",
        "short_name": "Entremetry",
        "description": say("A workbench for moulded, layered, frozen-set desserts"),
        "lang": current().code,
        "start_url": "/",
        "scope": "/",
        "display": "standalone",
        "background_color": PAPER[0],
        "theme_color": PAPER[0],
        "icons": [_icon(*icon) for icon in ICONS],
    }


def _icon(name: str, sizes: str, kind: str, purpose: str) -> dict[str, str]:
    return {"src": address(name), "sizes": sizes, "type": kind, "purpose": purpose}
