"""The body of one piece for the heat kernel: its section, its parts, its faces."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from entremetry.dessert.placed import Filled, Inclusion, Placed
from entremetry.physics.conduction.body import Body
from entremetry.physics.conduction.outline import Outline, Region, outline
from entremetry.physics.conduction.section_body import plane_body, round_body
from entremetry.physics.material import Material
from entremetry.shapes import Box, Floats, Log, Ring, Solid
from entremetry.timings.half_outline import between, half_outline, mirrored

CLOSED_END, WALL, OPENING, AXIS = "closed end", "wall", "opening", "axis"
FINEST = 1e-3  # m
MOST_CELLS = 1600
ENDS_COUNT = 3.0  # a box less than so many times as long as wide loses heat through its ends too


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceBody:
    """A body, the component in each of its regions, and the points worth watching [m].

    `roughly` says what of the true shape is left out, or nothing. `outline` is the edge of the
    half section, `parts` the edges of the regions in it [m].
    """

    body: Body
    components: Mapping[str, str]
    points: Mapping[str, tuple[float, float]]
    outline: Floats
    parts: tuple[Floats, ...] = ()
    roughly: str = ""


def piece_body(placed: Placed, materials: Mapping[str, Material]) -> PieceBody:
    """Body of a filled cavity as it lies in its mould, closed end at level 0.

    Round moulds are turned around their axis; logs and frames are cut across, their ends left
    out; every other shape becomes the round body of the same height and the same area at each
    level.
    """
    main = max(placed.filled, key=lambda part: part.volume)
    regions = tuple(_regions(placed, main, materials))
    whole = _whole(placed.cavity)
    spacing = _spacing(whole)
    if _is_straight(placed.cavity):
        body = plane_body(
            whole, materials[main.component], regions, spacing, depth=placed.cavity.length
        )
    else:
        body = round_body(whole, materials[main.component], regions, spacing)
    return PieceBody(
        body=body,
        components={"body": main.component} | {r.name: r.name.partition("/")[0] for r in regions},
        points=_points(placed),
        outline=whole.points,
        parts=tuple(region.points for region in regions),
        roughly=_roughly(placed.cavity),
    )


def alone(solid: Solid, component: str, name: str) -> Placed:
    """A cavity filled with one component, such as an insert in its own mould."""
    filled = Filled(component=component, name=name, low=0.0, high=solid.height, volume=solid.volume)
    return Placed(
        cavity=solid, inclusions=(), filled=(filled,), walls=(), free_height=0.0, centred=()
    )


def _spacing(whole: Outline) -> float:
    """A millimetre, or as much more as keeps the cells few. [m]"""
    across, height = np.ptp(whole.points, axis=0)
    return max(FINEST, float(np.sqrt(across * height / MOST_CELLS)))


def _whole(cavity: Solid) -> Outline:
    """Half section of the cavity with its faces named."""
    wall = half_outline(cavity, straight=_is_straight(cavity))
    if isinstance(cavity, Ring):
        return outline((WALL, wall), (OPENING, [wall[-1], wall[0]]))
    first, last, height = wall[0], wall[-1], cavity.height
    pieces: list[tuple[str, Sequence[tuple[float, float]] | Floats]] = []
    if first[0] > 0.0:
        pieces.append((CLOSED_END, [(0.0, 0.0), (first[0], first[1])]))
    pieces.append((WALL, wall))
    if last[0] > 0.0:
        pieces.append((OPENING, [(last[0], last[1]), (0.0, height)]))
    pieces.append((AXIS, [(0.0, height), (0.0, 0.0)]))
    return outline(*pieces)


def _regions(placed: Placed, main: Filled, materials: Mapping[str, Material]) -> Iterator[Region]:
    straight = _is_straight(placed.cavity)
    layers: list[tuple[Filled, str | None]] = []
    for number, part in enumerate(placed.filled):
        if part is main:
            layers.append((part, None))
            continue
        name = f"{part.component}/{number}"
        layers.append((part, name))
        yield Region(
            name=name,
            material=materials[part.component],
            points=between(placed.cavity, part.low, part.high, straight=straight),
        )
    for number, inclusion in enumerate(placed.inclusions):
        for part, inside in layers:
            low, high = max(inclusion.low, part.low), min(inclusion.high, part.high)
            if high - low > 1e-6:
                yield Region(
                    name=f"{inclusion.component}/{number}/{inside or 'body'}",
                    material=materials[inclusion.component],
                    points=_inclusion(inclusion, low, high, straight=straight),
                    inside=inside,
                )


def _inclusion(inclusion: Inclusion, low: float, high: float, *, straight: bool) -> Floats:
    """Half section of an insert between two levels of the cavity, in place."""
    solid = inclusion.solid
    if inclusion.turned:
        own = between(solid, inclusion.high - high, inclusion.high - low, straight=straight)
        return mirrored(own, inclusion.high)
    own = between(solid, low - inclusion.low, high - inclusion.low, straight=straight)
    return np.asarray(own + (0.0, inclusion.low))


def _points(placed: Placed) -> dict[str, tuple[float, float]]:
    """Heart of the piece, middle of each insert, and a place 2 mm inside the wall near the rim."""
    cavity = placed.cavity
    points = {"heart": (_middle(cavity), cavity.height / 2.0)}
    for inclusion in placed.inclusions:
        if not inclusion.is_base:
            level = (inclusion.low + inclusion.high) / 2.0
            points[inclusion.component] = (_middle(inclusion.solid), level)
    edge = 0.9 * cavity.height
    points["edge"] = (max(_reach(cavity, edge) - 2e-3, 0.0), edge)
    return points


def _reach(cavity: Solid, level: float) -> float:
    """How far the outer wall stands out at a level. [m]"""
    wall = half_outline(cavity, straight=_is_straight(cavity))
    if isinstance(cavity, Ring):
        return float(wall[:, 0].max())
    return float(np.interp(level, wall[:, 1], wall[:, 0]))


def _middle(solid: Solid) -> float:
    """Where the middle of a body is across: on the axis, or in the band of a ring."""
    if isinstance(solid, Ring):
        return (solid.diameter + solid.hole_diameter) / 4.0
    return 0.0


def _is_straight(cavity: Solid) -> bool:
    if isinstance(cavity, Log):
        return True
    return (
        isinstance(cavity, Box)
        and cavity.length >= ENDS_COUNT * cavity.width
        or (isinstance(cavity, Box) and cavity.width >= ENDS_COUNT * cavity.height)
    )


def _roughly(cavity: Solid) -> str:
    if _is_straight(cavity):
        return "the ends are left out, so the middle of the length is meant"
    if isinstance(cavity, Box) or not hasattr(cavity, "profile"):
        return "taken as the round piece of the same height and area"
    return ""
