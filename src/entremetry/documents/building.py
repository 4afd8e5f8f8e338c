"""Build plain data from the events of a YAML parser, and collect what is wrong."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any

import yaml

from entremetry.documents.scalars import NotFinite, scalar
from entremetry.documents.tree import Path, Tree, field_text, shown
from entremetry.errors import DocumentError, Fault
from entremetry.words import say, say_later

A_MAPPING = say_later("one YAML mapping, such as 'name: Pear log'")
DEEPEST = 20
MOST_PARTS = 20_000
MOST_FAULTS = 50
_WRITTEN_OUT = say_later("the value itself, written out")
_CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")


@dataclass(slots=True)
class _Open:
    """A mapping or list that is being filled; `key` waits for its value."""

    path: Path
    content: dict[str, Any] | list[Any]
    key: str | None = None
    line: int = 0


@dataclass(slots=True)
class Builder:
    """Takes events in order and gives the tree, or all faults, at the end."""

    file: str
    lines: dict[Path, int] = field(default_factory=dict)
    faults: list[Fault] = field(default_factory=list)
    open: list[_Open] = field(default_factory=list)
    root: Any = None
    documents: int = 0
    parts: int = 0
    last_path: Path = ()

    def take(self, event: yaml.Event) -> None:
        """Take the next event."""
        line = event.start_mark.line + 1 if event.start_mark else 1
        if isinstance(event, yaml.DocumentStartEvent):
            self._start_document(line)
        elif isinstance(event, yaml.AliasEvent):
            self._fault(line, say("the alias '*{name}'", name=event.anchor), say(_WRITTEN_OUT))
            self._put_or_name(line)
        elif isinstance(event, yaml.NodeEvent):
            self._take_node(event, line)
        elif isinstance(event, yaml.CollectionEndEvent):
            self.open.pop()

    def tree(self) -> Tree:
        """Return what was built; raise DocumentError if anything was wrong."""
        if not self.faults and not isinstance(self.root, dict):
            found = say("an empty document") if self.root is None else shown(self.root)
            self._fault(1, found, say(A_MAPPING))
        if self.faults:
            raise DocumentError(self.faults)
        return Tree(data=self.root, lines=MappingProxyType(self.lines))

    def _start_document(self, line: int) -> None:
        self.documents += 1
        if self.documents > 1:
            self._stop(line, say("a second document after '---'"), say("one document in a file"))

    def _take_node(self, event: yaml.NodeEvent, line: int) -> None:
        """Take a scalar or the start of a mapping or list."""
        self.parts += 1
        if self.parts > MOST_PARTS:
            found = say("more than {number} parts", number=MOST_PARTS)
            self._stop(line, found, say("at most {number}", number=MOST_PARTS))
        self._refuse_marks(event, line)
        if isinstance(event, yaml.ScalarEvent):
            self._take_scalar(event, line)
        else:
            self._start_collection({} if isinstance(event, yaml.MappingStartEvent) else [], line)

    def _refuse_marks(self, event: Any, line: int) -> None:
        """Refuse anchors and tags, which a recipe has no use for."""
        if event.anchor is not None:
            self._fault(line, say("the anchor '&{name}'", name=event.anchor), say(_WRITTEN_OUT))
        if event.tag is not None:
            self._fault(line, say("the tag '{name}'", name=event.tag), say("a value without a tag"))

    def _take_scalar(self, event: yaml.ScalarEvent, line: int) -> None:
        """Put a text, number, truth or nothing; or keep a key for the value that follows."""
        text = event.value
        if _CONTROL.search(text):
            self._fault(line, say("a control character"), say("plain text"))
            text = _CONTROL.sub("", text)
        inside = self.open[-1] if self.open else None
        if inside and isinstance(inside.content, dict) and inside.key is None:
            self._take_key(inside, text, line)
        else:
            self._put(self._value(event, text, line), line)

    def _value(self, event: yaml.ScalarEvent, text: str, line: int) -> Any:
        """Return what a scalar means; quoted it is a text."""
        if event.style:
            return text
        try:
            return scalar(text)
        except NotFinite:
            found = say("{value}, which is no finite number", value=shown(text))
            self._fault(line, found, say("a finite number"))
            return None

    def _take_key(self, inside: _Open, key: str, line: int) -> None:
        """Keep the key of an entry; a second one of the same name is a fault."""
        inside.key, inside.line = key, line
        if isinstance(inside.content, dict) and key in inside.content:
            first = self.lines.get((*inside.path, key))
            found = say("the key '{key}' a second time (first on line {line})", key=key, line=first)
            self._fault(line, found, say("each key once"))
        if key == "<<":
            found = say("the merge key '<<'")
            self._fault(line, found, say("the values themselves, written out"))

    def _start_collection(self, content: dict[str, Any] | list[Any], line: int) -> None:
        """Put an empty mapping or list and go inside."""
        inside = self.open[-1] if self.open else None
        if inside and isinstance(inside.content, dict) and inside.key is None:
            self._stop(line, say("a mapping or list as a key"), say("a text as a key"))
        if len(self.open) >= DEEPEST:
            found = say("parts nested more than {number} deep", number=DEEPEST)
            self._stop(line, found, say("at most {number}", number=DEEPEST))
        self._put(content, line)
        self.open.append(_Open(path=self.last_path, content=content))

    def _put(self, value: Any, line: int) -> None:
        """Put a value where it belongs and remember its line."""
        self.last_path = self._next_path()
        if not self.open:
            self.root = value
            self.lines[()] = line
            return
        inside = self.open[-1]
        if isinstance(inside.content, list):
            inside.content.append(value)
            self.lines[self.last_path] = line
        elif inside.key is not None:
            if inside.key not in inside.content:
                self.lines[self.last_path] = inside.line
            inside.content[inside.key] = value
            inside.key = None

    def _put_or_name(self, line: int) -> None:
        """Put nothing in the place of a refused value or key."""
        inside = self.open[-1] if self.open else None
        if inside and isinstance(inside.content, dict) and inside.key is None:
            inside.key, inside.line = "", line
        else:
            self._put(None, line)

    def _next_path(self) -> Path:
        """Path of the value that comes next."""
        if not self.open:
            return ()
        inside = self.open[-1]
        if isinstance(inside.content, list):
            return (*inside.path, len(inside.content))
        return inside.path if inside.key is None else (*inside.path, inside.key)

    def _fault(self, line: int, found: str, accepted: str) -> None:
        """Keep one more fault; so many are enough."""
        self.faults.append(
            Fault(
                file=self.file,
                line=line,
                field=field_text(self._next_path()),
                found=found,
                accepted=accepted,
            )
        )
        if len(self.faults) >= MOST_FAULTS:
            raise DocumentError(self.faults)

    def _stop(self, line: int, found: str, accepted: str) -> None:
        """Keep a fault after which reading on makes no sense, and raise them all."""
        self._fault(line, found, accepted)
        raise DocumentError(self.faults)
