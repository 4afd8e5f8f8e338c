"""Forms as they are sent: read within limits, and only with our own token."""

from __future__ import annotations

import hmac
from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass
from typing import TypeAlias

from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response

from entremetry.web.protection import TooLarge, too_large
from entremetry.words import say

FORM_TYPE = "application/x-www-form-urlencoded"
TOKEN_FIELD = "token"
MOST_FIELDS = 1000


@dataclass(frozen=True, slots=True)
class Form:
    """Fields of a form by name; each field has one text, the last that was sent."""

    fields: Mapping[str, str]

    def text(self, name: str) -> str:
        """Text of a field as it was sent, with line ends as we write them; empty if missing."""
        return self.fields.get(name, "").replace("\r\n", "\n")

    def line(self, name: str) -> str:
        """Text of a one-line field without the blanks around it."""
        return self.text(name).strip()

    def whole_number(self, name: str) -> int | None:
        """Whole number in a field, or None."""
        text = self.line(name)
        return int(text) if text.isascii() and text.isdigit() and len(text) <= 9 else None


def same(first: str, second: str) -> bool:
    """Compare two texts in a time that tells nothing about them."""
    return hmac.compare_digest(first.encode(), second.encode())


Handler: TypeAlias = Callable[[Request, Form], Response]


def posted(handler: Handler) -> Callable[[Request], Awaitable[Response]]:
    """Make an endpoint of a handler that changes something: form read, token checked."""

    async def endpoint(request: Request) -> Response:
        form = await read_form(request)
        require_token(request, form)
        return await run_in_threadpool(handler, request, form)

    return endpoint


def require_token(request: Request, form: Form) -> None:
    """Refuse a form that this workbench did not make; HTTPException."""
    if not same(form.text(TOKEN_FIELD), request.app.state.workbench.token):
        raise HTTPException(
            403,
            say(
                "This form is not from this workbench, or it is from an older run of it. "
                "Go back, reload the page, and send it again; what you typed is still there."
            ),
        )


async def read_form(request: Request) -> Form:
    """Fields of the form that came with a request; HTTPException if it is none."""
    kind = request.headers.get("content-type", "").partition(";")[0].strip().casefold()
    if kind != FORM_TYPE:
        raise HTTPException(415, say("A form is sent as {type}.", type=FORM_TYPE))
    try:
        async with request.form(max_fields=MOST_FIELDS) as sent:
            return Form({name: value for name, value in sent.items() if isinstance(value, str)})
    except TooLarge:
        raise HTTPException(413, too_large(request.scope)) from None
