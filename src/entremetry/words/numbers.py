"""Numbers with the signs of the language that is spoken."""

from __future__ import annotations

from entremetry.words.language import ENGLISH, current


def decimal(written: str) -> str:
    """A number written as `1234.5` or `1,234.5`, with the spoken language's signs.

    English keeps the comma of thousands as it is written; a page sets it as it likes.
    """
    spoken = current()
    if spoken is ENGLISH:
        return written
    signs = {ord(","): spoken.group, ord("."): spoken.decimal}
    return written.translate(signs)
