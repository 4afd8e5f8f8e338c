"""A form with one file: read within limits, only with our own token, kept nowhere."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from typing import TypeAlias

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import UploadFile
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response

from entremetry.documents.saved_page import LARGEST_PAGE
from entremetry.web.forms import Form, require_token
from entremetry.web.protection import TooLarge, too_large
from entremetry.words import say

UPLOAD_TYPE = "multipart/form-data"
MOST_FIELDS = 10
LONGEST_FILE_NAME = 80


@dataclass(frozen=True, slots=True, kw_only=True)
class Upload:
    """Name of a file as a person may read it, and its bytes."""

    name: str
    content: bytes


UploadHandler: TypeAlias = Callable[[Request, Upload], Response]


def uploading(handler: UploadHandler) -> Callable[[Request], Awaitable[Response]]:
    """Make an endpoint of a handler that takes one file: form read, token checked."""

    async def endpoint(request: Request) -> Response:
        form, upload = await _read(request)
        require_token(request, form)
        return await run_in_threadpool(handler, request, upload)

    return endpoint


async def _read(request: Request) -> tuple[Form, Upload]:
    kind = request.headers.get("content-type", "").partition(";")[0].strip().casefold()
    if kind != UPLOAD_TYPE:
        raise HTTPException(415, say("A file is sent as {type}.", type=UPLOAD_TYPE))
    try:
        async with request.form(max_files=1, max_fields=MOST_FIELDS) as sent:
            fields = {name: value for name, value in sent.items() if isinstance(value, str)}
            files = [value for value in sent.values() if isinstance(value, UploadFile)]
            content = await files[0].read(LARGEST_PAGE + 1) if files else b""
            name = (files[0].filename or "") if files else ""
    except TooLarge:
        raise HTTPException(413, too_large(request.scope)) from None
    shown = "".join(sign for sign in name if sign.isprintable())[:LONGEST_FILE_NAME]
    return Form(fields), Upload(name=shown or say("the file"), content=content)
