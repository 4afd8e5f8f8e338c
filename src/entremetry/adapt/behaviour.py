"""How a finished component depends on the masses of its lines, and what it is like.

The method decides what becomes of a line: water boils off, a sieve holds back, a pod is taken
out. So each line is made a little heavier in turn, the method followed again, and the difference
taken: near the formula, that is what a kilogram of the line adds to the finished component.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from entremetry.dessert.dessert import Component, Dessert, Line
from entremetry.dessert.made_components import all_made, portions
from entremetry.errors import UnknownName
from entremetry.formula.gelatine_swap import strength
from entremetry.formula.measures import MEASURES
from entremetry.formula.state import state_of
from entremetry.larder.constituents import NAMES
from entremetry.method.made import Made
from entremetry.method.making import make
from entremetry.method.portion import Portion
from entremetry.physics.gelatine import BloomRule

if TYPE_CHECKING:
    from entremetry.physics.arrays import Floats

NUDGE = 1e-3  # part by which a line is made heavier
PROTEIN = NAMES.index("protein")


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Behaviour:
    """State of a finished component [kg], and what a kg of each line adds to it."""

    component: Component
    made: Made
    state: Floats
    adds: Mapping[str, Floats]

    @property
    def fixed(self) -> Floats:
        """What is in it whatever its lines weigh: soaking water in, steam out."""
        masses = {line.name: line.mass for line in self.component.lines}
        fixed: Floats = self.state - sum(masses[n] * added for n, added in self.adds.items())
        return fixed

    def measured(self) -> dict[str, float | None]:
        """Value of every measure."""
        return {name: measure.value(self.state) for name, measure in MEASURES.items()}


def reweighed(dessert: Dessert, component_id: str, masses: Mapping[str, float]) -> Dessert:
    """A dessert of which one formula has other masses [kg]; its text is as it was."""
    component = component_of(dessert, component_id)
    lines = tuple(replace(line, mass=masses[line.name]) for line in component.lines)
    changed = replace(component, lines=lines)
    return replace(
        dessert,
        components=tuple(changed if c.id == component_id else c for c in dessert.components),
    )


def component_of(dessert: Dessert, component_id: str) -> Component:
    """The component with this id; UnknownName if there is none."""
    found = {component.id: component for component in dessert.components}
    if component_id not in found:
        raise UnknownName("component of this dessert", component_id, found)
    return found[component_id]


def behaviour(dessert: Dessert, component_id: str, rule: BloomRule) -> Behaviour:
    """What a component is like, and what each of its lines does to it.

    Raises
    ------
    UnknownName
        If the dessert has no such component.
    BalanceError, DocumentError
        If its method cannot be followed.
    """
    component = component_of(dessert, component_id)
    made = all_made(dessert)
    parts = portions(component, made, dessert)
    bare = state_of(made[component_id].mix.constituents)
    set_by = _strengths(dessert, rule)
    adds = {
        line.name: _added(component, parts, line.name, bare, _line_strength(line, set_by, rule))
        for line in component.lines
    }
    state = bare.copy()
    state[-1] = sum(adds[line.name][-1] * line.mass for line in component.lines)
    return Behaviour(component=component, made=made[component_id], state=state, adds=adds)


def _added(
    component: Component, parts: Mapping[str, Portion], name: str, bare: Floats, sets: float
) -> Floats:
    """What a kg of a line adds to the finished component."""
    mass = parts[name].mass
    heavier = {**parts, name: parts[name].scaled(1.0 + NUDGE)}
    after = make(
        heavier,
        component.steps,
        component_name=component.name,
        component_id=component.id,
        kind=component.kind,
        density=component.density,
    )
    added: Floats = (state_of(after.mix.constituents) - bare) / (NUDGE * mass)
    protein = parts[name].constituents.protein / mass
    added[-1] = sets * (added[PROTEIN] / protein if protein > 0.0 else 1.0)
    return added


def _strengths(dessert: Dessert, rule: BloomRule) -> dict[str, float]:
    """Gelatine of 200 Bloom in a kg of each component, for those that others are made from."""
    found: dict[str, float] = {}
    for component in dessert.components:
        whole = sum(line.mass for line in component.lines)
        sets = sum(_line_strength(line, found, rule) * line.mass for line in component.lines)
        found[component.id] = sets / whole
    return found


def _line_strength(line: Line, of_components: Mapping[str, float], rule: BloomRule) -> float:
    if line.ingredient is not None:
        return strength(line.ingredient, rule)
    return of_components.get(str(line.component), 0.0)
