"""What stands before every page: only this machine, only our own pages, nothing large."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from entremetry.documents.saved_page import LARGEST_PAGE
from entremetry.web.page_policy import PAGE_POLICY
from entremetry.words import decimal, say

LARGEST_BODY = 1_000_000
LARGEST_UPLOAD = LARGEST_PAGE + 10_000  # a saved page and the form around it
LARGEST_BACKUP = 200_000_000  # years of revisions, and not more than a disk has room for
UPLOAD = "/new/page"
RESTORE = "/safe/file"
LARGEST_AT: Mapping[str, int] = {UPLOAD: LARGEST_UPLOAD, RESTORE: LARGEST_BACKUP + 10_000}
NO_LENGTH = 10**18  # more than any address takes
NAMES = ("localhost", "127.0.0.1", "[::1]")
CHANGING = frozenset({"POST"})
ASKING = frozenset({"GET", "HEAD"})
OWN_PAGES = frozenset({"same-origin", "none"})
HEADERS: Mapping[str, str] = {
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "X-Frame-Options": "DENY",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=()",
}


class Protection:
    """Refuse foreign hosts, foreign pages and large bodies; add the headers of safety."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on, or refuse it."""
        if scope["type"] != "http":
            await self._lifespan(scope, receive, send)
            return
        refused = refusal(scope)
        answer: ASGIApp = refused or self.app
        await answer(scope, _counted(receive, largest_body(scope)), _with_headers(send))

    async def _lifespan(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "lifespan":
            await self.app(scope, receive, send)


class TooLarge(Exception):
    """A body went on beyond the limit."""


def refusal(scope: Scope) -> Response | None:
    """Return the answer to a request that is not let in, or None."""
    headers = Headers(scope=scope)
    places = allowed_hosts(scope)
    if len(headers.getlist("host")) != 1 or headers["host"].casefold() not in places:
        return _plain(say("This workbench answers only to this machine's own address."), 421)
    if scope["method"] not in CHANGING | ASKING:
        return _plain(say("Only GET, HEAD and POST are understood."), 405)
    if _is_foreign(headers, places, changing=scope["method"] in CHANGING):
        return _plain(say("Only the workbench's own pages may ask this."), 403)
    if _length(headers) > largest_body(scope):
        return _plain(too_large(scope), 413)
    return None


def allowed_hosts(scope: Scope) -> frozenset[str]:
    """Names under which this server may be asked, with the port it listens on."""
    server = scope.get("server")
    port = server[1] if server else None
    with_port = {f"{name}:{port}" for name in NAMES}
    return frozenset(with_port | set(NAMES) if port == 80 else with_port)


def _is_foreign(headers: Headers, places: Iterable[str], *, changing: bool) -> bool:
    origin = headers.get("origin")
    if origin is not None and origin.casefold() not in {f"http://{place}" for place in places}:
        return True
    site = headers.get("sec-fetch-site")
    return changing and site is not None and site not in OWN_PAGES


def _length(headers: Headers) -> int:
    text = headers.get("content-length", "0")
    return int(text) if text.isascii() and text.isdigit() else NO_LENGTH


def _plain(words: str, status: int) -> Response:
    return PlainTextResponse(words + "\n", status_code=status)


def largest_body(scope: Scope) -> int:
    """How many bytes an address takes: a saved page or a backup is larger than a form."""
    return LARGEST_AT.get(scope["path"], LARGEST_BODY)


def too_large(scope: Scope) -> str:
    """What a person reads whose request is larger than that."""
    size = decimal(f"{largest_body(scope) // 10_000 / 100:g}")
    return say("At most {size} MB can be sent at once.", size=size)


def _counted(receive: Receive, largest: int) -> Receive:
    taken = 0

    async def counting() -> Message:
        nonlocal taken
        message = await receive()
        taken += len(message.get("body", b""))
        if taken > largest:
            raise TooLarge
        return message

    return counting


def _with_headers(send: Send) -> Send:
    async def sending(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in HEADERS.items():
                headers.setdefault(name, value)
            headers.setdefault("Content-Security-Policy", PAGE_POLICY)
            headers.setdefault("Cache-Control", "no-store")
        await send(message)

    return sending
