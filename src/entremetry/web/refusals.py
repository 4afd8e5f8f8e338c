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
from entremetry.web.speech import wanted
from entremetry.words import say, say_later, speaking

HEADINGS = {
    403: say_later("Not from here"),
    404: say_later("Not found"),
    405: say_later("Not this way"),
    409: say_later("It was changed meanwhile"),
    410: say_later("No longer here"),
    413: say_later("Too large"),
    415: say_later("Not a form"),
    422: say_later("This does not work"),
    500: say_later("Something broke"),
}
ADDRESSED = ("dessert", "ingredient", "plan", "revision")
ROUTED = {
    404: say_later("There is no page at this address."),
    405: say_later("Method Not Allowed"),
}
"""What is said where the framework refuses an address by itself, in English."""
BROKEN = say_later("This should not have happened. Nothing was changed; what is saved is safe.")


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
    routed = ROUTED.get(error.status_code)
    words = say(routed) if routed else error.detail
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
    with speaking(wanted(request.headers)):  # whoever answers a fault stands outside of all else
        return _refused(request, 500, say(BROKEN))


def _refused(
    request: Request, status: int, words: str, nearest: tuple[str, ...] = ()
) -> HTMLResponse:
    heading = say(HEADINGS.get(status, say_later("Refused")))
    page = ErrorPage(heading=heading, words=words, nearest=nearest)
    return rendered(request, page, status=status)


HANDLERS = {
    HTTPException: on_http,
    EntremetryError: on_refusal,
    TooLarge: on_too_large,
    Exception: on_fault,
}
