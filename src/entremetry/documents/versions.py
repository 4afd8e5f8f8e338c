"""The version of a document: older ones are lifted, newer ones refused clearly."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from entremetry.documents.tree import Tree, shown
from entremetry.errors import DocumentError, Fault
from entremetry.words import say

Migration = Callable[[dict[str, Any]], dict[str, Any]]


def at_current_version(
    tree: Tree, *, key: str, file: str, migrations: tuple[Migration, ...] = ()
) -> Tree:
    """Return the tree as the current version writes it; raise DocumentError if it cannot be.

    The n-th migration lifts version n to n + 1, so the current version is one more
    than there are migrations.
    """
    current = len(migrations) + 1
    version = tree.data.get(key)
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        accepted = say(
            "a first line '{key}: {version}', the version of the format", key=key, version=current
        )
        raise _refused(tree, key, file, shown(version), accepted)
    if version > current:
        found = say("version {version}, made by a newer program", version=version)
        accepted = say("version 1 to {version}", version=current) if current > 1 else "1"
        raise _refused(tree, key, file, found, accepted)
    data = tree.data
    for migration in migrations[version - 1 :]:
        data = migration(data)
    return Tree(data=data, lines=tree.lines)


def _refused(tree: Tree, key: str, file: str, found: str, accepted: str) -> DocumentError:
    """Make an error about the version."""
    line = tree.line((key,))
    return DocumentError([Fault(file=file, line=line, field=key, found=found, accepted=accepted)])
