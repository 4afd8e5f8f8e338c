"""All ingredients that can be used, by id and by name."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from entremetry.errors import UnknownName, nearest_names
from entremetry.larder.generic import Generic, generic_for
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.spelling import plain

FEW = 12  # names looked at; several may be of one ingredient


@dataclass(frozen=True)
class Larder:
    """A set of ingredients; the later of two with one id overrides the earlier."""

    ingredients: tuple[Ingredient, ...]
    _by_id: dict[str, Ingredient] = field(init=False, repr=False, compare=False)
    _by_name: dict[str, Ingredient] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        by_id = {ingredient.id: ingredient for ingredient in self.ingredients}
        self._fill(by_id, _named(by_id.values()))

    def _fill(self, by_id: dict[str, Ingredient], by_name: dict[str, Ingredient]) -> None:
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
        found = self.known(name)
        if found is None:
            raise UnknownName("ingredient", name, self._nearest(name))
        return found

    def resolve(self, name: str) -> Ingredient | Generic:
        """Return the ingredient with this name, or what must be asked if it could be several.

        An id is always itself. A word such as 'gelatine' or 'cream' is asked about, unless an
        own ingredient bears it.

        Raises
        ------
        UnknownName
            With the three nearest names, if nothing bears the name.
        """
        exact = self._by_id.get(name.strip())
        if exact is not None:
            return exact
        generic = generic_for(name)
        known = self.known(name)
        if generic is None or len(generic.choices) == 1 or (known and known.overridden):
            return self.find(name)
        return generic

    def with_own(self, own: Iterable[Ingredient]) -> Larder:
        """Return a larder in which `own` ingredients are added or override.

        Their names win over those of the larder, which is not indexed again.
        """
        mine = {ingredient.id: ingredient for ingredient in own}
        if not mine:
            return self
        kept = {name: i for name, i in self._by_name.items() if i.id not in mine}
        larder = object.__new__(Larder)
        larder._fill({**self._by_id, **mine}, {**kept, **_named(mine.values())})
        return larder

    def known(self, name: str) -> Ingredient | None:
        """Return the ingredient with this id, name or alias, if there is one."""
        return self._by_id.get(name.strip()) or self._by_name.get(plain(name))

    def _nearest(self, name: str) -> list[str]:
        """Nearest name of each of the three ingredients with the nearest names."""
        nearest: dict[str, str] = {}
        for near in nearest_names(name, self._names(), count=FEW):
            nearest.setdefault(self.find(near).id, near)
        return list(nearest.values())[:3]

    def _names(self) -> list[str]:
        return [
            name
            for ingredient in self.ingredients
            for name in (ingredient.id, ingredient.name, *ingredient.aliases)
        ]


def _named(ingredients: Iterable[Ingredient]) -> dict[str, Ingredient]:
    """Ingredients by every name they bear; the first of two keeps a name."""
    by_name: dict[str, Ingredient] = {}
    for ingredient in ingredients:
        for name in (ingredient.id, ingredient.name, *ingredient.aliases):
            by_name.setdefault(plain(name), ingredient)
    return by_name
