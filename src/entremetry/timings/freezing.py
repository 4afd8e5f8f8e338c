"""A filled mould, or an insert in its own, going into the freezer."""

from __future__ import annotations

from entremetry.dessert.dessert import Component
from entremetry.dessert.reckoning import Reckoning
from entremetry.errors import QuantityError
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.method.waiting import FreezeUntil
from entremetry.quantities import format_celsius
from entremetry.shapes import Solid
from entremetry.timings.component_food import material_of
from entremetry.timings.mixing import folded_temperature
from entremetry.timings.mould_wall import SILICONE, mould_wall
from entremetry.timings.piece_body import CLOSED_END, MOST_CELLS, WALL, alone
from entremetry.timings.piece_regions import components_of
from entremetry.timings.place import place
from entremetry.timings.setting import Setting, setting
from entremetry.timings.start import ready_temperature
from entremetry.words import say


def freezing(
    reckoning: Reckoning,
    step: FreezeUntil,
    kitchen: KitchenDocument | None,
    *,
    most_cells: int = MOST_CELLS,
) -> Setting:
    """The filled mould in the freezer, closed end down."""
    placed = reckoning.placed
    inside = components_of(placed)
    ready = {component: _ready(reckoning, component, kitchen) for component in inside}
    names = reckoning.dessert.names
    told = (
        say("{name} at {temperature}, {how}", name=names[c], temperature=format_celsius(t), how=how)
        for c, (t, how) in ready.items()
    )
    wall = mould_wall(reckoning.dessert.mould)
    return setting(
        placed=placed,
        materials={component: material_of(reckoning, component) for component in inside},
        start={component: temperature for component, (temperature, _) in ready.items()},
        step=step,
        place=place(step.where or "freezer", step.on, kitchen),
        foot=CLOSED_END,
        walls={CLOSED_END: wall, WALL: wall},
        said=(say("At the start: {parts}.", parts="; ".join(told)),),
        most_cells=most_cells,
    )


def freezing_insert(
    reckoning: Reckoning,
    component: Component,
    step: FreezeUntil,
    kitchen: KitchenDocument | None,
) -> Setting:
    """An insert in its own silicone mould.

    Raises
    ------
    QuantityError
        If the component is placed nowhere as an insert, so that its shape is unknown.
    """
    solid = _insert_solid(reckoning, component)
    before = component.steps[: component.steps.index(step)]
    temperature, how = ready_temperature(before, place("room", None, kitchen).temperature)
    return setting(
        placed=alone(solid, component.id, component.name),
        materials={component.id: material_of(reckoning, component.id)},
        start={component.id: temperature},
        step=step,
        place=place(step.where or "freezer", step.on, kitchen),
        foot=CLOSED_END,
        walls={CLOSED_END: SILICONE, WALL: SILICONE},
        said=(
            say("The insert is frozen in a silicone mould of its own shape."),
            say(
                "It starts at {temperature}, {how}.",
                temperature=format_celsius(temperature),
                how=how,
            ),
        ),
    )


def _ready(
    reckoning: Reckoning, component_id: str, kitchen: KitchenDocument | None
) -> tuple[float, str]:
    """Temperature at which a component goes into the mould [K], and how that is known."""
    component = next(c for c in reckoning.dessert.components if c.id == component_id)
    folded = folded_temperature(reckoning, component, kitchen)
    if folded is not None:
        return folded, say("as the fold leaves it")
    return ready_temperature(component.steps, place("room", None, kitchen).temperature)


def _insert_solid(reckoning: Reckoning, component: Component) -> Solid:
    for part in reckoning.placed.inclusions:
        if part.component == component.id and not part.is_base:
            return part.solid
    raise QuantityError(
        say("{name}, which is placed nowhere as an insert", name=component.name),
        say("a component with a shape of its own: only then can its freezing be computed"),
    )
