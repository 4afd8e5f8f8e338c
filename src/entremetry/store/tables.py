"""The tables of the store as the newest migration leaves them."""

from __future__ import annotations

from sqlalchemy import Column, ForeignKeyConstraint, Integer, MetaData, String, Table, Text

METADATA = MetaData()

DOCUMENTS = Table(
    "documents",
    METADATA,
    Column("kind", String(16), primary_key=True),
    Column("id", String(120), primary_key=True),
    Column("revision", Integer, nullable=False),
)

REVISIONS = Table(
    "revisions",
    METADATA,
    Column("kind", String(16), primary_key=True),
    Column("id", String(120), primary_key=True),
    Column("number", Integer, primary_key=True),
    Column("parent", Integer),
    Column("origin", String(16), nullable=False),
    Column("changed_at", String(40), nullable=False),
    Column("document", Text, nullable=False),
    ForeignKeyConstraint(["kind", "id"], ["documents.kind", "documents.id"]),
)

DRAFTS = Table(
    "drafts",
    METADATA,
    Column("kind", String(16), primary_key=True),
    Column("id", String(120), primary_key=True),
    Column("started_from", Integer, nullable=False),
    Column("changed_at", String(40), nullable=False),
    Column("document", Text, nullable=False),
)

DEMOS = Table(
    "demos",
    METADATA,
    Column("id", String(120), primary_key=True),
    Column("digest", String(64), nullable=False),
)
