"""Ingredients found by their names in the language that is spoken; English names are the larder's.

Nothing is guessed: only a whole name is taken, what is merely alike is offered.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from entremetry.larder.ingredient import Ingredient
from entremetry.larder.spelling import plain
from entremetry.larder.spoken_name import larder_name
from entremetry.words import ENGLISH, current


def spoken_ingredient(name: str, larder: Iterable[Ingredient]) -> Ingredient | None:
    """The one ingredient that is called just so, if there is one and only one."""
    wanted = plain(name)
    found = [each for called, each in _called(larder) if called == wanted]
    return found[0] if len(found) == 1 else None


def spoken_alike(name: str, larder: Iterable[Ingredient], most: int = 6) -> tuple[Ingredient, ...]:
    """Ingredients whose names have all the words of this one, the shortest names first."""
    wanted = frozenset(plain(name).split())
    found = [(called, each) for called, each in _called(larder) if wanted <= set(called.split())]
    return tuple(each for _, each in sorted(found, key=lambda pair: len(pair[0]))[:most])


def _called(larder: Iterable[Ingredient]) -> Iterator[tuple[str, Ingredient]]:
    """Yield each ingredient with its name, spelled plainly; none in English."""
    if current() is not ENGLISH:
        yield from ((plain(larder_name(each)), each) for each in larder)
