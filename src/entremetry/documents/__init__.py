"""Documents: YAML text into checked models, and edits that keep a person's text."""

from entremetry.documents.editing import edited, moved, removed, renamed, written
from entremetry.documents.keeping import kept
from entremetry.documents.reading import read_tree
from entremetry.documents.tree import Path, Tree, field_text
from entremetry.documents.validating import validate
from entremetry.documents.versions import Migration, at_current_version

__all__ = [
    "Migration",
    "Path",
    "Tree",
    "at_current_version",
    "edited",
    "field_text",
    "kept",
    "moved",
    "read_tree",
    "removed",
    "renamed",
    "validate",
    "written",
]
