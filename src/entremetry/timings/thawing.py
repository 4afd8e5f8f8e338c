"""A piece as it is served, thawing on its base."""

from __future__ import annotations

from collections.abc import Mapping

from entremetry.dessert.placed import Placed
from entremetry.dessert.placement import CoatingPlacement
from entremetry.dessert.reckoning import Reckoning
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.method.shaping import Cut
from entremetry.method.waiting import ThawUntil
from entremetry.physics.conduction.surroundings import Wall
from entremetry.quantities import format_celsius
from entremetry.timings.component_food import material_of
from entremetry.timings.cut_portion import cut_portion
from entremetry.timings.mould_wall import AIR_GAP, base_under, mould_wall
from entremetry.timings.piece_body import CLOSED_END, MOST_CELLS, OPENING, WALL
from entremetry.timings.piece_regions import components_of
from entremetry.timings.place import place
from entremetry.timings.setting import FACES, Setting, setting
from entremetry.words import decimal, say

GLAZE_CONDUCTIVITY = 0.4  # W/(m K), our_own: syrup with gelatine at 60 to 70 °Brix
GLAZE_HEAT = 3.3e6  # J/(m3 K), the same


def thawing(
    reckoning: Reckoning,
    step: ThawUntil,
    kitchen: KitchenDocument | None,
    *,
    most_cells: int = MOST_CELLS,
) -> Setting:
    """The piece as it is served, out of its mould and on its base."""
    placed = _as_served(reckoning, step)
    inside = components_of(placed)
    foot = OPENING if reckoning.dessert.mould.fills_upside_down else CLOSED_END
    cold = place("freezer", None, kitchen).temperature
    walls = _worn(reckoning, foot)
    return setting(
        placed=placed,
        materials={component: material_of(reckoning, component) for component in inside},
        start=dict.fromkeys(inside, cold),
        step=step,
        place=place(step.where or "fridge", step.on, kitchen),
        foot=foot,
        walls=walls,
        said=(_leaving(cold), *_laid(walls)),
        most_cells=most_cells,
    )


def _as_served(reckoning: Reckoning, step: ThawUntil) -> Placed:
    """The whole piece, or one portion if the frame is cut before it thaws."""
    document = reckoning.dessert.document
    before = document.assembly[: document.assembly.index(step)]
    if document.portions is not None and any(isinstance(s, Cut) for s in before):
        return cut_portion(reckoning.placed, document.portions)
    return reckoning.placed


def _worn(reckoning: Reckoning, foot: str) -> dict[str, Wall]:
    """What lies on the faces of a piece that is served: its vessel, or glaze and base."""
    mould = reckoning.dessert.mould
    if mould.vessel:
        return dict.fromkeys((CLOSED_END, WALL), mould_wall(mould))
    film, base = _film(reckoning), base_under(reckoning)
    found = {face: film for face in FACES if film and face != foot}
    return found | {foot: base} if base else found


def _leaving(cold: float) -> str:
    return say("The piece leaves the freezer at {temperature}.", temperature=format_celsius(cold))


def _laid(walls: Mapping[str, Wall]) -> tuple[str, ...]:
    """Words on the air between a set piece and the base that it was put on."""
    if not any(wall.contact > 0.0 for wall in walls.values()):
        return ()
    return (
        say(
            "Between the piece and its base there is {gap} mm of air on the whole.",
            gap=decimal(f"{AIR_GAP * 1e3:.1f}"),
        ),
    )


def _film(reckoning: Reckoning) -> Wall | None:
    for placement in reckoning.dessert.document.placement:
        if isinstance(placement, CoatingPlacement) and placement.film is not None:
            return Wall(
                thickness=placement.film,
                conductivity=GLAZE_CONDUCTIVITY,
                heat_capacity=GLAZE_HEAT,
            )
    return None
