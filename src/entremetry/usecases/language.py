"""The language that a use case is asked for."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from entremetry.errors import QuantityError
from entremetry.words import Language, languages, say, speaking


@contextmanager
def in_language(code: str) -> Iterator[Language]:
    """Speak a language until the block ends.

    Raises
    ------
    QuantityError
        If there is no such language; it says which there are.
    """
    if code not in languages():
        raise QuantityError(
            say("the language '{code}'", code=code),
            say("one of: {names}", names=", ".join(languages())),
        )
    with speaking(code) as spoken:
        yield spoken
