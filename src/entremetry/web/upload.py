"""A form with one file: read within limits, only with our own token, kept nowhere."""

from __future__ import annotations

from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager
from dataclasses import dataclass
from typing import BinaryIO, TypeAlias

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData, UploadFile
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response

from entremetry.documents.saved_page import LARGEST_PAGE
from entremetry.errors import StoreError
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Received:
    """Name of a file that may be too large to hold, and its bytes, if one was sent."""

    name: str
    stream: BinaryIO | None


UploadHandler: TypeAlias = Callable[[Request, Upload], Response]
ReceivedHandler: TypeAlias = Callable[[Request, Received], Response]


def uploading(handler: UploadHandler) -> Callable[[Request], Awaitable[Response]]:
    """Make an endpoint of a handler that takes one small file: form read, token checked."""

    async def endpoint(request: Request) -> Response:
        async with _sent(request) as file:
            content = await file.read(LARGEST_PAGE + 1) if file else b""
        return await run_in_threadpool(handler, request, Upload(name=_name(file), content=content))

    return endpoint


def receiving(handler: ReceivedHandler) -> Callable[[Request], Awaitable[Response]]:
    """Make an endpoint of a handler that takes one large file, which it reads as a stream."""

    async def endpoint(request: Request) -> Response:
        async with _sent(request) as file:
            received = Received(name=_name(file), stream=file.file if file else None)
            return await run_in_threadpool(handler, request, received)

    return endpoint


@asynccontextmanager
async def _sent(request: Request) -> AsyncIterator[UploadFile | None]:
    """The file of a form that bears our token; it is gone after the block."""
    kind = request.headers.get("content-type", "").partition(";")[0].strip().casefold()
    if kind != UPLOAD_TYPE:
        raise HTTPException(415, say("A file is sent as {type}.", type=UPLOAD_TYPE))
    async with _form(request) as sent:
        fields = {name: value for name, value in sent.items() if isinstance(value, str)}
        require_token(request, Form(fields))
        files = (value for value in sent.values() if isinstance(value, UploadFile))
        yield next(files, None)


@asynccontextmanager
async def _form(request: Request) -> AsyncIterator[FormData]:
    try:
        sent = await request.form(max_files=1, max_fields=MOST_FIELDS)
    except TooLarge:
        raise HTTPException(413, too_large(request.scope)) from None
    except OSError as error:
        why = error.strerror or str(error)
        raise StoreError(say("the file cannot be taken in: {why}", why=why)) from error
    try:
        yield sent
    finally:
        await request.close()


def _name(file: UploadFile | None) -> str:
    name = (file.filename or "") if file else ""
    shown = "".join(sign for sign in name if sign.isprintable())[:LONGEST_FILE_NAME]
    return shown or say("the file")
