"""What the store gives back: frozen, and free of any database."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum


class Kind(StrEnum):
    """The kinds of document that are kept."""

    DESSERT = "dessert"
    KITCHEN = "kitchen"
    PRICES = "prices"


class Origin(StrEnum):
    """How a revision came about."""

    DEMO = "demo"
    NEW = "new"
    EDIT = "edit"
    UNDO = "undo"
    RESTORED = "restored"


@dataclass(frozen=True, slots=True, kw_only=True)
class Revision:
    """One state of a document; `parent` is the revision it grew from, if any."""

    number: int
    parent: int | None
    origin: Origin
    changed_at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class StoredDocument:
    """A document in its newest state."""

    kind: Kind
    id: str
    text: str
    revision: Revision


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """A text that was not fit to be saved, kept so that nothing is lost."""

    text: str
    started_from: int
    changed_at: datetime
