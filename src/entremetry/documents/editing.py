"""Change one part of a document and leave every other character as its author wrote it.

The change is made in the text itself, at the marks of the parser. Where that is not
possible (rare layouts), the whole text goes through a round trip that keeps comments
and order. Either way the result is read again and must say exactly what was asked for.
"""

from __future__ import annotations

from collections.abc import Callable, Collection
from typing import Any

from entremetry.documents.reading import read_tree
from entremetry.documents.rendering import block_lines
from entremetry.documents.splicing import spliced_in, spliced_name, spliced_order, spliced_out
from entremetry.documents.tree import Path, copied, field_text
from entremetry.errors import DocumentError, Fault
from entremetry.words import say

_FILE = "document"
_LONG = 4096
_MARK = "\ufeff"


def edited(text: str, path: Path, value: Any) -> str:
    """Set the part at `path`, which may be new; the same value leaves the text as it is."""
    return _with_unix_lines(text, lambda plain: _edited(plain, path, value))


def removed(text: str, path: Path) -> str:
    """Take the part at `path` out; raise DocumentError if it is not there."""
    return _with_unix_lines(text, lambda plain: _removed(plain, path))


def renamed(text: str, path: Path, name: str) -> str:
    """Give the part at `path` another name in its place; DocumentError if that is taken."""
    return _with_unix_lines(text, lambda plain: _renamed(plain, path, name))


def moved(text: str, path: Path, to: int) -> str:
    """Put an item of a list, or an entry of a mapping, at another place among its neighbours.

    `to` counts from 0; comments at the end of its lines go with it.

    Raises
    ------
    DocumentError
        If the part is not there, or there is no such place.
    """
    return _with_unix_lines(text, lambda plain: _moved(plain, path, to))


def _with_unix_lines(text: str, change: Callable[[str], str]) -> str:
    """Change a text without its byte order mark and carriage returns, then restore them."""
    mark = _MARK if text.startswith(_MARK) else ""
    windows = text.count("\r\n") == text.count("\n") > 0
    plain = text.removeprefix(mark)
    changed = change(plain.replace("\r\n", "\n") if windows else plain)
    return mark + (changed.replace("\n", "\r\n") if windows else changed)


def _edited(text: str, path: Path, value: Any) -> str:
    """Set a part of a text with plain line ends."""
    data = read_tree(text, file=_FILE).data
    wanted = _with(data, path, value)
    if _same(data, wanted):
        return text
    return _accepted(
        text, wanted, lambda: spliced_in(text, path, value), lambda root: _set(root, path, value)
    )


def _removed(text: str, path: Path) -> str:
    """Take a part out of a text with plain line ends."""
    wanted = read_tree(text, file=_FILE).data
    _delete(wanted, path)
    return _accepted(
        text, wanted, lambda: spliced_out(text, path), lambda root: _delete(root, path)
    )


def _renamed(text: str, path: Path, name: str) -> str:
    """Rename a part of a text with plain line ends."""
    wanted = read_tree(text, file=_FILE).data
    _rename(wanted, path, name)
    return _accepted(
        text, wanted, lambda: spliced_name(text, path, name), lambda root: _rename(root, path, name)
    )


def _moved(text: str, path: Path, to: int) -> str:
    """Move a part of a text with plain line ends."""
    data = read_tree(text, file=_FILE).data
    wanted = copied(data)
    _move(wanted, path, to)
    if _same(data, wanted):
        return text
    return _accepted(
        text, wanted, lambda: spliced_order(text, path, to), lambda root: _move(root, path, to)
    )


def written(data: dict[str, Any], *, block: Collection[str] = ("formula",)) -> str:
    """Write a new document; mappings under a key of `block` get a line for each entry."""
    text = "\n".join(block_lines(data, 0, block)) + "\n" if data else "{}\n"
    if not _same(read_tree(text, file=_FILE).data, data):
        accepted = say("texts, numbers, truths, lists, and mappings whose keys are texts")
        raise DocumentError([Fault(field="", found=say("no plain data"), accepted=accepted)])
    return text


def _accepted(
    text: str,
    wanted: dict[str, Any],
    splice: Callable[[], str | None],
    change: Callable[[Any], None],
) -> str:
    """Return the first result that reads back as what is wanted."""
    for attempt in (splice, lambda: _round_trip(text, change)):
        result = attempt()
        if result is not None and _says(result, wanted):
            return result
    found = say("a layout in which this part cannot be changed")
    raise DocumentError([Fault(field="", found=found, accepted=say("a change by hand"))])


