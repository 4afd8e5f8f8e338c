"""What all pages share while the workbench runs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, cast

from starlette.requests import Request

if TYPE_CHECKING:
    from entremetry.store.library import Library


@dataclass(frozen=True, slots=True, kw_only=True)
class Workbench:
    """The open library, the token that our own forms bear, and where the data lie."""

    library: Library
    token: str
    place: str


def workbench_of(request: Request) -> Workbench:
    """Return the workbench that a request came to."""
    return cast(Workbench, request.app.state.workbench)
