"""The history of the store's tables, run by alembic when a store is opened."""
