"""Why a drafted method cannot be followed."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Any

from pydantic import TypeAdapter, ValidationError

from entremetry.errors import DocumentError
from entremetry.method.route import route
from entremetry.method.step import AnyStep, Step


@cache
def _reader() -> TypeAdapter[list[AnyStep]]:
    return TypeAdapter(list[Step])


def trouble(lines: Sequence[str], steps: Sequence[dict[str, Any]]) -> str | None:
    """Why a method cannot be followed; None if it can."""
    try:
        read = _reader().validate_python(list(steps))
        route(lines, read, component="")
    except ValidationError as error:
        return str(error.errors()[0]["msg"])
    except DocumentError as error:
        return "; ".join(f"{fault.found}" for fault in error.faults)
    return None
