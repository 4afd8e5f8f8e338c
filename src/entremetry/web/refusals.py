"""What a person reads when something is not there or does not work."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response

from entremetry.errors import Conflict, EntremetryError, UnknownName
from entremetry.web.protection import TooLarge, too_large
from entremetry.web.rendering import rendered

HEADINGS = {
    403: "Not from here",
    404: "Not found",
    405: "Not this way",
    409: "It was changed meanwhile",
    410: "No longer here",
    413: "Too large",
    415: "Not a form",
    422: "This does not work",
    500: "Something broke",
}
ADDRESSED = ("dessert", "ingredient", "plan", "revision")
NOT_FOUND = "There is no page at this address."
BROKEN = "This should not have happened. Nothing was changed; what is saved is safe."


@dataclass(frozen=True, slots=True, kw_only=True)
class ErrorPage:
    """Context of error.html."""

    template: ClassVar[str] = "error.html"
    heading: str
    words: str
    nearest: tuple[str, ...]


def on_http(request: Request, error: Exception) -> Response:
    """Answer to an address or a form that is not right."""
    if not isinstance(error, HTTPException):
        raise error
    words = NOT_FOUND if error.status_code == 404 else error.detail
    return _refused(request, error.status_code, words)


def on_refusal(request: Request, error: Exception) -> Response:
    """Answer to what the program refuses, in its own words."""
    if isinstance(error, UnknownName) and error.thing.startswith(ADDRESSED):
        nearest = error.nearest if error.thing == "dessert" else ()
        return _refused(request, 404, f"{error}.", nearest)
    if not isinstance(error, EntremetryError):
        raise error
    return _refused(request, 409 if isinstance(error, Conflict) else 422, f"{error}.")


def on_too_large(request: Request, error: Exception) -> Response:
    """Answer to a body that goes on beyond the limit."""
    return _refused(request, 413, too_large(request.scope))


def on_fault(request: Request, error: Exception) -> Response:
    """Answer to a fault of ours; the server prints the traceback for whoever runs it."""
    return _refused(request, 500, BROKEN)


def _refused(
    request: Request, status: int, words: str, nearest: tuple[str, ...] = ()
) -> HTMLResponse:
    page = ErrorPage(heading=HEADINGS.get(status, "Refused"), words=words, nearest=nearest)
    return rendered(request, page, status=status)


HANDLERS = {
    HTTPException: on_http,
    EntremetryError: on_refusal,
    TooLarge: on_too_large,
    Exception: on_fault,
}
