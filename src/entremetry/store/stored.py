"""What the store gives back: frozen, and free of any database."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from entremetry.words import say_later


class Kind(StrEnum):
    """The kinds of document that are kept."""

    DESSERT = "dessert"
    KITCHEN = "kitchen"
    PRICES = "prices"


TAKEN = {
    Kind.DESSERT: say_later("a dessert with the id '{id}' exists; choose another id"),
    Kind.KITCHEN: say_later("a kitchen with the id '{id}' exists; choose another id"),
    Kind.PRICES: say_later("a prices with the id '{id}' exists; choose another id"),
}
"""What is said when an id is taken."""


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
