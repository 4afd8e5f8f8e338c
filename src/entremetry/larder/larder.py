"""All ingredients that can be used, by id and by name."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from entremetry.errors import UnknownName
from entremetry.larder.ingredient import Ingredient


@dataclass(frozen=True)
class Larder:
    """A set of ingredients; the later of two with one id overrides the earlier."""

    ingredients: tuple[Ingredient, ...]
    _by_id: dict[str, Ingredient] = field(init=False, repr=False, compare=False)
    _by_name: dict[str, Ingredient] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        by_id = {ingredient.id: ingredient for ingredient in self.ingredients}
        by_name: dict[str, Ingredient] = {}
        for ingredient in by_id.values():
            for name in (ingredient.id, ingredient.name, *ingredient.aliases):
                by_name.setdefault(name.casefold(), ingredient)
        object.__setattr__(self, "ingredients", tuple(by_id.values()))
        object.__setattr__(self, "_by_id", by_id)
        object.__setattr__(self, "_by_name", by_name)

    def __iter__(self) -> Iterator[Ingredient]:
        return iter(self.ingredients)

    def __len__(self) -> int:
        return len(self.ingredients)

    def __contains__(self, ingredient_id: object) -> bool:
        return ingredient_id in self._by_id

    def find(self, name: str) -> Ingredient:
        """Return the ingredient with this id, name or alias.

        Raises
        ------
        UnknownName
            With the three nearest names, if there is none.
        """
        found = self._by_id.get(name) or self._by_name.get(name.strip().casefold())
        if found is None:
            raise UnknownName("ingredient", name, self._by_name)
        return found

    def with_own(self, own: Iterable[Ingredient]) -> Larder:
        """Return a larder in which `own` ingredients are added or override."""
        return Larder((*self.ingredients, *own))
