"""Read a dessert document."""

from __future__ import annotations

from entremetry.dessert.document import DessertDocument
from entremetry.documents import Tree, at_current_version, kept, read_tree, validate


@kept
def read_dessert(text: str, file: str) -> tuple[DessertDocument, Tree]:
    """Read a dessert document and where each part of it stands.

    Raises
    ------
    DocumentError
        With everything that is wrong in its form.

    Notes
    -----
    The same text gives the same document and tree again: neither is ever changed.
    """
    tree = at_current_version(read_tree(text, file=file), key="entremetry", file=file)
    return validate(DessertDocument, tree, file=file), tree
