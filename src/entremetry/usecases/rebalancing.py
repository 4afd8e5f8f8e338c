"""Rebalance one component of a dessert."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from pathlib import Path

from entremetry.adapt.asking import Asked
from entremetry.adapt.rebalanced import Rebalanced
from entremetry.adapt.rebalancing import rebalanced_text
from entremetry.dessert.dessert import Dessert
from entremetry.dessert.locating import located
from entremetry.dessert.made_components import all_made
from entremetry.dessert.reading import read_dessert
from entremetry.dessert.resolving import resolve
from entremetry.store.files import read_text
from entremetry.usecases.batch import Surroundings, surroundings, surroundings_of
from entremetry.words import say_later


def rebalance(path: Path, asked: Asked, *, kitchen: Path | None = None) -> Rebalanced:
    """Rebalance a component of a document in a file.

    Raises
    ------
    EntremetryError
        If the document is refused, or something asked for is not in it.
    """
    text = read_text(path, what=say_later("dessert document"))
    return rebalanced_text(text, asked, opener(str(path), surroundings_of(path, kitchen)))


def rebalance_of_text(
    text: str, asked: Asked, *, file: str = "document", kitchen_text: str | None = None
) -> Rebalanced:
    """Rebalance a component of a document at hand as text; see `rebalance`."""
    return rebalanced_text(text, asked, opener(file, surroundings(kitchen_text, "kitchen")))


def dessert_of_text(
    text: str, *, file: str = "document", kitchen_text: str | None = None
) -> Dessert:
    """A document at hand as text, every name looked up."""
    return opener(file, surroundings(kitchen_text, "kitchen"))(text)


def opener(file: str, around: Surroundings) -> Callable[[str], Dessert]:
    """How a text is read again after each change; its faults are told as of the file."""

    @lru_cache(maxsize=8)
    def open_(text: str) -> Dessert:
        document, tree = read_dessert(text, file=file)
        dessert = resolve(
            document,
            tree,
            file=file,
            larder=around.larder,
            moulds=around.moulds,
            read_mesh=around.read_mesh,
            measures=around.kitchen.measures if around.kitchen else None,
        )
        with located(document, tree, file=file):
            all_made(dessert)
        return dessert

    return open_
