"""Run the migrations on the connection that the store hands over."""

from __future__ import annotations

from alembic import context

from entremetry.store.tables import METADATA

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=METADATA,
    transactional_ddl=False,
)
context.run_migrations()
