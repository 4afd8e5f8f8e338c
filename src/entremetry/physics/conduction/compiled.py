"""The one place that knows the compiler."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar, cast

from numba import njit

Function = TypeVar("Function", bound=Callable[..., object])

# Not `fast`: that lets the compiler assume there is no NaN, and a step that ran away is accepted.
ALLOWED = {"contract", "reassoc", "arcp", "nsz"}


def compiled(function: Function) -> Function:
    """Compile a function to machine code, kept on disk, free of the interpreter lock."""
    return cast(
        Function, njit(cache=True, nogil=True, fastmath=ALLOWED, error_model="numpy")(function)
    )
