"""Read a kitchen document and the moulds in it."""

from __future__ import annotations

from collections.abc import Callable

from entremetry.documents import Tree, at_current_version, kept, read_tree, validate
from entremetry.documents.tree import Path, field_text
from entremetry.errors import DocumentError, EntremetryError, Fault
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.kitchen.mould import Mould, mould
from entremetry.kitchen.shape_fault import shape_fault
from entremetry.words import say


def read_kitchen(text: str, *, file: str) -> KitchenDocument:
    """Read a kitchen document.

    Raises
    ------
    DocumentError
        With everything that is wrong in it.
    """
    return read_kitchen_with_lines(text, file=file)[0]


@kept
def read_kitchen_with_lines(text: str, file: str) -> tuple[KitchenDocument, Tree]:
    """Read a kitchen document and where each part of it stands; see `read_kitchen`."""
    tree = at_current_version(read_tree(text, file=file), key="entremetry_kitchen", file=file)
    return validate(KitchenDocument, tree, file=file), tree


def moulds_of(
    kitchen: KitchenDocument,
    *,
    file: str,
    read_mesh: Callable[[str], bytes],
    tree: Tree | None = None,
) -> dict[str, Mould]:
    """Make the moulds of a kitchen, by id; `tree` knows the lines of what is wrong.

    Raises
    ------
    DocumentError
        With every mould whose measures make no shape, and every id used twice.
    """
    made: dict[str, Mould] = {}
    faults: list[Fault] = []
    for index, document in enumerate(kitchen.moulds):
        path: Path = ("moulds", index)
        if document.id in made:
            found = say("the id '{id}' a second time", id=document.id)
            told = (found, say("an id of its own for each mould"))
            faults.append(_fault((*path, "id"), told, file, tree))
            continue
        try:
            made[document.id] = mould(document, read_mesh=read_mesh)
        except EntremetryError as error:
            faults.append(_fault((*path, "shape"), shape_fault(error), file, tree))
    if faults:
        raise DocumentError(faults)
    return made


def _fault(path: Path, told: tuple[str, str], file: str, tree: Tree | None) -> Fault:
    found, accepted = told
    line = tree.line(path) if tree is not None else None
    return Fault(file=file, line=line, field=field_text(path), found=found, accepted=accepted)
