"""The shape and place of frozen inserts in another cavity: same share, a wall all round.

Shapes are those that can be had: half-spheres and gutters in the sizes that everybody sells;
discs, bars and flat rings in any size, for they are cast in a ring or cut out of a sheet.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from pydantic import TypeAdapter

from entremetry.adapt.written import length, millimetres
from entremetry.errors import EntremetryError, FitError
from entremetry.kitchen.shape_building import build
from entremetry.kitchen.shape_document import ShapeDocument
from entremetry.shapes import Box, Log, Ring, Solid, thinnest_wall
from entremetry.words import say

WALL = 0.010  # m of mousse around an insert: common_practice
WALL_SHARE = 0.28  # of the height or half the width of a small mould, where 10 mm is too much
LEAST_WALL = 0.004  # m; less shows through: common_practice
LEAST_HEIGHT, LEAST_WIDTH = 0.008, 0.010  # m; less breaks when it is turned out: common_practice
GOOD_PART = 0.7  # of the volume wanted, for which a thinner wall is worth while: our_own
LEAST_PART = 0.4  # of the volume wanted, below which an insert is another dessert: our_own
MOST_PART = 1.25
CLOSE = 0.15  # volumes this near to what is wanted are as good as each other: our_own
LOWER = 0.002  # m between heights that are tried
STOCK = ("hemisphere", "log")
STOCK_CLOSE = 0.25  # the same where a mould for it can be bought: our_own
STEP = 0.005  # m between sizes of what is cut or cast in a ring
HALF_SPHERES = (0.030, 0.040, 0.050, 0.060, 0.070, 0.080)
GUTTERS = (0.030, 0.040, 0.050, 0.060)
DOME = 0.6  # area at a fifth of the height by area at the rim, below which it is round on top
POINTS = 20
SHAPES: TypeAdapter[Any] = TypeAdapter(ShapeDocument)


@dataclass(frozen=True, slots=True, kw_only=True)
class Nest:
    """A cavity as an insert meets it: the base takes `base` from the rim, `gap` lies between. [m]

    `turned` for a cavity that is filled as it is served: its base lies at the closed end.
    `share` is how much of the usual wall there has to be.
    """

    cavity: Solid
    base: float
    gap: float
    turned: bool
    share: float = 1.0

    @property
    def wall(self) -> float:
        """Wall that is wanted all round. [m]"""
        band = self.cavity.width / 2.0
        if isinstance(self.cavity, Ring):
            band = (self.cavity.diameter - self.cavity.hole_diameter) / 4.0
        usual = min(WALL, WALL_SHARE * min(self.cavity.height, band))
        return max(LEAST_WALL, self.share * usual)

    @property
    def room(self) -> float:
        """Height that an insert may have. [m]"""
        return self.cavity.height - self.base - self.gap - self.wall


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedInsert:
    """Inserts on one another, first the one nearest to the base, with the thinnest wall. SI units.

    `from_base` is the distance of each from the end at which the base lies.
    """

    shapes: tuple[dict[str, str], ...]
    from_base: tuple[float, ...]
    volume: float
    wall: float


def fitted_insert(nest: Nest, volumes: Sequence[float], *, name: str, mould: str) -> FittedInsert:
    """The insert, or pile of inserts, that comes nearest to the volumes wanted. [m3]

    Raises
    ------
    FitError
        If none of a sensible size leaves a wall.
    """
    wanted = sum(volumes)
    best: tuple[float, FittedInsert] | None = None
    for shape, solid in _candidates(nest, wanted, alone=len(volumes) == 1):
        part = solid.volume / wanted
        if not LEAST_PART <= part <= MOST_PART:
            continue
        near = STOCK_CLOSE if shape["kind"] in STOCK else CLOSE
        badness = max(abs(math.log(part)) - near, 0.0)
        if best is not None and badness >= best[0]:
            continue
        wall = _wall(nest, solid)
        if wall >= nest.wall - 5e-4:
            best = (badness, _piled(nest, shape, solid, volumes, wall))
    if best is None:
        raise _no_room(nest, wanted, name, mould)
    return best[1]


def _candidates(
    nest: Nest, wanted: float, *, alone: bool
) -> Iterator[tuple[dict[str, str], Solid]]:
    """Shapes that may do, those that suit the cavity best first."""
    cavity = nest.cavity
    shapes: list[dict[str, str]] = []
    if isinstance(cavity, Log):
        shapes += [*_gutters(nest), *_bars(nest, wanted)]
    elif isinstance(cavity, Ring):
        shapes += _flat_rings(nest, cavity, wanted)
    elif isinstance(cavity, Box) and cavity.length > cavity.width:
        shapes += _bars(nest, wanted)
    else:
        shapes += [*(_half_spheres(nest) if _is_dome(cavity) else ())]
        shapes += _bars(nest, wanted) if isinstance(cavity, Box) else _discs(nest, wanted)
    for shape in shapes:
        if alone or shape["kind"] in ("cylinder", "box", "ring"):
            try:
                yield shape, build(SHAPES.validate_python(shape), read_mesh=_no_mesh)
            except EntremetryError:  # sizes that make no body
                continue


def _is_dome(cavity: Solid) -> bool:
    return cavity.area_at(0.2 * cavity.height) < DOME * cavity.area_at(cavity.height)


def _insets(nest: Nest) -> Iterator[float]:
    """Distances from the side, the usual wall first. [m]"""
    inset = nest.wall
    while 2.0 * inset <= nest.cavity.width - LEAST_WIDTH:
        yield inset
        inset += STEP / 2.0


def _height(nest: Nest, area: float, wanted: float) -> Iterator[float]:
    """The height that gives the volume, or the highest there is room for, and lower ones. [m]"""
    height = min(millimetres(wanted / area), math.floor(nest.room * 1e3 + 1e-6) / 1e3)
    while height >= max(LEAST_HEIGHT, LEAST_PART * wanted / area):
        yield height
        height -= LOWER


def _half_spheres(nest: Nest) -> Iterator[dict[str, str]]:
    for diameter in HALF_SPHERES:
        if diameter / 2.0 <= nest.room + 1e-9:
            yield {"kind": "hemisphere", "diameter": length(diameter)}


def _discs(nest: Nest, wanted: float) -> Iterator[dict[str, str]]:
    for inset in _insets(nest):
        diameter = math.floor((nest.cavity.width - 2.0 * inset) / STEP + 1e-6) * STEP
        if diameter < LEAST_WIDTH:
            return
        for height in _height(nest, math.pi / 4.0 * diameter**2, wanted):
            yield {"kind": "cylinder", "diameter": length(diameter), "height": length(height)}


def _bars(nest: Nest, wanted: float) -> Iterator[dict[str, str]]:
    for inset in _insets(nest):
        long = math.floor((nest.cavity.length - 2.0 * inset) / STEP + 1e-6) * STEP
        wide = math.floor((nest.cavity.width - 2.0 * inset) / STEP + 1e-6) * STEP
        if min(long, wide) < LEAST_WIDTH:
            return
        for height in _height(nest, long * wide, wanted):
            yield {
                "kind": "box",
                "length": length(long),
                "width": length(wide),
                "height": length(height),
            }


def _gutters(nest: Nest) -> Iterator[dict[str, str]]:
    long = math.floor((nest.cavity.length - 2.0 * nest.wall) / STEP + 1e-6) * STEP
    for width in GUTTERS:
        if width / 2.0 <= nest.room + 1e-9:
            yield {"kind": "log", "length": length(long), "width": length(width)}


def _flat_rings(nest: Nest, cavity: Ring, wanted: float) -> Iterator[dict[str, str]]:
    for inset in _insets(nest):
        outer = millimetres(cavity.diameter - 2.0 * inset)
        inner = millimetres(cavity.hole_diameter + 2.0 * inset)
        if outer - inner < 2.0 * LEAST_WIDTH:
            return
        area = math.pi / 4.0 * (outer**2 - inner**2)
        for height in _height(nest, area, wanted):
            yield {
                "kind": "ring",
                "diameter": length(outer),
                "hole_diameter": length(inner),
                "height": length(height),
                "section": "flat",
            }


def _level(nest: Nest, from_base: float, height: float) -> float:
    """Level of the insert's nearer end above the closed end. [m]"""
    return from_base if nest.turned else nest.cavity.height - from_base - height


