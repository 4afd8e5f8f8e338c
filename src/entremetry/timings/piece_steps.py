"""Freezing and thawing a piece or an insert: what lies where, how it starts, what it meets."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from entremetry.dessert.dessert import Component
from entremetry.dessert.placed import Placed
from entremetry.dessert.placement import CoatingPlacement
from entremetry.dessert.reckoning import Reckoning
from entremetry.errors import QuantityError
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.method.shaping import Cut
from entremetry.method.waiting import FreezeUntil, ThawUntil
from entremetry.physics.conduction.stage import COLDEST, WARMEST, Stage, Target
from entremetry.physics.conduction.surroundings import Surroundings, Wall
from entremetry.physics.material import Material
from entremetry.shapes import Solid
from entremetry.timings.component_food import component_material
from entremetry.timings.cut_portion import cut_portion
from entremetry.timings.mixing import folded_temperature
from entremetry.timings.mould_wall import mould_wall
from entremetry.timings.piece_body import (
    CLOSED_END,
    OPENING,
    WALL,
    PieceBody,
    alone,
    piece_body,
)
from entremetry.timings.place import Place, place
from entremetry.timings.start import ready_temperature

FREEZER_COLD = 255.15  # K, what a piece has when it leaves the freezer
SILICONE = Wall(thickness=2.0e-3, conductivity=0.235, heat_capacity=1.5e6)
GLAZE_CONDUCTIVITY = 0.4  # W/(m K), our_own: syrup with gelatine at 60 to 70 °Brix
GLAZE_HEAT = 3.3e6  # J/(m3 K), the same


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """Everything a run needs, and what was taken for granted to get there."""

    piece: PieceBody
    start: Mapping[str, float]
    stage: Stage
    place: Place
    assumptions: tuple[str, ...]


def freezing(reckoning: Reckoning, step: FreezeUntil, kitchen: KitchenDocument | None) -> Setting:
    """The filled mould in the freezer, closed end down."""
    mould, placed = reckoning.dessert.mould, reckoning.placed
    there = place(step.where or "freezer", step.on, kitchen)
    piece = piece_body(placed, materials(reckoning))
    start, said = _starts(reckoning, piece, kitchen)
    wall = mould_wall(mould)
    covered = [face for face in (CLOSED_END, WALL) if face in piece.body.faces]
    return Setting(
        piece=piece,
        start=start,
        stage=_stage(step, _faces(piece, there, foot=CLOSED_END), {f: wall for f in covered}),
        place=there,
        assumptions=(*there.assumptions, *said, *_rough(piece)),
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
    there = place(step.where or "freezer", step.on, kitchen)
    material = component_material(reckoning.makings[component.id], component.kind, component.name)
    piece = piece_body(alone(solid, component.id, component.name), {component.id: material})
    temperature, how = ready_temperature(
        component.steps[: component.steps.index(step)], _room(kitchen)
    )
    covered = [face for face in (CLOSED_END, WALL) if face in piece.body.faces]
    return Setting(
        piece=piece,
        start={"body": temperature},
        stage=_stage(step, _faces(piece, there, foot=CLOSED_END), {f: SILICONE for f in covered}),
        place=there,
        assumptions=(
            *there.assumptions,
            "The insert is frozen in a silicone mould of its own shape.",
            f"It starts at {temperature - 273.15:.0f} °C, {how}.",
            *_rough(piece),
        ),
    )


def thawing(reckoning: Reckoning, step: ThawUntil, kitchen: KitchenDocument | None) -> Setting:
    """The piece as it is served, out of its mould and on its base."""
    mould = reckoning.dessert.mould
    there = place(step.where or "fridge", step.on, kitchen)
    piece = piece_body(_as_served(reckoning, step), materials(reckoning))
    foot = OPENING if mould.fills_upside_down else CLOSED_END
    walls: dict[str, Wall | None] = {}
    if mould.vessel:
        walls = {f: mould_wall(mould) for f in (CLOSED_END, WALL) if f in piece.body.faces}
    elif film := _glaze(reckoning):
        free = {CLOSED_END, WALL, OPENING} - {foot}
        walls = {face: film for face in free if face in piece.body.faces}
    return Setting(
        piece=piece,
        start={"body": FREEZER_COLD},
        stage=_stage(step, _faces(piece, there, foot=foot), walls),
        place=there,
        assumptions=(
            *there.assumptions,
            f"The piece leaves the freezer at {FREEZER_COLD - 273.15:.0f} °C.",
            *_rough(piece),
        ),
    )


def _as_served(reckoning: Reckoning, step: ThawUntil) -> Placed:
    """The whole piece, or one portion if the frame is cut before it thaws."""
    document = reckoning.dessert.document
    before = document.assembly[: document.assembly.index(step)]
    if document.portions is not None and any(isinstance(s, Cut) for s in before):
        return cut_portion(reckoning.placed, document.portions)
    return reckoning.placed


def materials(reckoning: Reckoning) -> dict[str, Material]:
    """Thermal properties of every component that lies in the mould."""
    inside = {part.component for part in reckoning.placed.filled}
    inside |= {part.component for part in reckoning.placed.inclusions}
    return {
        component.id: component_material(
            reckoning.makings[component.id], component.kind, component.name
        )
        for component in reckoning.dessert.components
        if component.id in inside
    }


def _stage(
    step: FreezeUntil | ThawUntil,
    surroundings: Mapping[str, Surroundings],
    walls: Mapping[str, Wall | None],
) -> Stage:
    falling = isinstance(step, FreezeUntil)
    until = None
    if step.temperature is not None:
        of = WARMEST if falling else COLDEST
        until = Target(of=of, temperature=step.temperature, falling=falling)
    return Stage(
        surroundings=surroundings,
        duration=step.time if until is None else None,
        until=until,
        walls=walls,
    )


def _faces(piece: PieceBody, there: Place, *, foot: str) -> dict[str, Surroundings]:
    """What each face meets: the foot its support, the others the air."""
    free = [face for face in (CLOSED_END, WALL, OPENING) if face in piece.body.faces]
    return {face: there.foot if face == foot else there.air for face in free}


def _starts(
    reckoning: Reckoning, piece: PieceBody, kitchen: KitchenDocument | None
) -> tuple[dict[str, float], tuple[str, ...]]:
    by_id = {component.id: component for component in reckoning.dessert.components}
    start: dict[str, float] = {}
    said: dict[str, str] = {}
    for region, component_id in piece.components.items():
        component = by_id[component_id]
        start[region], how = _ready(reckoning, component, kitchen)
        said[component.name] = f"{component.name} at {start[region] - 273.15:.0f} °C, {how}"
    return start, (f"At the start: {'; '.join(said.values())}.",)


def _ready(
    reckoning: Reckoning, component: Component, kitchen: KitchenDocument | None
) -> tuple[float, str]:
    """Temperature at which a component goes into the mould [K], and how that is known."""
    folded = folded_temperature(reckoning, component, kitchen)
    if folded is not None:
        return folded, "as the fold leaves it"
    return ready_temperature(component.steps, _room(kitchen))


def _room(kitchen: KitchenDocument | None) -> float:
    return place("room", None, kitchen).temperature


def _insert_solid(reckoning: Reckoning, component: Component) -> Solid:
    for part in reckoning.placed.inclusions:
        if part.component == component.id and not part.is_base:
            return part.solid
    raise QuantityError(
        f"{component.name}, which is placed nowhere as an insert",
        "a component with a shape of its own: only then can its freezing be computed",
    )


def _glaze(reckoning: Reckoning) -> Wall | None:
    for placement in reckoning.dessert.document.placement:
        if isinstance(placement, CoatingPlacement) and placement.film is not None:
            return Wall(
                thickness=placement.film,
                conductivity=GLAZE_CONDUCTIVITY,
                heat_capacity=GLAZE_HEAT,
            )
    return None


def _rough(piece: PieceBody) -> tuple[str, ...]:
    return (f"The shape is {piece.roughly}.",) if piece.roughly else ()
