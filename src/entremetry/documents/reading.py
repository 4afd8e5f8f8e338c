"""YAML text into plain data; what could harm or mislead is refused by name.

The events of the parser are read one by one, so that a bomb is met before it goes off.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

import yaml

from entremetry.documents.building import A_MAPPING, Builder
from entremetry.documents.keeping import kept
from entremetry.documents.parser_words import parser_words
from entremetry.documents.tree import Tree, copied
from entremetry.errors import DocumentError, Fault
from entremetry.words import decimal, say

LARGEST = 1_000_000
_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_CONTROL = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufeff\ufffe\uffff]"
)


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
        millions = decimal(f"{len(text) / 1e6:.1f}")
        found = say("{number} million characters", number=millions)
        raise _refused(file, None, found, say("at most 1 MB"))
    control = _CONTROL.search(text)
    if control:
        line = text.count("\n", 0, control.start()) + 1
        found = say("the control character {code}", code=f"U+{ord(control[0]):04X}")
        raise _refused(file, line, found, say("plain text"))
    if not text.strip():
        raise _refused(file, 1, say("an empty document"), say(A_MAPPING))


def _events(text: str, file: str) -> Iterator[yaml.Event]:
    """Yield the parser's events; a syntax error becomes one fault with its line."""
    try:
        yield from yaml.parse(text, Loader=_LOADER)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        problem = " ".join(parser_words(said) for said in (error.context, error.problem) if said)
        line = min(mark.line, text.rstrip().count("\n")) + 1 if mark else None
        raise _no_yaml(file, line, problem) from error
    except (yaml.YAMLError, UnicodeError, ValueError) as error:
        raise _no_yaml(file, None, str(error)) from error


def _no_yaml(file: str, line: int | None, problem: str) -> DocumentError:
    """Make an error of what the parser says, which is in its own words."""
    return _refused(file, line, say("no YAML: {problem}", problem=problem), say(A_MAPPING))


def _refused(file: str, line: int | None, found: str, accepted: str) -> DocumentError:
    """Make an error of one fault that concerns the whole document."""
    return DocumentError([Fault(file=file, line=line, field="", found=found, accepted=accepted)])
