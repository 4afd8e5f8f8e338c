"""Documents and their revisions, row by row, within a unit of work."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from sqlalchemy import (
    Connection,
    Delete,
    Row,
    Select,
    and_,
    bindparam,
    delete,
    insert,
    select,
    update,
)

from entremetry.errors import Conflict, UnknownName
from entremetry.store.stored import Draft, Kind, Origin, Revision, StoredDocument
from entremetry.store.tables import DOCUMENTS, DRAFTS, REVISIONS

NEWEST = select(REVISIONS).join(
    DOCUMENTS,
    and_(
        REVISIONS.c.kind == DOCUMENTS.c.kind,
        REVISIONS.c.id == DOCUMENTS.c.id,
        REVISIONS.c.number == DOCUMENTS.c.revision,
    ),
)
RECORD = (REVISIONS.c.number, REVISIONS.c.parent, REVISIONS.c.origin, REVISIONS.c.changed_at)
EVERY_NEWEST = NEWEST.where(DOCUMENTS.c.kind == bindparam("kind")).order_by(DOCUMENTS.c.id)
ONE_NEWEST = NEWEST.where(DOCUMENTS.c.kind == bindparam("kind"), DOCUMENTS.c.id == bindparam("id"))


def newest_of(connection: Connection, kind: Kind) -> tuple[StoredDocument, ...]:
    """Every document of a kind in its newest state, by id."""
    rows = connection.execute(EVERY_NEWEST, {"kind": kind}).all()
    return tuple(_stored(row) for row in rows)


def newest(connection: Connection, kind: Kind, document_id: str) -> StoredDocument:
    """One document in its newest state; UnknownName, with the nearest ids, if there is none."""
    found = find(connection, kind, document_id)
    if found is None:
        raise UnknownName(str(kind), document_id, ids(connection, kind))
    return found


def find(connection: Connection, kind: Kind, document_id: str) -> StoredDocument | None:
    """One document in its newest state, or None."""
    row = connection.execute(ONE_NEWEST, {"kind": kind, "id": document_id}).first()
    return None if row is None else _stored(row)


def newest_if(
    connection: Connection, kind: Kind, document_id: str, started_from: int
) -> StoredDocument:
    """Return the newest state if it is the one an edit started from; else Conflict."""
    current = newest(connection, kind, document_id)
    number = current.revision.number
    if number != started_from:
        raise Conflict(document_id, started_from=started_from, newest=number)
    return current


def ids(connection: Connection, kind: Kind) -> frozenset[str]:
    """Return the ids that are taken."""
    rows = connection.execute(select(DOCUMENTS.c.id).where(DOCUMENTS.c.kind == kind))
    return frozenset(rows.scalars())


def history(connection: Connection, kind: Kind, document_id: str) -> tuple[Revision, ...]:
    """Every revision, the newest first."""
    wanted: Select[Any] = select(*RECORD).where(
        REVISIONS.c.kind == kind, REVISIONS.c.id == document_id
    )
    rows = connection.execute(wanted.order_by(REVISIONS.c.number.desc())).all()
    return tuple(_revision(row) for row in rows)


def state(
    connection: Connection, kind: Kind, document_id: str, number: int
) -> tuple[str, Revision]:
    """Text and record of one revision; UnknownName if there is none of that number."""
    wanted = select(REVISIONS).where(REVISIONS.c.kind == kind, REVISIONS.c.id == document_id)
    row = connection.execute(wanted.where(REVISIONS.c.number == number)).first()
    if row is None:
        raise UnknownName("revision of '{document}'", str(number), (), document=document_id)
    return row.document, _revision(row)


def create(
    connection: Connection,
    kind: Kind,
    document_id: str,
    text: str,
    *,
    origin: Origin,
    when: datetime,
) -> None:
    """Write a document that was not there, as revision 1."""
    connection.execute(insert(DOCUMENTS).values(kind=kind, id=document_id, revision=1))
    revision = Revision(number=1, parent=None, origin=origin, changed_at=when)
    _write(connection, StoredDocument(kind=kind, id=document_id, text=text, revision=revision))


def revise(
    connection: Connection,
    current: StoredDocument,
    text: str,
    *,
    parent: int | None,
    origin: Origin,
    when: datetime,
) -> None:
    """Write the revision after the current one and make it the newest."""
    number = current.revision.number + 1
    this = and_(DOCUMENTS.c.kind == current.kind, DOCUMENTS.c.id == current.id)
    expected = DOCUMENTS.c.revision == current.revision.number
    moved = connection.execute(update(DOCUMENTS).where(this, expected).values(revision=number))
    if moved.rowcount != 1:
        raise Conflict(current.id, started_from=current.revision.number, newest=number)
    revision = Revision(number=number, parent=parent, origin=origin, changed_at=when)
    _write(
        connection,
        StoredDocument(kind=current.kind, id=current.id, text=text, revision=revision),
    )


def put_draft(connection: Connection, kind: Kind, document_id: str, draft: Draft) -> None:
    """Keep a draft in place of the one before."""
    drop_draft(connection, kind, document_id)
    connection.execute(
        insert(DRAFTS).values(
            kind=kind,
            id=document_id,
            started_from=draft.started_from,
            changed_at=draft.changed_at.isoformat(),
            document=draft.text,
        )
    )


def draft_of(connection: Connection, kind: Kind, document_id: str) -> Draft | None:
    """Return the draft of a document, if one is kept."""
    wanted = select(DRAFTS).where(DRAFTS.c.kind == kind, DRAFTS.c.id == document_id)
    row = connection.execute(wanted).first()
    if row is None:
        return None
    changed_at = datetime.fromisoformat(row.changed_at)
    return Draft(text=row.document, started_from=row.started_from, changed_at=changed_at)


def drop_draft(connection: Connection, kind: Kind, document_id: str) -> None:
    """Remove the draft of a document, if one is kept."""
    connection.execute(_draft(kind, document_id))


def _draft(kind: Kind, document_id: str) -> Delete:
    return delete(DRAFTS).where(DRAFTS.c.kind == kind, DRAFTS.c.id == document_id)


def _write(connection: Connection, document: StoredDocument) -> None:
    revision = document.revision
    connection.execute(
        insert(REVISIONS).values(
            kind=document.kind,
            id=document.id,
            number=revision.number,
            parent=revision.parent,
            origin=revision.origin,
            changed_at=revision.changed_at.isoformat(),
            document=document.text,
        )
    )


def _revision(row: Row[Any]) -> Revision:
    return Revision(
        number=row.number,
        parent=row.parent,
        origin=Origin(row.origin),
        changed_at=datetime.fromisoformat(row.changed_at),
    )


def _stored(row: Row[Any]) -> StoredDocument:
    return StoredDocument(
        kind=Kind(row.kind), id=row.id, text=row.document, revision=_revision(row)
    )
