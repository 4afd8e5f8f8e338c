"""Which language a page speaks: the one that was chosen, else what the browser asks for."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache, wraps
from http.cookies import CookieError, SimpleCookie
from typing import Any, ParamSpec, TypeVar, cast
from urllib.parse import urlsplit

from starlette.datastructures import Headers
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.types import ASGIApp, Receive, Scope, Send

from entremetry.web.forms import Form
from entremetry.words import ENGLISH, current, language, languages, say, speaking

P = ParamSpec("P")
R = TypeVar("R")
COOKIE = "language"
TEN_YEARS = 10 * 365 * 24 * 3600  # s
MOST_WISHES = 20


class Speech:
    """Answers each request in its language."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on, with its language spoken until it is answered."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        with speaking(wanted(Headers(scope=scope))):
            await self.app(scope, receive, send)


def wanted(headers: Headers) -> str:
    """Code of the language of a request: chosen before, else the browser's first that we have."""
    chosen = _cookie(headers.get("cookie", ""))
    if chosen in languages():
        return chosen
    return next((code for code in _wishes(headers) if code in languages()), ENGLISH.code)


def choose(request: Request, form: Form) -> Response:
    """POST /language: keep the choice, and go back to where it was made."""
    code = form.line("language")
    if code not in languages():
        raise HTTPException(422, say("There is no language '{code}' here.", code=code[:20]))
    answer = RedirectResponse(_before(request), status_code=303)
    answer.set_cookie(COOKIE, code, max_age=TEN_YEARS, httponly=True, samesite="lax")
    return answer


def others() -> tuple[tuple[str, str], ...]:
    """Code and own name of every language but the one that is spoken."""
    known = (language(code) for code in languages())
    return tuple((each.code, each.name) for each in known if each is not current())


def kept_by_language(most: int) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Decorate a function so that its last answers are kept, for each language by themselves."""

    def decorated(function: Callable[P, R]) -> Callable[P, R]:
        def in_language(_code: str, *asked: Any, **named: Any) -> R:
            return function(*asked, **named)

        found: Any = lru_cache(maxsize=most)(in_language)

        @wraps(function)
        def answered(*asked: P.args, **named: P.kwargs) -> R:
            return cast(R, found(current().code, *asked, **named))

        return answered

    return decorated


def _cookie(header: str) -> str:
    try:
        found = SimpleCookie(header).get(COOKIE)
    except CookieError:
        return ""
    return found.value if found else ""


def _wishes(headers: Headers) -> list[str]:
    """Codes a browser asks for, the dearest first; a region is left out."""
    parts = headers.get("accept-language", "").split(",")[:MOST_WISHES]
    weighed = [(_weight(part), part.partition(";")[0].strip().casefold()) for part in parts]
    ordered = sorted((wish for wish in weighed if wish[0] > 0.0), key=lambda wish: -wish[0])
    return [code.partition("-")[0] for _, code in ordered]


def _weight(part: str) -> float:
    """Quality of a wish, `fr;q=0.8`; 0 of one that cannot be read (RFC 9110, 12.4.2)."""
    text = part.partition(";")[2].strip().removeprefix("q=") or "1"
    return float(text) if text.replace(".", "", 1).isdigit() and text.isascii() else 0.0


def _before(request: Request) -> str:
    """Address of our page that a form was sent from; the first page if it is not known."""
    try:
        came = urlsplit(request.headers.get("referer", ""))
    except ValueError:
        return "/"
    if came.netloc != request.url.netloc or not came.path.startswith("/"):
        return "/"
    path = "/" + came.path.lstrip("/")
    return f"{path}?{came.query}" if came.query else path