def _wall(nest: Nest, solid: Solid) -> float:
    """Thinnest wall to the mould, the side of the base left out, and to the top as served. [m]"""
    level = _level(nest, nest.base + nest.gap, solid.height)
    top = nest.cavity.height - level - solid.height if nest.turned else level
    side = thinnest_wall(
        nest.cavity,
        solid,
        level=level,
        turned=nest.turned,
        spacing=max(solid.length, solid.width) / POINTS,
    )
    if nest.turned and side.towards == "closed end":
        return top
    return min(side.thinnest, top)


def _piled(
    nest: Nest, shape: dict[str, str], solid: Solid, volumes: Sequence[float], wall: float
) -> FittedInsert:
    """One shape shared out among the inserts by height, each at least as high as it can be."""
    start = nest.base + nest.gap
    if len(volumes) == 1:
        return FittedInsert(shapes=(shape,), from_base=(start,), volume=solid.volume, wall=wall)
    heights = [max(0.004, millimetres(solid.height * v / sum(volumes))) for v in volumes]
    heights[-1] = solid.height - sum(heights[:-1])
    starts = [start + sum(heights[:index]) for index in range(len(heights))]
    return FittedInsert(
        shapes=tuple({**shape, "height": length(height)} for height in heights),
        from_base=tuple(starts),
        volume=solid.volume,
        wall=wall,
    )


def _no_room(nest: Nest, wanted: float, name: str, mould: str) -> FitError:
    missing = max(0.0, LEAST_HEIGHT - nest.room)
    return FitError(
        say(
            "{name} finds no room in {mould}: with {wall} of wall all round there is no insert of "
            "about {volume} ml, the same share as before, that can be turned out whole",
            name=name,
            mould=mould,
            wall=length(nest.wall),
            volume=f"{wanted * 1e6:.0f}",
        ),
        parts=(name, mould),
        missing=missing,
    )


def _no_mesh(name: str) -> bytes:
    told = say("no mesh such as {name} is fitted", name=name)
    raise FitError(told, parts=(name, say("the mould")), missing=0.0)
