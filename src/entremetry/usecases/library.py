"""What a person asks of the library: list, open, save, undo, restore, add; and the kitchen."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from itertools import takewhile
from typing import TYPE_CHECKING, TypeAlias

from entremetry.errors import DocumentError, EntremetryError, Fault
from entremetry.store import Draft, Kind, Revision, StoredDocument
from entremetry.words import ENGLISH, current, say

if TYPE_CHECKING:
    from entremetry.store.library import Library

KITCHEN = "kitchen"
Reckon: TypeAlias = Callable[[str, str, str | None], object]
"""Works out the batch of a text, by its file and kitchen; EntremetryError if there is none."""
_NAME_LINE = re.compile(
    r"^name: +(?:'((?:[^'\n]|'')+)'|([\w(][^#:\n]*[^#:\s]))[ \t]*$", re.MULTILINE
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Opened:
    """A document in its newest state, with its history (newest first) and its draft."""

    id: str
    text: str
    revision: int
    history: tuple[Revision, ...]
    draft: Draft | None

    @property
    def can_undo(self) -> bool:
        """Tell whether the newest revision grew from an earlier one."""
        return bool(self.history) and self.history[0].parent is not None


@dataclass(frozen=True, slots=True, kw_only=True)
class Saved:
    """A document as it was kept; `trouble` says why no batch can be computed from it yet."""

    id: str
    revision: int
    trouble: str = ""


def desserts(library: Library) -> tuple[StoredDocument, ...]:
    """List the desserts in their newest state, by id."""
    return library.documents(Kind.DESSERT)


def dessert(library: Library, dessert_id: str) -> StoredDocument:
    """One dessert in its newest state; UnknownName, with the nearest ids, if there is none."""
    return library.document(Kind.DESSERT, dessert_id)


def dessert_name(dessert_id: str, text: str) -> str:
    """Name in a document as it is spoken, even if nothing can be computed from it.

    Its id if it is no document.
    """
    from entremetry.dessert.reading import read_dessert
    from entremetry.dessert.translating import translated

    try:
        return translated(read_dessert(text, file=dessert_id)[0], current().code).name
    except DocumentError:
        return dessert_id.replace("-", " ").capitalize()


def listed_name(dessert_id: str, text: str) -> str:
    """The same for a long list: the line that says the name is read alone where that will do."""
    line = _NAME_LINE.search(text)
    if line is None:
        return dessert_name(dessert_id, text)
    name = line[1].replace("''", "'") if line[1] is not None else line[2]
    return name if current() is ENGLISH else _listed_as(text, name)


def _listed_as(text: str, name: str) -> str:
    """A name in the spoken language, if a line of the translations gives it."""
    table = text.partition("\ntranslations:\n")[2]
    lines = f"\n{table}".partition(f"\n  {current().code}:\n")[2].splitlines()
    for line in takewhile(lambda each: each.startswith("    "), lines):
        key, _, told = line.strip().partition(": ")
        if key.strip("\"'") == name and told:
            return told.strip().strip("\"'")
    return name


def open_dessert(library: Library, dessert_id: str) -> Opened:
    """One dessert with its history and draft; UnknownName if there is none."""
    return _opened(library, Kind.DESSERT, dessert_id)


def dessert_at(library: Library, dessert_id: str, revision: int) -> str:
    """Text that a dessert had in one revision; UnknownName if there is no such revision."""
    return library.text_at(Kind.DESSERT, dessert_id, revision)


def save_dessert(library: Library, dessert_id: str, text: str, *, started_from: int) -> Saved:
    """Save an edited text.

    Raises
    ------
    DocumentError
        With all faults; the text is kept as a draft and the dessert is as it was.
    Conflict
        If somebody saved meanwhile; the text is kept as a draft.
    """
    library.document(Kind.DESSERT, dessert_id)
    library.keep_draft(Kind.DESSERT, dessert_id, text, started_from=started_from)
    trouble = trouble_of(text, kitchen_text(library), dessert_id)
    kept = library.save(Kind.DESSERT, dessert_id, text, started_from=started_from)
    return Saved(id=dessert_id, revision=kept.revision.number, trouble=trouble)


def undo_dessert(library: Library, dessert_id: str, *, started_from: int) -> Saved:
    """Go one state back; Conflict if somebody saved meanwhile, StoreError at the first state."""
    kept = library.undo(Kind.DESSERT, dessert_id, started_from=started_from)
    return Saved(id=dessert_id, revision=kept.revision.number)


def restore_dessert(
    library: Library, dessert_id: str, revision: int, *, started_from: int
) -> Saved:
    """Bring an older state back as the newest; Conflict if somebody saved meanwhile."""
    kept = library.restore(Kind.DESSERT, dessert_id, revision, started_from=started_from)
    return Saved(id=dessert_id, revision=kept.revision.number)


def drop_draft(library: Library, dessert_id: str) -> None:
    """Throw away the draft of a dessert."""
    library.drop_draft(Kind.DESSERT, dessert_id)


def add_dessert(library: Library, text: str) -> Saved:
    """Add a dessert under the id its text bears.

    Raises
    ------
    DocumentError
        With all faults; nothing is kept.
    StoreError
        If the id is taken.
    """
    from entremetry.dessert.reading import read_dessert

    document, _tree = read_dessert(text, file="document")
    trouble = trouble_of(text, kitchen_text(library), document.id)
    kept = library.add(Kind.DESSERT, document.id, text)
    return Saved(id=kept.id, revision=kept.revision.number, trouble=trouble)


def open_kitchen(library: Library, *, starter: str) -> Opened:
    """Open the kitchen with its history and draft; `starter` if none was ever written."""
    if library.find(Kind.KITCHEN, KITCHEN) is not None:
        return _opened(library, Kind.KITCHEN, KITCHEN)
    draft = library.draft(Kind.KITCHEN, KITCHEN)
    return Opened(id=KITCHEN, text=starter, revision=0, history=(), draft=draft)


def kitchen_text(library: Library) -> str | None:
    """Text of the kitchen, if one was ever written."""
    found = library.find(Kind.KITCHEN, KITCHEN)
    return found.text if found else None


def save_kitchen(library: Library, text: str, *, started_from: int) -> Saved:
    """Save the kitchen; revision 0 is where a kitchen starts that was never written.

    Raises
    ------
    DocumentError
        With all faults; the text is kept as a draft.
    Conflict
        If somebody saved meanwhile; the text is kept as a draft.
    """
    from entremetry.usecases.batch import moulds

    library.keep_draft(Kind.KITCHEN, KITCHEN, text, started_from=started_from)
    moulds(text)
    kept = library.put(Kind.KITCHEN, KITCHEN, text, started_from=started_from)
    return Saved(id=KITCHEN, revision=kept.revision.number)


def undo_kitchen(library: Library, *, started_from: int) -> Saved:
    """Go one state back; Conflict if somebody saved meanwhile, StoreError at the first state."""
    kept = library.undo(Kind.KITCHEN, KITCHEN, started_from=started_from)
    return Saved(id=KITCHEN, revision=kept.revision.number)


def restore_kitchen(library: Library, revision: int, *, started_from: int) -> Saved:
    """Bring an older state back as the newest; Conflict if somebody saved meanwhile."""
    kept = library.restore(Kind.KITCHEN, KITCHEN, revision, started_from=started_from)
    return Saved(id=KITCHEN, revision=kept.revision.number)


def drop_kitchen_draft(library: Library) -> None:
    """Throw away the draft of the kitchen."""
    library.drop_draft(Kind.KITCHEN, KITCHEN)


def kitchen_at(library: Library, revision: int) -> str:
    """Text that the kitchen had in one revision; UnknownName if there is no such revision."""
    return library.text_at(Kind.KITCHEN, KITCHEN, revision)


def _opened(library: Library, kind: Kind, document_id: str) -> Opened:
    stored = library.document(kind, document_id)
    return Opened(
        id=stored.id,
        text=stored.text,
        revision=stored.revision.number,
        history=library.history(kind, document_id),
        draft=library.draft(kind, document_id),
    )


def trouble_of(
    text: str, kitchen: str | None, dessert_id: str, reckon: Reckon | None = None
) -> str:
    """Why no batch comes of a text that is a document; a text that is none raises.

    `reckon` works the batch out, for whoever keeps what was worked out once.
    """
    from entremetry.dessert.reading import read_dessert

    document, tree = read_dessert(text, file=dessert_id)
    if document.id != dessert_id:
        accepted = say("{id}: a dessert keeps its id", id=dessert_id)
        raise DocumentError(
            [
                Fault(
                    file=dessert_id,
                    line=tree.line(("id",)),
                    field="id",
                    found=document.id,
                    accepted=accepted,
                )
            ]
        )
    try:
        (reckon or _batch)(text, dessert_id, kitchen)
    except DocumentError:
        raise
    except EntremetryError as error:
        return str(error)
    return ""


def _batch(text: str, file: str, kitchen: str | None) -> object:
    from entremetry.usecases.batch import batch_of_text

    return batch_of_text(text, file=file, kitchen_text=kitchen)
