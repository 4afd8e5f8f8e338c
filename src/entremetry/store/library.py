"""The user's documents with every revision they ever had."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path

from entremetry.errors import Conflict, StoreError
from entremetry.store import revisions
from entremetry.store.backup import backup
from entremetry.store.database import Database
from entremetry.store.plans import Plans
from entremetry.store.restoring import replace_all
from entremetry.store.stored import TAKEN, Draft, Kind, Origin, Revision, StoredDocument
from entremetry.words import say


def now() -> datetime:
    """Return the time at which a change is recorded."""
    return datetime.now(UTC)


@dataclass(frozen=True, slots=True)
class Library:
    """Desserts, kitchens and plans; each method is one unit of work."""

    database: Database
    clock: Callable[[], datetime] = field(default=now)

    @property
    def plans(self) -> Plans:
        """The plans that are kept."""
        return Plans(self.database, self.clock)

    def documents(self, kind: Kind) -> tuple[StoredDocument, ...]:
        """Every document of a kind in its newest state, by id."""
        with self.database.reading() as connection:
            return revisions.newest_of(connection, kind)

    def document(self, kind: Kind, document_id: str) -> StoredDocument:
        """Return one document in its newest state; UnknownName, with the nearest, if none."""
        with self.database.reading() as connection:
            return revisions.newest(connection, kind, document_id)

    def find(self, kind: Kind, document_id: str) -> StoredDocument | None:
        """Return one document in its newest state, or None."""
        with self.database.reading() as connection:
            return revisions.find(connection, kind, document_id)

    def history(self, kind: Kind, document_id: str) -> tuple[Revision, ...]:
        """Every revision, the newest first; UnknownName if there is no such document."""
        with self.database.reading() as connection:
            revisions.newest(connection, kind, document_id)
            return revisions.history(connection, kind, document_id)

    def text_at(self, kind: Kind, document_id: str, number: int) -> str:
        """Text of one revision; UnknownName if there is no such revision."""
        with self.database.reading() as connection:
            return revisions.state(connection, kind, document_id, number)[0]

    def add(self, kind: Kind, document_id: str, text: str) -> StoredDocument:
        """Keep a new document.

        Raises
        ------
        StoreError
            If the id is taken; the document that bears it is untouched.
        """
        with self.database.unit_of_work() as connection:
            if document_id in revisions.ids(connection, kind):
                raise StoreError(say(TAKEN[kind], id=document_id))
            revisions.create(
                connection, kind, document_id, text, origin=Origin.NEW, when=self.clock()
            )
            return revisions.newest(connection, kind, document_id)

    def save(
        self,
        kind: Kind,
        document_id: str,
        text: str,
        *,
        started_from: int,
        drafts_too: bool = True,
    ) -> StoredDocument:
        """Keep a new revision; a text that changes nothing makes none.

        The draft goes, unless the text did not grow from it (`drafts_too` is false).

        Raises
        ------
        Conflict
            If the newest revision is not the one that the edit started from.
        UnknownName
            If there is no such document.
        """
        with self.database.unit_of_work() as connection:
            current = revisions.newest_if(connection, kind, document_id, started_from)
            if drafts_too:
                revisions.drop_draft(connection, kind, document_id)
            if text == current.text:
                return current
            revisions.revise(
                connection,
                current,
                text,
                parent=started_from,
                origin=Origin.EDIT,
                when=self.clock(),
            )
            return revisions.newest(connection, kind, document_id)

    def put(self, kind: Kind, document_id: str, text: str, *, started_from: int) -> StoredDocument:
        """Keep a first revision (`started_from` 0) or the next one, and drop the draft.

        Raises
        ------
        Conflict
            If the newest revision, or its absence, is not what the edit started from.
        """
        if started_from > 0:
            return self.save(kind, document_id, text, started_from=started_from)
        with self.database.unit_of_work() as connection:
            if document_id in revisions.ids(connection, kind):
                found = revisions.newest(connection, kind, document_id).revision.number
                raise Conflict(document_id, started_from=0, newest=found)
            revisions.drop_draft(connection, kind, document_id)
            revisions.create(
                connection, kind, document_id, text, origin=Origin.NEW, when=self.clock()
            )
            return revisions.newest(connection, kind, document_id)

    def undo(self, kind: Kind, document_id: str, *, started_from: int) -> StoredDocument:
        """Go back to what the newest revision grew from; undoing again goes further back.

        Raises
        ------
        Conflict
            If the newest revision is not `started_from`.
        StoreError
            If nothing came before.
        """
        with self.database.unit_of_work() as connection:
            current = revisions.newest_if(connection, kind, document_id, started_from)
            earlier = current.revision.parent
            if earlier is None:
                raise StoreError(
                    say("'{id}' is in its first state; there is nothing to undo", id=document_id)
                )
            text, record = revisions.state(connection, kind, document_id, earlier)
            revisions.revise(
                connection,
                current,
                text,
                parent=record.parent,
                origin=Origin.UNDO,
                when=self.clock(),
            )
            return revisions.newest(connection, kind, document_id)

    def restore(
        self, kind: Kind, document_id: str, number: int, *, started_from: int
    ) -> StoredDocument:
        """Bring an older revision back as the newest.

        Raises
        ------
        Conflict
            If the newest revision is not `started_from`.
        UnknownName
            If there is no revision `number`.
        """
        with self.database.unit_of_work() as connection:
            current = revisions.newest_if(connection, kind, document_id, started_from)
            text, _record = revisions.state(connection, kind, document_id, number)
            revisions.revise(
                connection,
                current,
                text,
                parent=started_from,
                origin=Origin.RESTORED,
                when=self.clock(),
            )
            return revisions.newest(connection, kind, document_id)

    def keep_draft(self, kind: Kind, document_id: str, text: str, *, started_from: int) -> None:
        """Keep a text that is not fit to save, in place of an earlier draft."""
        draft = Draft(text=text, started_from=started_from, changed_at=self.clock())
        with self.database.unit_of_work() as connection:
            revisions.put_draft(connection, kind, document_id, draft)

    def draft(self, kind: Kind, document_id: str) -> Draft | None:
        """Return the draft of a document, if one is kept."""
        with self.database.reading() as connection:
            return revisions.draft_of(connection, kind, document_id)

    def drop_draft(self, kind: Kind, document_id: str) -> None:
        """Throw a draft away."""
        with self.database.unit_of_work() as connection:
            revisions.drop_draft(connection, kind, document_id)

    def backup_to(self, path: Path) -> None:
        """Write the whole library into one new SQLite file.

        Raises
        ------
        StoreError
            If something is there already or it cannot be written.
        """
        backup(self.database, path)

    def become(self, other: Library, aside: Path) -> None:
        """Hold what another library holds; what was here is in the new file `aside` before.

        Raises
        ------
        StoreError
            If that file cannot be written; nothing is changed then.
        """
        replace_all(self.database, other.database, aside)

    def close(self) -> None:
        """Let go of the database."""
        self.database.close()
