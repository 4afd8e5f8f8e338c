"""What one piece holds of each ingredient, as it was weighed and after all that was lost."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from entremetry.dessert.dessert import Component, Line
from entremetry.dessert.needs import total
from entremetry.dessert.reckoning import Reckoning
from entremetry.larder.constituents import Constituents
from entremetry.larder.ingredient import Ingredient
from entremetry.method.made import Made

WATER = "water"


@dataclass(frozen=True, slots=True, kw_only=True)
class Content:
    """What is in a mass of food [kg]: its constituents, and the ingredients they come from.

    `held` has the mass of each ingredient as it was weighed, of which nothing but water has left
    since, and no added water; `water` is the added water before any was driven off. `taken_out`
    are ingredients that were strained out after they had given their flavour.
    """

    id: str
    name: str
    mass: float
    constituents: Constituents
    held: Mapping[str, float] = field(default_factory=dict)
    water: float = 0.0
    taken_out: Mapping[str, float] = field(default_factory=dict)
    ingredients: Mapping[str, Ingredient] = field(default_factory=dict)

    def times(self, factor: float) -> Content:
        """The same food, `factor` times as much."""
        return Content(
            id=self.id,
            name=self.name,
            mass=self.mass * factor,
            constituents=self.constituents * factor,
            held={name: mass * factor for name, mass in self.held.items()},
            water=self.water * factor,
            taken_out={name: mass * factor for name, mass in self.taken_out.items()},
            ingredients=self.ingredients,
        )

    @property
    def added_water(self) -> float:
        """Added water in the finished food: what all other ingredients do not account for. [kg]

        As annex VII, part A of eu_1169_2011 counts it.
        """
        return min(self.water, max(0.0, self.mass - sum(self.held.values())))


def together(id: str, name: str, contents: Iterable[Content]) -> Content:
    """Several foods as one."""
    found = tuple(contents)
    whole = Constituents()
    for content in found:
        whole = whole + content.constituents
    return Content(
        id=id,
        name=name,
        mass=sum(content.mass for content in found),
        constituents=whole,
        held=_added(content.held for content in found),
        water=sum(content.water for content in found),
        taken_out=_added(content.taken_out for content in found),
        ingredients={i: each for content in found for i, each in content.ingredients.items()},
    )


def piece_contents(reckoning: Reckoning) -> tuple[Content, ...]:
    """What one piece holds of each component that is placed in or on it."""
    ready = ready_contents(reckoning)
    found = []
    for component in reckoning.dessert.components:
        mass = total(reckoning.needs, component.id).on_piece
        if mass > 0.0:
            found.append(ready[component.id].times(mass / ready[component.id].mass))
    return tuple(found)


def ready_contents(reckoning: Reckoning) -> dict[str, Content]:
    """One batch of each formula when it is ready for the mould, by component."""
    ready: dict[str, Content] = {}
    for component in reckoning.dessert.components:
        ready[component.id] = _ready(component, reckoning.makings[component.id], ready)
    return ready


def _ready(component: Component, made: Made, ready: Mapping[str, Content]) -> Content:
    brought = together(
        component.id,
        component.name,
        (_brought(line, made.kept.get(line.name, 0.0), ready) for line in component.lines),
    )
    soaked = sum(water * made.kept.get(line, 0.0) for line, water in made.soaking_water)
    return Content(
        id=component.id,
        name=component.name,
        mass=made.mix.mass,
        constituents=made.mix.constituents,
        held=brought.held,
        water=brought.water + soaked,
        taken_out=brought.taken_out,
        ingredients=brought.ingredients,
    )


def _brought(line: Line, kept: float, ready: Mapping[str, Content]) -> Content:
    """What a line leaves in the finished component; its constituents are counted there."""
    if line.component is not None:
        part = ready[line.component]
        return _left(part.times(line.mass / part.mass), kept)
    if line.ingredient is None:
        return Content(id="", name="", mass=0.0, constituents=Constituents())
    ingredient = line.ingredient
    water = line.mass if ingredient.id == WATER else 0.0
    whole = Content(
        id=ingredient.id,
        name=ingredient.name,
        mass=line.mass,
        constituents=Constituents(),
        held={} if water else {ingredient.id: line.mass},
        water=water,
        ingredients={} if water else {ingredient.id: ingredient},
    )
    return _left(whole, kept)


def _left(whole: Content, kept: float) -> Content:
    """A share of what went in; if nothing of it is left, it was taken out."""
    if kept > 0.0:
        return whole.times(kept)
    return Content(
        id=whole.id,
        name=whole.name,
        mass=0.0,
        constituents=Constituents(),
        taken_out=_added([whole.held, whole.taken_out]),
        ingredients=whole.ingredients,
    )


def _added(each: Iterable[Mapping[str, float]]) -> dict[str, float]:
    sums: dict[str, float] = {}
    for masses in each:
        for name, mass in masses.items():
            sums[name] = sums.get(name, 0.0) + mass
    return sums
