"""Every component of a dessert taken through its method, those others are made from first."""

from __future__ import annotations

from collections.abc import Mapping

from entremetry.dessert.dessert import Component, Dessert, Line
from entremetry.formula import scaled
from entremetry.formula.mix import Mix
from entremetry.larder.spoken_name import ingredient_name
from entremetry.method.made import Made
from entremetry.method.making import make
from entremetry.method.portion import Portion


def all_made(dessert: Dessert) -> dict[str, Made]:
    """One batch of each formula, by component id.

    Raises
    ------
    BalanceError
        If a step takes more than there is.
    DocumentError
        If a method names lines or bowls that are not there.
    """
    made: dict[str, Made] = {}
    for component in dessert.components:
        made[component.id] = make(
            portions(component, made, dessert),
            component.steps,
            component_name=component.name,
            component_id=component.id,
            kind=component.kind,
            density=component.density,
        )
    return made


def portions(
    component: Component, made: Mapping[str, Made], dessert: Dessert
) -> dict[str, Portion]:
    """What each line of a formula brings along."""
    return {line.name: _portion(line, made, dessert) for line in component.lines}


def _portion(line: Line, made: Mapping[str, Made], dessert: Dessert) -> Portion:
    if line.ingredient is not None:
        return Portion(
            name=ingredient_name(line.ingredient),
            ingredient=line.ingredient.id,
            constituents=line.ingredient.composition * line.mass,
            tags=line.ingredient.tags,
        )
    component = str(line.component)
    mix: Mix = made[component].mix
    part = scaled(mix, line.mass / mix.mass)
    return Portion(
        name=dessert.names[component],
        ingredient=component,
        tags=_tags(component, dessert),
        constituents=part.constituents,
        gas=part.gas,
    )


def _tags(component_id: str, dessert: Dessert) -> frozenset[str]:
    """Tags of everything a component is made of, so that no caution is lost on the way."""
    component = next(c for c in dessert.components if c.id == component_id)
    tags: frozenset[str] = frozenset()
    for line in component.lines:
        tags |= line.ingredient.tags if line.ingredient else _tags(str(line.component), dessert)
    return tags
