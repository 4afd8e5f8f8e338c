"""The section as it is served, in millimetres with y downward, shortened where it is very wide."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from entremetry.dessert.batch_sheet import DrawnPart, Position, Section
from entremetry.publish.outline import extent, film_on_top, morsel, rectangle, shortened
from entremetry.shapes.solid import Floats

WIDEST = 5.2  # width over height that is still drawn whole
SHOWN = 3.6  # width over height of a shortened drawing
GLASS = 2.4  # thickness of a glass wall as drawn [mm]


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """One part on the stage. Outlines in mm.

    `inside`: cut off at the cavity's wall; `around`: an even band outside its outlines.
    """

    part: DrawnPart
    outlines: tuple[Floats, ...]
    inside: bool = False
    around: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """All that is drawn, and the frame around it. Lengths in mm.

    `hidden` is how much of the width is left out in the middle, 0 if nothing is.
    """

    cavity: tuple[Floats, ...]
    shapes: tuple[Shape, ...]
    rim: float
    is_vessel: bool
    upside_down: bool
    hidden: float
    width: float
    height: float
    left: float
    right: float
    top: float
    bottom: float


def stage(section: Section) -> Stage:
    """Set a section on the stage."""
    cavity = tuple(served(outline, section) for outline in section.cavity)
    shapes = tuple(
        shape
        for position in (
            Position.COATING,
            Position.FILLING,
            Position.INSERT,
            Position.BASE,
            Position.GARNISH,
        )
        for part in section.parts
        if part.position is position
        for shape in [shaped(part, section, cavity)]
    )
    return framed(section, cavity, shapes)


def served(outline: Floats, section: Section) -> Floats:
    """Outline in mm, turned as it is served."""
    across, level = outline[:, 0] * 1e3, outline[:, 1] * 1e3
    height = section.height * 1e3
    return np.column_stack([across, level if section.served_upside_down else height - level])


def shaped(part: DrawnPart, section: Section, cavity: tuple[Floats, ...]) -> Shape:
    """A part as outlines: its own, a band of the cavity, or the rectangle of its width."""
    if part.position is Position.INSERT:
        return Shape(part=part, outlines=tuple(served(o, section) for o in part.outlines))
    if part.position is Position.BASE:
        inside = part.low < section.height - 1e-9
        return Shape(part=part, outlines=slabs(part, section, cavity), inside=inside)
    if part.position is Position.FILLING:
        left, right = extent(cavity)
        band = rectangle(left, right, part.low, part.high)
        return Shape(part=part, outlines=(served(band, section),), inside=True)
    if part.position is Position.GARNISH:
        return Shape(part=part, outlines=morsels(section, cavity))
    if part.top_only:
        top = ground(section, cavity, 0.0, film=0.0)
        slab = film_on_top(cavity, top, part.thickness * 1e3)
        return Shape(part=part, outlines=slab, inside=section.is_vessel)
    return Shape(part=part, outlines=cavity, around=True)


def morsels(section: Section, cavity: tuple[Floats, ...]) -> tuple[Floats, ...]:
    """Three morsels of garnish lying on top: a hint, not to scale."""
    left, right = extent(cavity)
    height = section.height * 1e3
    width = min(right - left, SHOWN * height)
    size = 0.022 * width + 0.02 * height
    if len(cavity) == 2:
        middle = sum(extent((max(cavity, key=lambda o: float(o[:, 0].max())),))) / 2.0
    else:
        middle = right - 0.25 * width if is_wide(right - left, height) else 0.0
    film = max([part.thickness for part in section.parts] + [0.0]) * 1e3
    places = (middle - 2.3 * size, middle, middle + 2.2 * size)
    return tuple(
        morsel(place, ground(section, cavity, place, film=film), size, turn)
        for turn, place in enumerate(places)
    )


def ground(section: Section, cavity: tuple[Floats, ...], place: float, *, film: float) -> float:
    """Level of the top of what is served at a place across, under a film or on it."""
    if not section.served_upside_down:
        levels = [part.high for part in section.parts if part.position is Position.FILLING]
        return (section.height - max(levels, default=section.height)) * 1e3 - film
    crossings = [
        float(y0 + (place - x0) * (y1 - y0) / (x1 - x0))
        for outline in cavity
        for (x0, y0), (x1, y1) in zip(outline, np.roll(outline, -1, axis=0), strict=True)
        if min(x0, x1) <= place <= max(x0, x1) and x0 != x1
    ]
    return min(crossings, default=0.0) - film


def slabs(part: DrawnPart, section: Section, cavity: tuple[Floats, ...]) -> tuple[Floats, ...]:
    """Section of a base: one rectangle, or one beside each side of a hole."""
    half = part.width * 1e3 / 2.0
    spans = [(-half, half)]
    if len(cavity) == 2:
        hole = min(abs(float(outline[:, 0].min())) for outline in cavity if outline[:, 0].min() > 0)
        spans = [(-half, -hole), (hole, half)]
    return tuple(served(rectangle(a, b, part.low, part.high), section) for a, b in spans)


def framed(section: Section, cavity: tuple[Floats, ...], shapes: tuple[Shape, ...]) -> Stage:
    """Stage with its frame, wide sections shortened in the middle."""
    left, right = extent(cavity)
    height = section.height * 1e3
    hidden = left_out(right - left, height, shapes) if len(cavity) == 1 else 0.0
    cavity = tuple(shortened(outline, hidden) for outline in cavity)
    shapes = tuple(
        replace(shape, outlines=tuple(shortened(outline, hidden) for outline in shape.outlines))
        for shape in shapes
    )
    bands = [shape.part.thickness * 1e3 for shape in shapes if shape.around]
    film = max(bands + [GLASS * section.is_vessel])
    points = np.concatenate([*cavity, *(o for shape in shapes for o in shape.outlines)])
    foot = 1.6 * GLASS if section.is_vessel else 0.0
    return Stage(
        cavity=cavity,
        shapes=shapes,
        rim=height if section.served_upside_down else 0.0,
        is_vessel=section.is_vessel,
        upside_down=section.served_upside_down,
        hidden=hidden,
        width=right - left,
        height=height,
        left=float(points[:, 0].min()) - film,
        right=float(points[:, 0].max()) + film,
        top=float(points[:, 1].min()) - (0.0 if section.is_vessel else film),
        bottom=float(points[:, 1].max()) + foot,
    )


def is_wide(width: float, height: float) -> bool:
    """Whether a section is too wide to be drawn whole."""
    return width > WIDEST * height


def left_out(width: float, height: float, shapes: tuple[Shape, ...]) -> float:
    """Width to leave out so that every end of every part is still seen."""
    if not is_wide(width, height):
        return 0.0
    ends = [
        float(np.abs(outline[:, 0]).max())
        for shape in shapes
        for outline in shape.outlines
        if shape.part.position is not Position.GARNISH
    ]
    shown = max(SHOWN * height, 2.0 * (width / 2.0 - min(ends, default=width / 2.0)) + height)
    return max(0.0, width - shown)
