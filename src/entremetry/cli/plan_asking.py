"""What the options of `plan` ask for."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from entremetry.errors import QuantityError, UnknownName

if TYPE_CHECKING:
    from entremetry.usecases.plans import Course


def courses(
    files: Sequence[Path], serve: Sequence[str], pieces: Sequence[str]
) -> tuple[list[Course], str]:
    """The desserts with their pieces and hours, and the hour of all.

    Raises
    ------
    EntremetryError
        If a document is refused, an id is no dessert's, a number is none or an hour is missing.
    """
    from entremetry.store.files import read_text
    from entremetry.usecases.plans import Course

    texts = [read_text(path, what="dessert document") for path in files]
    ids = [_id(text, path) for text, path in zip(texts, files, strict=True)]
    counts = {id_: whole_number(text) for id_, text in _by_dessert(pieces, ids, "pieces").items()}
    hours = _by_dessert(serve, ids, "serve")
    missing = [id_ for id_ in ids if id_ not in hours]
    if missing:
        raise QuantityError(
            f"no hour of service for '{missing[0]}'", "--serve WHEN, or --serve ID=WHEN for each"
        )
    made = [
        Course(text=text, file=str(path), pieces=counts.get(id_), serve=hours[id_])
        for text, path, id_ in zip(texts, files, ids, strict=True)
    ]
    return made, hours[ids[0]]


def _id(text: str, path: Path) -> str:
    from entremetry.dessert import read_dessert

    document, _ = read_dessert(text, file=str(path))
    return document.id


def _by_dessert(texts: Sequence[str], ids: Sequence[str], option: str) -> dict[str, str]:
    """Values by dessert; one without an id is that of every dessert that has none of its own."""
    own: dict[str, str] = {}
    general: list[str] = []
    for text in texts:
        name, equals, value = (part.strip() for part in text.partition("="))
        if not equals:
            general.append(name)
        elif name not in ids:
            raise UnknownName("dessert of this menu", name, ids)
        else:
            own[name] = value
    if len(general) > 1:
        raise QuantityError(
            f"--{option} {general[0]} and --{option} {general[1]}",
            f"one, or --{option} ID=... each",
        )
    return {**(dict.fromkeys(ids, general[0]) if general else {}), **own}


def whole_number(text: str) -> int:
    """A whole number above 0; QuantityError if a text is none."""
    if not (text.isascii() and text.isdigit() and int(text) > 0):
        raise QuantityError(f"'{text}'", "a whole number above 0, such as 8")
    return int(text)
