"""Safe keeping: a backup to take away, and one to bring back in place of the library."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import ClassVar

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from entremetry.errors import StoreError
from entremetry.usecases.safe_keeping import Beside, Holding, bring_back, holding, look_into
from entremetry.web import safe_files
from entremetry.web.forms import Form
from entremetry.web.protection import LARGEST_BACKUP
from entremetry.web.rendering import rendered
from entremetry.web.safe_files import Aside
from entremetry.web.upload import Received
from entremetry.web.workbench import workbench_of
from entremetry.words import say

SAFE = "/safe"


@dataclass(frozen=True, slots=True, kw_only=True)
class SafePage:
    """Context of safe.html; `taken` is the file that the library before was set aside in."""

    template: ClassVar[str] = "safe.html"
    here: Holding
    asides: tuple[Aside, ...]
    folder: str
    largest: int
    taken: str = ""
    trouble: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class LookPage:
    """Context of safe_look.html: a backup beside the library, before anything is changed."""

    template: ClassVar[str] = "safe_look.html"
    key: str
    beside: Beside


def show_safe(request: Request) -> Response:
    """GET /safe"""
    return _page(request, taken=request.query_params.get("aside", ""))


def read_backup(request: Request, received: Received) -> Response:
    """POST /safe/file: take a file in, to be looked at."""
    home = _home(request)
    if received.stream is None:
        return _page(request, trouble=say("Choose a file first."))
    key = safe_files.bring(home, received.stream)
    return _to_look(request, key, received.name)


def read_aside(request: Request, form: Form) -> Response:
    """POST /safe/aside: look at a library that was set aside."""
    home, name = _home(request), form.line("name")
    with safe_files.aside(home, name).open("rb") as stream:
        key = safe_files.bring(home, stream)
    return _to_look(request, key, name)


def show_look(request: Request) -> Response:
    """GET /safe/look/{key}"""
    key = request.path_params["key"]
    place = safe_files.brought(_home(request), key)
    found = look_into(workbench_of(request).library, place, name=say("the file"))
    return rendered(request, LookPage(key=key, beside=found))


def take(request: Request, form: Form) -> Response:
    """POST /safe/look/{key}/take: put it in place of the library."""
    home, key = _home(request), request.path_params["key"]
    library, place = workbench_of(request).library, safe_files.brought(home, key)
    aside = safe_files.aside_file(home, library.clock())
    bring_back(library, place, name=say("the file"), aside=aside)
    safe_files.leave(home, key)
    return RedirectResponse(f"{SAFE}?aside={aside.name}", status_code=303)


def leave(request: Request, form: Form) -> Response:
    """POST /safe/look/{key}/leave: change nothing."""
    safe_files.leave(_home(request), request.path_params["key"])
    return RedirectResponse(SAFE, status_code=303)


def _to_look(request: Request, key: str, name: str) -> Response:
    home = _home(request)
    try:
        look_into(workbench_of(request).library, safe_files.brought(home, key), name=name)
    except StoreError as error:
        safe_files.leave(home, key)
        return _page(request, trouble=f"{error}.")
    return RedirectResponse(f"{SAFE}/look/{key}", status_code=303)


def _page(request: Request, *, taken: str = "", trouble: str = "") -> Response:
    home = _home(request)
    asides = safe_files.asides(home)
    page = SafePage(
        here=holding(workbench_of(request).library),
        asides=asides,
        folder=str(home / safe_files.FOLDER),
        largest=LARGEST_BACKUP // 1_000_000,
        taken=taken if taken in {each.name for each in asides} else "",
        trouble=trouble,
    )
    return rendered(request, page, status=422 if trouble else 200)


def _home(request: Request) -> Path:
    return Path(workbench_of(request).place)
