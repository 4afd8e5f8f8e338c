"""Bases out of a sheet: how many, how much dough or batter, what is left over."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from entremetry.dessert.batch_sheet import CutOuts
from entremetry.dessert.placement import BasePlacement, DiscCutOut, SheetDocument
from entremetry.errors import FitError
from entremetry.method.made import Made
from entremetry.method.shaping import Bake, Cut, Roll
from entremetry.method.step import Step
from entremetry.quantities import format_length
from entremetry.shapes.cutting import Cutting, discs_in_rectangle, rectangles_in_rectangle
from entremetry.words import decimal, say, say_later

PATTERNS = {
    "grid": say_later("grid"),
    "staggered": say_later("staggered"),
    "mixed": say_later("mixed"),
}
OFFCUTS = {"re-rolled": say_later("re-rolled"), "kept": say_later("kept")}


@dataclass(frozen=True, slots=True, kw_only=True)
class BaseMass:
    """Mass of one base, finished and as dough or batter. [kg]"""

    finished: float
    raw: float
    thickness: float


def cut_area(placement: BasePlacement) -> float:
    """Area of one cut-out. [m2]"""
    cut = placement.cut_out
    if isinstance(cut, DiscCutOut):
        return math.pi / 4.0 * (cut.diameter**2 - cut.hole_diameter**2)
    return cut.length * cut.width


def base_mass(
    placement: BasePlacement, steps: Sequence[Step], made: Made, density: float
) -> BaseMass:
    """Mass of one base.

    Cut before baking, it weighs as the raw dough does at the thickness rolled out, less what
    baking takes; cut after baking, as the finished sheet does at the thickness placed.
    """
    area, kept = cut_area(placement), _kept_in_oven(steps)
    if _cut_raw(steps):
        thickness = _rolled(steps) or placement.thickness
        raw = area * thickness * made.raw_density.value
        return BaseMass(finished=raw * kept, raw=raw, thickness=thickness)
    finished = area * placement.thickness * density
    return BaseMass(finished=finished, raw=finished / kept, thickness=placement.thickness)


def cut_outs(placement: BasePlacement, name: str, count: int, mass: BaseMass) -> CutOuts | None:
    """How `count` bases come out of the sheet; nothing if no sheet is described.

    Raises
    ------
    FitError
        If not one base fits on the sheet.
    """
    sheet = placement.sheet
    if sheet is None:
        return None
    cutting = _cutting(placement, sheet)
    if cutting.count == 0:
        missing = _missing(placement, sheet)
        raise FitError(
            say(
                "not one {name} fits on its sheet of {size}: {missing} mm are missing",
                name=name,
                size=_size(sheet.length, sheet.width),
                missing=decimal(f"{missing * 1e3:.1f}"),
            ),
            parts=(name, say("its sheet")),
            missing=missing,
        )
    rolled = mass.raw * count * sheet_share(placement, cutting)
    return CutOuts(
        component=placement.component,
        size=cut_size(placement),
        count=count,
        per_sheet=cutting.count,
        sheets=math.ceil(count / cutting.count),
        sheet=_size(sheet.length, sheet.width),
        pattern=say(PATTERNS[cutting.pattern]),
        at_most=cutting.at_most,
        rolled_mass=rolled,
        offcut_mass=rolled - mass.raw * count,
        offcuts=say(OFFCUTS[sheet.offcuts]),
    )


def sheet_share(placement: BasePlacement, cutting: Cutting) -> float:
    """Dough or batter to make for one base, in base masses.

    With offcuts kept, a base takes its share of the sheet. Re-rolled once, a share u of the
    sheet becomes bases, then a share u of the rest: 1/(1 - (1 - u)^2) base masses for each.
    """
    sheet = placement.sheet
    if sheet is None:
        return 1.0
    used = cutting.count * cut_area(placement) / (sheet.length * sheet.width)
    if sheet.offcuts == "kept":
        return 1.0 / used
    return 1.0 / (1.0 - (1.0 - used) ** 2)


def dough_share(placement: BasePlacement) -> float:
    """`sheet_share` of the best cutting; one if no sheet is described."""
    if placement.sheet is None:
        return 1.0
    cutting = _cutting(placement, placement.sheet)
    return sheet_share(placement, cutting) if cutting.count else 1.0


def cut_size(placement: BasePlacement) -> str:
    """Size of a cut-out in words."""
    cut = placement.cut_out
    if not isinstance(cut, DiscCutOut):
        return _size(cut.length, cut.width)
    across = format_length(cut.diameter)
    if not cut.hole_diameter:
        return say("{diameter} across", diameter=across)
    hole = format_length(cut.hole_diameter)
    return say("{diameter} across, hole {hole}", diameter=across, hole=hole)


def _cutting(placement: BasePlacement, sheet: SheetDocument) -> Cutting:
    cut = placement.cut_out
    if isinstance(cut, DiscCutOut):
        return discs_in_rectangle(cut.diameter, sheet.length, sheet.width, gap=sheet.gap)
    return rectangles_in_rectangle(cut.length, cut.width, sheet.length, sheet.width, gap=sheet.gap)


def _missing(placement: BasePlacement, sheet: SheetDocument) -> float:
    cut = placement.cut_out
    if isinstance(cut, DiscCutOut):
        return cut.diameter - min(sheet.length, sheet.width)
    long, short = max(cut.length, cut.width), min(cut.length, cut.width)
    return max(long - max(sheet.length, sheet.width), short - min(sheet.length, sheet.width))


def _kept_in_oven(steps: Sequence[Step]) -> float:
    return math.prod(1.0 - (step.loss or 0.0) for step in steps if isinstance(step, Bake))


def _cut_raw(steps: Sequence[Step]) -> bool:
    for step in steps:
        if isinstance(step, Cut):
            return True
        if isinstance(step, Bake):
            return False
    return False


def _rolled(steps: Sequence[Step]) -> float | None:
    thicknesses = [step.thickness for step in steps if isinstance(step, Roll)]
    return thicknesses[-1] if thicknesses else None


def _size(length: float, width: float) -> str:
    return f"{format_length(length)} × {format_length(width)}"
