"""Freezing and thawing times of a dessert in other moulds, as small tables for its page.

A table holds logarithms of minutes at the Chebyshev points of the logarithms of two or three
measures. Between them the page runs one polynomial: the times are smooth in the size and, within
one way of lying, in the proportions.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import product

from entremetry.adapt.proportion import in_proportion
from entremetry.dessert.reckoning import Reckoning, reckon
from entremetry.errors import EntremetryError
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.kitchen.mould import Mould
from entremetry.kitchen.shape_building import build
from entremetry.kitchen.shape_document import Box, Cone, Cylinder, Hemisphere, Log, ShapeDocument
from entremetry.method.waiting import FreezeUntil, ThawUntil
from entremetry.timings.freezing import freezing
from entremetry.timings.half_outline import ENDS_COUNT
from entremetry.timings.piece_run import run_piece
from entremetry.timings.thawing import thawing

CELLS = 400  # of a section: 1 % from the time of many more
Axis = tuple[float, float, int]  # from, to, points
Heard = Callable[[int, int], None]  # told how many points are done, and of how many


@dataclass(frozen=True, slots=True, kw_only=True)
class Family:
    """Shapes that a table covers: its axes [m, or a ratio], and the shape at a point of them."""

    axes: tuple[Axis, ...]
    shape: Callable[..., ShapeDocument]


@dataclass(frozen=True, slots=True, kw_only=True)
class ColdTable:
    """Logarithms of minutes at the points of a family's axes, the last axis running fastest."""

    axes: tuple[Axis, ...]
    values: tuple[float, ...]


def _hemisphere(diameter: float) -> Hemisphere:
    return Hemisphere.model_construct(kind="hemisphere", diameter=diameter)


def _cylinder(diameter: float, height: float) -> Cylinder:
    return Cylinder.model_construct(kind="cylinder", diameter=diameter, height=height)


def _cone(diameter: float, height: float, share: float) -> Cone:
    return Cone.model_construct(
        kind="cone", diameter=diameter, base_diameter=share * diameter, height=height
    )


def _compact(width: float, steepness: float, length: float) -> Box:
    return _box(length * width, width, steepness * width)


def _slender(width: float, height: float) -> Box:
    return _box(LONG * max(width, height), width, height)


def _box(length: float, width: float, height: float) -> Box:
    return Box.model_construct(
        kind="box", length=length, width=width, height=height, corner_radius=0.0, taper=0.0
    )


def _log(width: float) -> Log:
    return Log.model_construct(
        kind="log",
        length=LONG * width,
        width=width,
        height=None,
        section="half-round",
        corner_radius=0.0,
    )


LONG = 4.0  # widths; the ends of what is so long are left out, so that any such length will do
ALMOST = 0.999
MOST = ENDS_COUNT * ALMOST
FAMILIES: Mapping[str, Family] = {
    "hemisphere": Family(axes=((0.03, 0.25, 5),), shape=_hemisphere),
    "cylinder": Family(axes=((0.03, 0.30, 5), (0.015, 0.12, 4)), shape=_cylinder),
    "cone": Family(axes=((0.04, 0.16, 3), (0.02, 0.12, 4), (0.4, 1.0, 3)), shape=_cone),
    "compact box": Family(
        axes=((0.03, 0.12, 3), (1.0 / MOST, 1.5, 4), (1.0, MOST, 3)), shape=_compact
    ),
    "slender box": Family(axes=((0.02, 0.40, 5), (0.015, 0.12, 5)), shape=_slender),
    "log": Family(axes=((0.03, 0.15, 5),), shape=_log),
}


def points(axis: Axis) -> tuple[float, ...]:
    """Chebyshev points of an axis, on its logarithm."""
    low, high, count = math.log(axis[0]), math.log(axis[1]), axis[2]
    return tuple(
        math.exp(
            (low + high) / 2.0
            - (high - low) / 2.0 * math.cos(math.pi * (2 * k + 1) / (2.0 * count))
        )
        for k in range(count)
    )


def like_the_own(mould: Mould, shape: ShapeDocument) -> Mould:
    """A mould of another shape, of the same material and filled the same way."""
    return replace(mould, solid=build(shape, read_mesh=_no_mesh), measured=False)


def timed(dessert: Reckoning) -> tuple[str, ...]:
    """Which of 'freeze-until' and 'thaw-until' the assembly has with a temperature to reach."""
    found = [
        step.step
        for step in dessert.dessert.document.assembly
        if isinstance(step, FreezeUntil | ThawUntil) and step.temperature is not None
    ]
    return tuple(dict.fromkeys(found))


def minutes(reckoning: Reckoning, kitchen: KitchenDocument | None) -> dict[str, float]:
    """Minutes that freezing and thawing of the whole piece take, where they come to an end."""
    found: dict[str, float] = {}
    for step in reckoning.dessert.document.assembly:
        if not isinstance(step, FreezeUntil | ThawUntil) or step.temperature is None:
            continue
        told = (
            freezing(reckoning, step, kitchen, most_cells=CELLS)
            if isinstance(step, FreezeUntil)
            else thawing(reckoning, step, kitchen, most_cells=CELLS)
        )
        history = run_piece(told.piece, told.start, told.stage)
        if history.reached and history.end > 0.0:
            found[step.step] = found.get(step.step, 0.0) + history.end / 60.0
    return found


def in_mould(reckoning: Reckoning, shape: ShapeDocument) -> Reckoning:
    """The dessert in a mould of a shape like its own, all in proportion."""
    mould = like_the_own(reckoning.dessert.mould, shape)
    return reckon(in_proportion(reckoning, mould, shape), read_mesh=_no_mesh)


def size(family: Family) -> int:
    """How many points a table of a family has."""
    return math.prod(count for _low, _high, count in family.axes)


def cold_tables(
    reckoning: Reckoning, kitchen: KitchenDocument | None, heard: Heard | None = None
) -> dict[str, dict[str, ColdTable]]:
    """Tables by family and step; a family in which something does not fit has none.

    `heard` is told of each point; what it raises ends the work.
    """
    steps = timed(reckoning)
    if not steps or reckoning.dessert.document.portions is not None:
        return {}
    found, done = {}, 0
    for name, family in FAMILIES.items():
        found[name] = _tables(reckoning, family, kitchen, _counting(heard, done))
        done += size(family)
    return {name: tables for name, tables in found.items() if tables}


def _counting(heard: Heard | None, before: int) -> Callable[[int], None]:
    """Tell of points of one family, which come after so many others."""
    whole = sum(size(family) for family in FAMILIES.values())
    return lambda done: None if heard is None else heard(before + done, whole)


def _tables(
    reckoning: Reckoning,
    family: Family,
    kitchen: KitchenDocument | None,
    tell: Callable[[int], None],
) -> dict[str, ColdTable]:
    try:
        told = list(_told(reckoning, family, kitchen, tell))
    except EntremetryError:
        return {}
    return {
        step: ColdTable(
            axes=family.axes, values=tuple(round(math.log(each[step]), 4) for each in told)
        )
        for step in timed(reckoning)
        if all(step in each for each in told)
    }


def _told(
    reckoning: Reckoning,
    family: Family,
    kitchen: KitchenDocument | None,
    tell: Callable[[int], None],
) -> Iterator[dict[str, float]]:
    for done, place in enumerate(product(*(points(axis) for axis in family.axes))):
        tell(done)
        yield minutes(in_mould(reckoning, family.shape(*place)), kitchen)


def _no_mesh(name: str) -> bytes:
    raise LookupError(name)
