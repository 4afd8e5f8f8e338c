"""The structured data in a saved page (schema_org_30): JSON-LD and microdata, as plain objects.

Nothing is fetched: a context is not looked up, an image or a script is never followed.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from itertools import islice
from typing import Any

from entremetry.errors import DocumentError, Fault
from entremetry.words import decimal, say

LARGEST_PAGE = 5_000_000
"""Characters of a page that is read."""
DEEPEST = 64
"""Levels of objects within objects; a recipe needs about six."""
MOST_NODES = 20_000
"""Objects and lists of structured data that are looked at."""
MOST_NAMES = 8
"""Properties that one element may state."""
MOST_INNER = 2_000
"""Elements inside one property whose words are taken; an ellipsis stands for the rest."""
SCHEMA = ("https://schema.org/", "http://schema.org/", "schema:")
_JSON_LD = "application/ld+json"


def typed_nodes(text: str, *, wanted: str, file: str) -> tuple[dict[str, Any], ...]:
    """Every object of a type in a page or in bare JSON, in the order in which they stand.

    Raises
    ------
    DocumentError
        If the text is longer than a page may be, or what it holds cannot be read: not JSON,
        nested too deeply, too many objects.
    """
    if len(text) > LARGEST_PAGE:
        found = say("{number} characters", number=len(text))
        most = decimal(f"{LARGEST_PAGE / 1e6:g}")
        accepted = say("a page of up to {number} million characters", number=most)
        raise _refused(file, found, accepted)
    bare = text.lstrip("\ufeff \t\r\n")
    roots = [_parsed(bare, file)] if bare.startswith(("{", "[")) else _of_page(bare, file, wanted)
    return tuple(node for node in _nodes(roots, file) if wanted in types_of(node))


def is_page(text: str) -> bool:
    """Tell a page or JSON from lines that somebody pasted."""
    start = text.lstrip("\ufeff \t\r\n")[:4000].casefold()
    if start.startswith(("{", "[")):
        return '"' in start
    return start.startswith("<") or "<html" in start or "<script" in start


def types_of(node: dict[str, Any]) -> tuple[str, ...]:
    """Names of the types of an object, without the address of the vocabulary."""
    said = node.get("@type", ())
    every = said if isinstance(said, list) else [said]
    return tuple(_short(each) for each in every if isinstance(each, str))


def _short(name: str) -> str:
    for prefix in SCHEMA:
        name = name.removeprefix(prefix)
    return name


def _of_page(text: str, file: str, wanted: str) -> list[Any]:
    """Roots of the structured data of a page: JSON-LD, or microdata where that has none."""
    tree = _tree(text)
    if tree is None:
        return []
    parsed: list[Any] = []
    troubles: list[Fault] = []
    for script in tree.iter("script"):
        if script.get("type", "").partition(";")[0].strip().casefold() == _JSON_LD:
            try:
                parsed.append(_parsed(script.text or "", file))
            except DocumentError as error:
                troubles.extend(error.faults)
    if any(wanted in types_of(node) for node in _nodes(parsed, file)):
        return parsed
    items = _microdata(tree, file)
    if troubles and not any(wanted in types_of(item) for item in items):
        raise DocumentError(troubles)
    return [*parsed, *items]


def _tree(text: str) -> Any:
    """Tree of a page; libxml2 stops at 256 levels, expands no entity and opens no address."""
    from lxml import etree

    parser = etree.HTMLParser(encoding="utf-8", no_network=True, huge_tree=False, remove_pis=True)
    try:
        return etree.fromstring(text.encode("utf-8", "replace"), parser)
    except etree.LxmlError:
        return None


def _parsed(text: str, file: str) -> Any:
    """JSON with its member names as they stand; a raw line end inside a text is let through."""
    try:
        return json.loads(text, strict=False)
    except RecursionError:
        raise _too_deep(file) from None
    except ValueError as error:
        found = say("no JSON: {problem}", problem=error)[:200]
        raise _refused(file, found, say("JSON-LD that a reader can parse")) from None


def _nodes(roots: list[Any], file: str) -> Iterator[dict[str, Any]]:
    """Objects of all levels, outermost first, without calling oneself."""
    waiting = [(root, 1) for root in reversed(roots)]
    seen = 0
    while waiting:
        value, depth = waiting.pop()
        if not isinstance(value, dict | list):
            continue
        seen += 1
        if depth > DEEPEST:
            raise _too_deep(file)
        if seen > MOST_NODES:
            found = say("more than {number} objects", number=MOST_NODES)
            raise _refused(file, found, say("the data of a recipe"))
        if isinstance(value, dict):
            yield value
        inner = list(value.values()) if isinstance(value, dict) else value
        waiting.extend((each, depth + 1) for each in reversed(inner))


def _microdata(tree: Any, file: str) -> list[dict[str, Any]]:
    """Items of microdata, each with its properties; the walk is flat, so depth costs nothing."""
    items: list[dict[str, Any]] = []
    made: dict[Any, dict[str, Any]] = {}
    marked = (each for each in tree.iter() if _is_marked(each))
    for number, element in enumerate(marked):
        if number > MOST_NODES:
            found = say("more than {number} properties", number=MOST_NODES)
            raise _refused(file, found, say("the data of a recipe"))
        owner = _owner(element, made)
        value: Any = None
        if element.get("itemscope") is not None:
            value = made[element] = {"@type": (element.get("itemtype") or "").split()}
            if owner is None:
                items.append(value)
        names = (element.get("itemprop") or "").split()[:MOST_NAMES]
        if owner is not None and names:
            said = _text(element) if value is None else value
            for name in names:
                owner.setdefault(_short(name), []).append(said)
    return items


def _is_marked(element: Any) -> bool:
    if not isinstance(element.tag, str):
        return False
    return element.get("itemscope") is not None or element.get("itemprop") is not None


def _owner(element: Any, made: dict[Any, dict[str, Any]]) -> dict[str, Any] | None:
    return next((made[above] for above in element.iterancestors() if above in made), None)


def _text(element: Any) -> str:
    """What a property says: its attribute where the element has one for that, else its words."""
    for attribute in ("content", "datetime", "value"):
        if element.get(attribute):
            return str(element.get(attribute))
    return " ".join("".join(_words(element)).split())


def _words(element: Any) -> Iterator[str]:
    """Words inside an element in their order, up to as many elements as one sentence may have."""
    waiting: list[Any] = [element]
    seen = 0
    while waiting:
        item = waiting.pop()
        if isinstance(item, str):
            yield item
            continue
        seen += 1
        if seen > MOST_INNER:
            yield " …"
            return
        inner = [part for child in islice(item, MOST_INNER) for part in (child, child.tail or "")]
        waiting.extend(reversed(inner))
        if isinstance(item.tag, str) and item.tag not in ("script", "style"):
            waiting.append(item.text or "")


def _too_deep(file: str) -> DocumentError:
    found = say("data nested too deeply")
    return _refused(file, found, say("up to {number} levels", number=DEEPEST))


def _refused(file: str, found: str, accepted: str) -> DocumentError:
    field = say("saved page")
    return DocumentError([Fault(file=file, field=field, found=found, accepted=accepted)])
