"""The tables of the store as the newest migration leaves them."""

from __future__ import annotations

from sqlalchemy import (
    Column,
    ForeignKey,
    ForeignKeyConstraint,
    Integer,
    MetaData,
    String,
    Table,
    Text,
    UniqueConstraint,
)

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

PLANS = Table(
    "plans",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("made_at", String(40), nullable=False),
    Column("name", String(200), nullable=False),
    Column("text", Text, nullable=False),
    Column("heard", Integer, nullable=False),
)

BENCH_ENTRIES = Table(
    "bench_entries",
    METADATA,
    Column("number", Integer, primary_key=True),
    Column("plan", Integer, ForeignKey("plans.id"), nullable=False),
    Column("key", String(64), nullable=False),
    Column("task", String(200), nullable=False),
    Column("what", String(16), nullable=False),
    Column("minutes", Integer, nullable=False),
    Column("at", String(40), nullable=False),
    Column("received_at", String(40), nullable=False),
    UniqueConstraint("plan", "key", name="one_entry_per_key"),
)
