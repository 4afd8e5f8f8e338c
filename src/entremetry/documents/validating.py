"""Plain data into a model; every fault with its field, its line and what is accepted."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any, TypeVar

from entremetry.documents.known import known_keys
from entremetry.documents.tree import Path, Tree, field_text
from entremetry.documents.wording import Wording, wording
from entremetry.errors import DocumentError, Fault
from entremetry.words import say_as

if TYPE_CHECKING:
    from pydantic import BaseModel
    from pydantic_core import ErrorDetails

M = TypeVar("M", bound="BaseModel")


def validate(model: type[M], tree: Tree, *, file: str, context: object = None) -> M:
    """Make the model; raise DocumentError with all faults in the order of their lines."""
    from pydantic import ValidationError

    try:
        return model.model_validate(tree.data, context=context)
    except ValidationError as error:
        details = error.errors(include_url=False)
        raise DocumentError(_faults(model, tree, file, details)) from None


def _faults(
    model: type[BaseModel], tree: Tree, file: str, details: list[ErrorDetails]
) -> list[Fault]:
    """Turn the errors into faults: one for each field, sorted by line."""
    worded: dict[Path, list[Wording]] = {}
    for detail in details:
        path = _path(tree.data, detail)
        known = known_keys(model, detail["loc"], tree.data)
        worded.setdefault(path, []).append(wording(detail, known))
    faults = [
        _fault(tree, file, path, _told(wordings))
        for path, wordings in worded.items()
        if not _explained_deeper(path, wordings, worded)
    ]
    return sorted(faults, key=lambda fault: fault.line or 0)


def _path(data: Any, detail: ErrorDetails) -> Path:
    """Leave out of a location the names of union branches, which no reader wrote."""
    path: list[str | int] = []
    for place, part in enumerate(detail["loc"]):
        if _holds(data, part):
            path.append(part)
            data = data[part]
        elif detail["type"] == "missing" and place == len(detail["loc"]) - 1:
            path.append(part)
    return tuple(path)


def _holds(data: Any, part: str | int) -> bool:
    """Tell whether a mapping or list has this part."""
    if isinstance(data, dict):
        return part in data
    return isinstance(data, list) and isinstance(part, int) and part < len(data)


def _explained_deeper(path: Path, wordings: list[Wording], others: Iterable[Path]) -> bool:
    """Tell whether a fault only says 'no text', where faults inside the mapping say more."""
    only_type = all(each.about_type for each in wordings)
    return only_type and any(
        len(other) > len(path) and other[: len(path)] == path for other in others
    )


def _told(wordings: list[Wording]) -> Wording:
    """Join what several branches of a union say about one field."""
    telling = [each for each in wordings if not each.about_type] or wordings
    first = telling[0]
    accepted = tuple(dict.fromkeys(each.accepted for each in telling))
    return Wording(
        found=first.found,
        accepted=say_as("between two choices", " or ").join(accepted),
        nearest=first.nearest,
        about_type=False,
    )


def _fault(tree: Tree, file: str, path: Path, told: Wording) -> Fault:
    """Put a wording at its place."""
    return Fault(
        file=file,
        line=tree.line(path),
        field=field_text(path),
        found=told.found,
        accepted=told.accepted,
        nearest=told.nearest,
    )
