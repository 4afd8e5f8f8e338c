"""Read a kitchen document and the moulds in it."""

from __future__ import annotations

from collections.abc import Callable

from entremetry.documents import at_current_version, read_tree, validate
from entremetry.errors import DocumentError, EntremetryError, Fault
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.kitchen.mould import Mould, mould


def read_kitchen(text: str, *, file: str) -> KitchenDocument:
    """Read a kitchen document.

    Raises
    ------
    DocumentError
        With everything that is wrong in it.
    """
    tree = at_current_version(read_tree(text, file=file), key="entremetry_kitchen", file=file)
    return validate(KitchenDocument, tree, file=file)


def moulds_of(
    kitchen: KitchenDocument, *, file: str, read_mesh: Callable[[str], bytes]
) -> dict[str, Mould]:
    """Make the moulds of a kitchen, by id.

    Raises
    ------
    DocumentError
        With every mould whose measures make no shape, and every id used twice.
    """
    made: dict[str, Mould] = {}
    faults: list[Fault] = []
    for index, document in enumerate(kitchen.moulds):
        field = f"moulds[{index + 1}]"
        if document.id in made:
            accepted = "an id of its own for each mould"
            faults.append(Fault(file=file, field=field, found=document.id, accepted=accepted))
            continue
        try:
            made[document.id] = mould(document, read_mesh=read_mesh)
        except EntremetryError as error:
            accepted = "measures that make a shape"
            faults.append(Fault(file=file, field=field, found=str(error), accepted=accepted))
    if faults:
        raise DocumentError(faults)
    return made
