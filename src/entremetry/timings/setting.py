"""Everything a run of one piece needs: the piece, how it starts, what it meets, until when."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from entremetry.dessert.placed import Placed
from entremetry.method.waiting import FreezeUntil, ThawUntil
from entremetry.physics.conduction.stage import COLDEST, WARMEST, Stage, Target
from entremetry.physics.conduction.surroundings import Wall
from entremetry.physics.material import Material
from entremetry.timings.mould_wall import AIR_GAP
from entremetry.timings.piece_body import (
    CLOSED_END,
    MOST_CELLS,
    OPENING,
    WALL,
    PieceBody,
    piece_body,
)
from entremetry.timings.place import Place
from entremetry.words import decimal, say

FACES = (CLOSED_END, WALL, OPENING)


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """What a run needs, and what was taken for granted to get there."""

    placed: Placed
    materials: Mapping[str, Material]
    piece: PieceBody
    start: Mapping[str, float]
    stage: Stage
    place: Place
    assumptions: tuple[str, ...]


def setting(
    *,
    placed: Placed,
    materials: Mapping[str, Material],
    start: Mapping[str, float],
    step: FreezeUntil | ThawUntil,
    place: Place,
    foot: str,
    walls: Mapping[str, Wall],
    said: tuple[str, ...],
    most_cells: int = MOST_CELLS,
) -> Setting:
    """Lay a piece on its foot in a place.

    `materials` and `start` are by component; `walls` are put on those faces that the piece has.
    """
    piece = piece_body(placed, materials, most_cells=most_cells)
    faces = [face for face in FACES if face in piece.body.faces]
    around = {face: place.foot if face == foot else place.air for face in faces}
    until = _target(step)
    stage = Stage(
        surroundings=around,
        duration=step.time if until is None else None,
        until=until,
        walls={face: wall for face, wall in walls.items() if face in faces},
    )
    return Setting(
        placed=placed,
        materials=materials,
        piece=piece,
        start={region: start[component] for region, component in piece.components.items()},
        stage=stage,
        place=place,
        assumptions=(*place.assumptions, *said, *_shape(piece), *_standing(faces, foot)),
    )


def _target(step: FreezeUntil | ThawUntil) -> Target | None:
    """The warmest place when it freezes, the coldest when it thaws."""
    if step.temperature is None:
        return None
    falling = isinstance(step, FreezeUntil)
    return Target(of=WARMEST if falling else COLDEST, temperature=step.temperature, falling=falling)


def _shape(piece: PieceBody) -> tuple[str, ...]:
    shape = (say("The shape is {roughly}.", roughly=piece.roughly),) if piece.roughly else ()
    gap = say(
        "Solids that lie on each other have {gap} mm of air between them.",
        gap=decimal(f"{AIR_GAP * 1e3:.1f}"),
    )
    return (*shape, gap) if piece.laid else shape


def _standing(faces: list[str], foot: str) -> tuple[str, ...]:
    if foot in faces:
        return ()
    return (say("It is round below and hardly touches what it stands on, so only the air counts."),)