def _says(text: str, wanted: dict[str, Any]) -> bool:
    """Tell whether a text reads as the wanted data, order included."""
    try:
        return _same(read_tree(text, file=_FILE).data, wanted)
    except DocumentError:
        return False


def _same(one: Any, other: Any) -> bool:
    """Compare plain data with its types and order: 1 is not true and not 1.0."""
    if isinstance(one, dict) and isinstance(other, dict):
        pairs = zip(one.items(), other.items(), strict=False)
        return len(one) == len(other) and all(
            key == name and _same(v, w) for (key, v), (name, w) in pairs
        )
    if isinstance(one, list) and isinstance(other, list | tuple):
        return len(one) == len(other) and all(map(_same, one, other))
    return type(one) is type(other) and bool(one == other)


def _round_trip(text: str, change: Callable[[Any], None]) -> str | None:
    """Load and write the whole text with its comments."""
    from io import StringIO

    from ruamel.yaml import YAML
    from ruamel.yaml.error import YAMLError

    yaml = YAML()
    yaml.preserve_quotes, yaml.width = True, _LONG
    yaml.indent(mapping=2, sequence=4, offset=2)
    stream = StringIO()
    try:
        root = yaml.load(text)
        change(root)
        yaml.dump(root, stream)
    except YAMLError:
        return None
    return stream.getvalue()


def _with(data: dict[str, Any], path: Path, value: Any) -> dict[str, Any]:
    """Return a copy of the data with the part set."""
    if not path:
        raise _no_part(path)
    there: dict[str, Any] = copied(data)
    _set(there, path, value)
    return there


def _set(root: Any, path: Path, value: Any) -> None:
    """Set a part; mappings on the way that are not there are made."""
    for part, following in zip(path, path[1:], strict=False):
        if isinstance(root, dict) and isinstance(part, str) and root.get(part) is None:
            root[part] = [] if following == 0 else {}
        root = _inside(root, part, path)
    last = path[-1]
    if isinstance(root, list) and last == len(root):
        root.append(value)
    elif isinstance(root, dict) and isinstance(last, str):
        root[last] = value
    else:
        _inside(root, last, path)
        root[last] = value


def _delete(root: Any, path: Path) -> None:
    """Take a part out."""
    if not path:
        raise _no_part(path)
    for part in path[:-1]:
        root = _inside(root, part, path)
    _inside(root, path[-1], path)
    del root[path[-1]]


def _move(root: Any, path: Path, to: int) -> None:
    """Move a part among its neighbours."""
    if not path:
        raise _no_part(path)
    for part in path[:-1]:
        root = _inside(root, part, path)
    last: Any = path[-1]
    _inside(root, last, path)
    if not 0 <= to < len(root):
        accepted = say("a place from 1 to {number}", number=len(root))
        raise DocumentError([Fault(field=field_text(path), found=f"{to + 1}", accepted=accepted)])
    if isinstance(root, list):
        root.insert(to, root.pop(last))
        return
    keys = [key for key in root if key != last]
    for key in [*keys[:to], last, *keys[to:]]:
        root[key] = root.pop(key)


def _rename(root: Any, path: Path, name: str) -> None:
    """Give a part another name; what stands behind it stays behind it."""
    if not path:
        raise _no_part(path)
    for part in path[:-1]:
        root = _inside(root, part, path)
    old = path[-1]
    _inside(root, old, path)
    if name in root and name != old:
        accepted = say("a name that is free in {field}", field=field_text(path[:-1]))
        raise DocumentError([Fault(field=field_text(path), found=name, accepted=accepted)])
    for key in list(root):
        root[name if key == old else key] = root.pop(key)


def _inside(root: Any, part: str | int, path: Path) -> Any:
    """Return the part of a mapping or list; raise DocumentError if it is not there."""
    if isinstance(root, dict) and part in root:
        return root[part]
    if isinstance(root, list) and isinstance(part, int) and 0 <= part < len(root):
        return root[part]
    raise _no_part(path)


def _no_part(path: Path) -> DocumentError:
    """Say that a path leads nowhere."""
    fault = Fault(
        field=field_text(path), found=say("no such part"), accepted=say("a part that is there")
    )
    return DocumentError([fault])
