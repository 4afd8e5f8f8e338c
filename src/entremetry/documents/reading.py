"""YAML text into plain data; what could harm or mislead is refused by name.

The events of the parser are read one by one, so that a bomb is met before it goes off.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

import yaml

from entremetry.documents.building import Builder
from entremetry.documents.keeping import kept
from entremetry.documents.tree import Tree, copied
from entremetry.errors import DocumentError, Fault

LARGEST = 1_000_000
_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_CONTROL = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufeff\ufffe\uffff]"
)
_MAPPING = "one YAML mapping, such as 'name: Pear log'"


def read_tree(text: str, *, file: str) -> Tree:
    """Read one document; raise DocumentError with everything that is wrong in it.

    The data are the caller's own, to be changed at will.
    """
    tree = _tree(text, file=file)
    return Tree(data=copied(tree.data), lines=tree.lines)


@kept
def _tree(text: str, file: str) -> Tree:
    """Read one document; the same text gives the same tree."""
    text = text.removeprefix("\ufeff")
    _require_plain_text(text, file)
    builder = Builder(file)
    for event in _events(text, file):
        builder.take(event)
    return builder.tree()


def _require_plain_text(text: str, file: str) -> None:
    """Refuse a text that is too large, empty, or holds control characters."""
    if len(text) > LARGEST or len(text.encode("utf-8", "replace")) > LARGEST:
        raise _refused(file, None, f"{len(text) / 1e6:.1f} million characters", "at most 1 MB")
    control = _CONTROL.search(text)
    if control:
        line = text.count("\n", 0, control.start()) + 1
        found = f"the control character U+{ord(control[0]):04X}"
        raise _refused(file, line, found, "plain text")
    if not text.strip():
        raise _refused(file, 1, "an empty document", _MAPPING)


def _events(text: str, file: str) -> Iterator[yaml.Event]:
    """Yield the parser's events; a syntax error becomes one fault with its line."""
    try:
        yield from yaml.parse(text, Loader=_LOADER)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        problem = " ".join(filter(None, (error.context, error.problem)))
        line = min(mark.line, text.rstrip().count("\n")) + 1 if mark else None
        raise _refused(file, line, f"no YAML: {problem}", _MAPPING) from error
    except (yaml.YAMLError, UnicodeError, ValueError) as error:
        raise _refused(file, None, f"no YAML: {error}", _MAPPING) from error


def _refused(file: str, line: int | None, found: str, accepted: str) -> DocumentError:
    """Make an error of one fault that concerns the whole document."""
    return DocumentError([Fault(file=file, line=line, field="", found=found, accepted=accepted)])
