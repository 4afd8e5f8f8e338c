"""Plans that are kept, and what was told of them from the bench."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    """Make the tables of plans."""
    op.create_table(
        "plans",
        sa.Column("id", sa.Integer, primary_key=True),
        sa.Column("made_at", sa.String(40), nullable=False),
        sa.Column("name", sa.String(200), nullable=False),
        sa.Column("text", sa.Text, nullable=False),
        sa.Column("heard", sa.Integer, nullable=False),
    )
    op.create_table(
        "bench_entries",
        sa.Column("number", sa.Integer, primary_key=True),
        sa.Column("plan", sa.Integer, sa.ForeignKey("plans.id"), nullable=False),
        sa.Column("key", sa.String(64), nullable=False),
        sa.Column("task", sa.String(200), nullable=False),
        sa.Column("what", sa.String(16), nullable=False),
        sa.Column("minutes", sa.Integer, nullable=False),
        sa.Column("at", sa.String(40), nullable=False),
        sa.Column("received_at", sa.String(40), nullable=False),
        sa.UniqueConstraint("plan", "key", name="one_entry_per_key"),
    )
