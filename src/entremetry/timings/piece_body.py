"""The body of one piece for the heat kernel: its section, its parts, its faces."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from entremetry.dessert.placed import Filled, Placed
from entremetry.errors import QuantityError
from entremetry.physics.conduction.body import Body
from entremetry.physics.conduction.outline import Outline
from entremetry.physics.conduction.section_body import plane_body, round_body
from entremetry.physics.material import Material
from entremetry.shapes import Box, Floats, Solid
from entremetry.timings.half_outline import STRAIGHT, Lie, closed, enclosed, half_wall, lie_of
from entremetry.timings.piece_regions import contacts, main_part, regions
from entremetry.words import decimal, say, say_later

CLOSED_END, WALL, OPENING, AXIS = "closed end", "wall", "opening", "axis"
FINEST = 1e-3  # m
MOST_CELLS = 1600
GRAIN = 0.25e-3  # m across and high; in less, sweeps along each axis in turn lose their pace
INSIDE = 2e-3  # m: how far the edge is watched from the wall
WATCHED = {"heart": say_later("heart"), "edge": say_later("edge")}
"""What the points are called that no component has."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceBody:
    """A body, the component in each of its regions, and the points worth watching [m].

    `roughly` says what of the true shape is left out, or nothing; `laid` whether solids lie on each
    other in it, with air between. `outline` is the edge of the
    half section, `parts` the edges of the regions in it [m].
    """

    body: Body
    components: Mapping[str, str]
    points: Mapping[str, tuple[float, float]]
    outline: Floats
    parts: tuple[Floats, ...] = ()
    roughly: str = ""
    laid: bool = False


def piece_body(
    placed: Placed, materials: Mapping[str, Material], *, most_cells: int = MOST_CELLS
) -> PieceBody:
    """Body of a filled cavity as it lies in its mould, closed end at level 0.

    Round moulds are turned around their axis; logs, bars and frames are cut across, their ends
    left out; every other shape becomes the round body of the same height and the same area at
    each level, with the true area of its wall.

    Raises
    ------
    QuantityError
        If the piece is no larger than a grain.
    """
    main, lie = main_part(placed), lie_of(placed.cavity)
    whole = _whole(placed, lie)
    found, left_out = regions(placed, materials, lie)
    spacing, gaps = _spacing(whole, most_cells), contacts(placed, found, lie)
    if lie is Lie.ROUND:
        body = _with_true_wall(
            round_body(whole, materials[main.component], found, spacing, gaps), placed.cavity
        )
    else:
        top = float(whole.points[:, 1].max())
        depth = placed.cavity.volume_below(top) / enclosed(whole.points)  # both halves
        body = plane_body(whole, materials[main.component], found, spacing, gaps, depth)
    return PieceBody(
        body=body,
        components={"body": main.component} | {r.name: r.name.partition("/")[0] for r in found},
        points=_points(placed, whole, {r.name.partition("/")[0] for r in found}),
        outline=whole.points,
        parts=tuple(region.points for region in found),
        laid=bool(gaps),
        roughly="; ".join(filter(None, (_roughly(placed.cavity, lie), left_out))),
    )


def alone(solid: Solid, component: str, name: str) -> Placed:
    """A cavity filled with one component, such as an insert in its own mould."""
    filled = Filled(component=component, name=name, low=0.0, high=solid.height, volume=solid.volume)
    return Placed(
        cavity=solid, inclusions=(), filled=(filled,), walls=(), free_height=0.0, centred=()
    )


def _spacing(whole: Outline, most_cells: int) -> float:
    """A millimetre, or as much more as keeps the cells few. [m]"""
    across, height = np.ptp(whole.points, axis=0)
    if max(across, height) < GRAIN:
        raise QuantityError(
            say("a piece of {size} mm", size=decimal(f"{1e3 * max(across, height):.2g}")),
            say(
                "a piece of {least} mm or more: a grain is as warm as its mould at once",
                least=decimal(f"{1e3 * GRAIN:g}"),
            ),
        )
    return max(FINEST, float(np.sqrt(across * height / most_cells)))


def _whole(placed: Placed, lie: Lie) -> Outline:
    """Half section of the cavity, as far as it is filled, with its faces named."""
    top = max([*(p.high for p in placed.filled), *(p.high for p in placed.inclusions)])
    wall = half_wall(placed.cavity, lie, top)
    points = closed(wall)
    flat = (wall[:-1, 1] < STRAIGHT) & (wall[1:, 1] < STRAIGHT)
    faces = [CLOSED_END if level else WALL for level in flat]
    after = np.roll(points, -1, axis=0)
    for here, there in zip(points[len(faces) :], after[len(faces) :], strict=True):
        if max(here[0], there[0]) < STRAIGHT:
            faces.append(AXIS)
        else:
            faces.append(OPENING if here[1] > STRAIGHT else CLOSED_END)
    return Outline(points, tuple(faces))


def _with_true_wall(body: Body, cavity: Solid) -> Body:
    """The round stand-in of an angular shape with as much wall as the shape itself has."""
    if hasattr(cavity, "profile"):
        return body
    flat = body.area(CLOSED_END) if CLOSED_END in body.faces else 0.0
    factor = (cavity.wall_area - flat) / _wall_area(half_wall(cavity, Lie.ROUND))
    area = np.where(
        body.skin.face == body.face_number(WALL), factor * body.skin.area, body.skin.area
    )
    return replace(body, skin=replace(body.skin, area=area))


def _wall_area(wall: Floats) -> float:
    """Area that a wall sweeps around the axis, its flat closed end left out. [m2]"""
    step = np.diff(wall, axis=0)
    swept = np.pi * (wall[1:, 0] + wall[:-1, 0]) * np.hypot(step[:, 0], step[:, 1])
    return float(swept[(wall[:-1, 1] > STRAIGHT) | (wall[1:, 1] > STRAIGHT)].sum())


def _points(placed: Placed, whole: Outline, kept: set[str]) -> dict[str, tuple[float, float]]:
    """Heart of the piece, middle of each insert, and a place just inside the wall near the rim."""
    height = float(whole.points[:, 1].max())
    points = {"heart": (_middle(whole, height / 2.0), height / 2.0)}
    for part in placed.inclusions:
        if not part.is_base and part.component in kept:
            level = (part.low + part.high) / 2.0
            points[part.component] = (_middle(whole, level), level)
    level = 0.9 * height
    reach = max(_reaches(whole, level))
    points["edge"] = (max(reach - INSIDE, reach / 2.0), level)
    return points


def _reaches(whole: Outline, level: float) -> list[float]:
    """Where the outline crosses a level, from the inside out. [m]"""
    here, there = whole.points, np.roll(whole.points, -1, axis=0)
    crosses = (here[:, 1] >= level) != (there[:, 1] >= level)
    share = (level - here[crosses, 1]) / (there[crosses, 1] - here[crosses, 1])
    found = here[crosses, 0] + share * (there[crosses, 0] - here[crosses, 0])
    return sorted(float(across) for across in found)


def _middle(whole: Outline, level: float) -> float:
    """Where the middle is across: on the axis, or in the band of a ring."""
    inner, *_, outer = _reaches(whole, level)
    return 0.0 if inner < STRAIGHT else (inner + outer) / 2.0


def _roughly(cavity: Solid, lie: Lie) -> str:
    if lie is not Lie.ROUND:
        return say("cut across the middle of its length, the ends left out")
    if isinstance(cavity, Box) or not hasattr(cavity, "profile"):
        return say("taken as the round piece of the same height, areas and wall")
    return ""
