"""Read a text once: what was read of it is kept while it is asked for again."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache, wraps
from typing import Protocol, TypeVar

from entremetry.errors import DocumentError

KEPT = 64
LONGEST_KEPT = 100_000  # characters; a longer text is read anew each time

T_co = TypeVar("T_co", covariant=True)
T = TypeVar("T")


class Reading(Protocol[T_co]):
    """Reads a text; `file` is what its faults call it."""

    def __call__(self, text: str, *, file: str) -> T_co:
        """Read a text; DocumentError with everything that is wrong in it."""
        ...


def kept(read: Callable[[str, str], T]) -> Reading[T]:
    """Keep what is read of the last texts, whatever their files are called.

    Whoever asks gets the same object, so it must be one that nobody changes. What is refused is
    not kept.
    """
    of_text = lru_cache(maxsize=KEPT)(lambda text: read(text, ""))

    @wraps(read)
    def reading(text: str, *, file: str) -> T:
        if len(text) > LONGEST_KEPT:
            return read(text, file)
        try:
            return of_text(text)
        except DocumentError as error:
            raise DocumentError(replace(fault, file=file) for fault in error.faults) from error

    return reading
