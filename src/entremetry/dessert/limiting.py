"""From what there is of one ingredient to how many pieces it gives."""

from __future__ import annotations

from entremetry.dessert.document import MAX_PIECES
from entremetry.dessert.reckoning import Reckoning
from entremetry.errors import BalanceError, UnknownName
from entremetry.quantities import format_mass
from entremetry.words import say


def pieces_from(reckoning: Reckoning, ingredient: str, have: float) -> int:
    """The most pieces that so much [kg] of an ingredient gives.

    Raises
    ------
    UnknownName
        If the dessert has no such ingredient.
    BalanceError
        If it is not enough for one piece.
    """
    ingredient_id = _ingredient_id(reckoning, ingredient)
    if _wanted(reckoning, ingredient_id, 1) > have:
        one = format_mass(_wanted(reckoning, ingredient_id, 1))
        raise BalanceError(
            say(
                "{have} of {ingredient} is not enough for one piece, which takes {one}",
                have=format_mass(have),
                ingredient=ingredient,
                one=one,
            )
        )
    low, high = 1, MAX_PIECES
    while low < high:
        middle = (low + high + 1) // 2
        if _wanted(reckoning, ingredient_id, middle) <= have:
            low = middle
        else:
            high = middle - 1
    return low


def _wanted(reckoning: Reckoning, ingredient_id: str, pieces: int) -> float:
    """Mass of an ingredient in a batch. [kg]"""
    required = reckoning.requirements(pieces)
    return sum(
        line.mass * required[component.id].factor
        for component in reckoning.dessert.components
        for line in component.lines
        if line.ingredient is not None and line.ingredient.id == ingredient_id
    )


def _ingredient_id(reckoning: Reckoning, wanted: str) -> str:
    """Id of an ingredient of this dessert, by its id, its name or the name of its line."""
    names: dict[str, str] = {}
    for component in reckoning.dessert.components:
        for line in component.lines:
            if line.ingredient is not None:
                found = line.ingredient
                for name in (line.name, *found.aliases, found.name, found.id):
                    names[name.casefold()] = found.id
    folded = wanted.strip().casefold()
    if folded not in names:
        raise UnknownName("ingredient of this dessert", wanted, names)
    return names[folded]
