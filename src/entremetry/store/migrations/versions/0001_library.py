"""Documents with every revision, drafts that were not fit to save, and demos already loaded."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None


def upgrade() -> None:
    """Make the first tables."""
    op.create_table("documents", *_key(), sa.Column("revision", sa.Integer, nullable=False))
    op.create_table(
        "revisions",
        *_key(),
        sa.Column("number", sa.Integer, primary_key=True),
        sa.Column("parent", sa.Integer),
        sa.Column("origin", sa.String(16), nullable=False),
        *_text(),
        sa.ForeignKeyConstraint(["kind", "id"], ["documents.kind", "documents.id"]),
    )
    op.create_table(
        "drafts", *_key(), sa.Column("started_from", sa.Integer, nullable=False), *_text()
    )
    op.create_table(
        "demos",
        sa.Column("id", sa.String(120), primary_key=True),
        sa.Column("digest", sa.String(64), nullable=False),
    )


def _key() -> tuple[sa.Column[str], sa.Column[str]]:
    return (
        sa.Column("kind", sa.String(16), primary_key=True),
        sa.Column("id", sa.String(120), primary_key=True),
    )


def _text() -> tuple[sa.Column[str], sa.Column[str]]:
    return (
        sa.Column("changed_at", sa.String(40), nullable=False),
        sa.Column("document", sa.Text, nullable=False),
    )
