"""The place of a part of a document as a form sends it: components/mousse/method/#2/time."""

from __future__ import annotations

from entremetry.documents import Path
from entremetry.errors import QuantityError

LONGEST = 400


def address_of(path: Path) -> str:
    """A path as text; numbers of items bear a sign, since a component may be called 2."""
    return "/".join(f"#{part}" if isinstance(part, int) else part for part in path)


def path_at(address: str) -> Path:
    """The path of an address.

    Raises
    ------
    QuantityError
        If it is none.
    """
    parts = address.split("/")
    if not address or len(address) > LONGEST or not all(parts):
        raise QuantityError(f"'{address[:60]}'", "the place of a part of the dessert")
    return tuple(_part(part) for part in parts)


def _part(text: str) -> str | int:
    number = text.removeprefix("#")
    if text.startswith("#") and number.isascii() and number.isdigit() and len(number) <= 4:
        return int(number)
    return text
