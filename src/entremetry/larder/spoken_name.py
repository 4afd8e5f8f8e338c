"""Names of ingredients in the language that is spoken; what an author named keeps its name."""

from __future__ import annotations

from collections.abc import Iterable

from entremetry.larder.ingredient import Ingredient
from entremetry.words import is_said_as, say, say_as

CONTEXT = "ingredient"
"""Context of the larder's names in the catalogues."""
OWN = " (own)"


def ingredient_name(ingredient: Ingredient) -> str:
    """Name of an ingredient, to be printed."""
    if is_named(ingredient):
        return ingredient.name
    if ingredient.name.endswith(OWN):
        return say("{name} (own)", name=larder_name(ingredient))
    return larder_name(ingredient)


def larder_name(ingredient: Ingredient) -> str:
    """The same without a word that it is an own one, changed from the larder's."""
    if is_named(ingredient):
        return ingredient.name
    return say_as(CONTEXT, ingredient.name.removesuffix(OWN))


def is_named(ingredient: Ingredient) -> bool:
    """Whether a cook gave it its name."""
    return "name" in ingredient.overridden


def untranslated_names(ingredients: Iterable[Ingredient]) -> tuple[str, ...]:
    """Names of the larder that the spoken language has no word for, each once."""
    names = (i.name.removesuffix(OWN) for i in ingredients if not is_named(i))
    return tuple(dict.fromkeys(name for name in names if not is_said_as(CONTEXT, name)))
