"""Look ingredients up."""

from __future__ import annotations

from entremetry.errors import QuantityError, UnknownName
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.larder import Larder
from entremetry.larder.spelling import plain
from entremetry.larder.spoken_name import ingredient_name
from entremetry.store.larder_file import open_larder
from entremetry.words import say


def look_up(words: str, larder: Larder | None = None) -> tuple[Ingredient, ...]:
    """The ingredient of that name, or all whose names hold the words.

    Raises
    ------
    QuantityError
        If nothing is asked for.
    UnknownName
        With the three nearest names, if there is none.
    """
    larder = larder or open_larder()
    if not words.strip():
        raise QuantityError(say("no words"), say("the id or name of an ingredient, or part of it"))
    try:
        return (larder.find(words),)
    except UnknownName:
        found = search(words, larder)
        if not found:
            raise
        return found


def search(words: str, larder: Larder) -> tuple[Ingredient, ...]:
    """Ingredients whose id, name, alias or group holds every word; accents are not looked at."""
    wanted = plain(words).split()
    return tuple(i for i in larder if all(word in _said_of(i) for word in wanted))


def _said_of(ingredient: Ingredient) -> str:
    names = (ingredient.id, ingredient.name, ingredient_name(ingredient), ingredient.group)
    return plain(" ".join((*names, *ingredient.aliases)))
