"""Run the command in this process and keep what it prints."""

from __future__ import annotations

import contextlib
import io
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any
from unittest.mock import patch

from entremetry.cli.app import main


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """Exit status and what was printed."""

    status: int
    out: str
    err: str


def entremetry(*arguments: object) -> Answer:
    """What `entremetry ARGUMENTS...` prints and with which status it ends."""
    out, err, status = io.StringIO(), io.StringIO(), 0
    words = ["entremetry", *map(str, arguments)]
    with (
        patch.object(sys, "argv", words),
        contextlib.redirect_stdout(out),
        contextlib.redirect_stderr(err),
    ):
        try:
            main()
        except SystemExit as end:
            status = int(end.code or 0)
    return Answer(status=status, out=out.getvalue(), err=err.getvalue())


def numbers(value: Any, key: str = "") -> Iterator[str]:
    """Keys under which a number stands."""
    if isinstance(value, dict):
        for name, inside in value.items():
            yield from numbers(inside, name)
    elif isinstance(value, list):
        for inside in value:
            yield from numbers(inside, key)
    elif isinstance(value, int | float) and not isinstance(value, bool):
        yield key
