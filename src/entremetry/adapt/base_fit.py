"""The cut-out of a base for another cavity, and the sheet that it comes from."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from entremetry.adapt.written import length, millimetres
from entremetry.dessert.placement import BasePlacement, DiscCutOut
from entremetry.errors import FitError
from entremetry.shapes import Box, Cylinder, Log, Ring, Solid, thinnest_wall
from entremetry.words import decimal, say

CLEAR = 0.002  # m between a base and the wall of its mould, at least
STEP = 0.001
SAME_AREA = math.sqrt(math.pi / 4.0)
SHEETS = ((0.300, 0.200), (0.400, 0.300), (0.600, 0.400))  # m, trays: common_practice
LEAST = 0.015  # m; a smaller base is not worth cutting

CutOutDict = dict[str, str]


def cut_under(cavity: Solid, overhang: float) -> CutOutDict:
    """A base under the piece, wider than it by `overhang` on every side. [m]"""
    if isinstance(cavity, Ring):
        return _disc(cavity.diameter + 2.0 * overhang, cavity.hole_diameter - 2.0 * overhang)
    if isinstance(cavity, Box | Log):
        return _rectangle(cavity.length + 2.0 * overhang, cavity.width + 2.0 * overhang)
    if is_round(cavity):
        return _disc(2.0 * math.sqrt(cavity.area_at(cavity.height) / math.pi) + 2.0 * overhang)
    return _rectangle(
        SAME_AREA * cavity.length + 2.0 * overhang, SAME_AREA * cavity.width + 2.0 * overhang
    )


def cut_inside(
    cavity: Solid, *, level: float, thickness: float, inset: float, clear: float, name: str
) -> CutOutDict:
    """The largest base that lies in the cavity at a level, `inset` within its greatest width. [m]

    Raises
    ------
    FitError
        If none that is worth cutting fits.
    """
    while 2.0 * inset < cavity.width - LEAST:
        cut, solid = _cut(cavity, inset, thickness)
        if (
            _clear(cavity, solid, level) >= -1e-6
            and _clear(cavity, solid, max(level, clear)) >= clear - 1e-6
        ):
            return cut
        inset += STEP
    raise FitError(
        say(
            "{name} finds no room: no base wider than {least} lies flat there",
            name=name,
            least=length(LEAST),
        ),
        parts=(name, say("the mould")),
        missing=0.0,
    )


def sheet_for(placement: BasePlacement, cut: Mapping[str, str], raw: Any) -> Any:
    """The author's sheet, or the first usual one that the cut-out fits on."""
    if placement.sheet is None:
        return None
    long, wide = _extent(cut)
    if long <= placement.sheet.length + 1e-9 and wide <= placement.sheet.width + 1e-9:
        return raw
    for sheet in SHEETS:
        if long <= sheet[0] + 1e-9 and wide <= sheet[1] + 1e-9:
            return {**raw, "length": length(sheet[0]), "width": length(sheet[1])}
    return {**raw, "length": length(long), "width": length(wide)}


def inset_of(placement: BasePlacement, cavity: Solid) -> float:
    """How far a base lies within the greatest width of its cavity; negative outside it. [m]"""
    cut = placement.cut_out
    width = cut.diameter if isinstance(cut, DiscCutOut) else cut.width
    return (cavity.width - width) / 2.0


def spoken(cut: Mapping[str, str]) -> str:
    """A cut-out in words: 'a disc of 78 mm', 'a rectangle of 240 × 70 mm'."""
    if cut["kind"] == "disc":
        size = decimal(cut["diameter"])
        if "hole_diameter" not in cut:
            return say("a disc of {size}", size=size)
        hole = decimal(cut["hole_diameter"])
        return say("a disc of {size} with a hole of {hole}", size=size, hole=hole)
    sizes = decimal(f"{cut['length'].removesuffix(' mm')} × {cut['width']}")
    return say("a rectangle of {sizes}", sizes=sizes)


def is_round(cavity: Solid) -> bool:
    """Whether a plan is a circle."""
    area = cavity.area_at(cavity.height)
    return abs(cavity.length - cavity.width) < 1e-6 and not isinstance(cavity, Box) and area > 0.0


def _cut(cavity: Solid, inset: float, thickness: float) -> tuple[CutOutDict, Solid]:
    if isinstance(cavity, Ring):
        outer = millimetres(cavity.diameter - 2.0 * inset)
        inner = millimetres(cavity.hole_diameter + 2.0 * inset)
        return _disc(outer, inner), Ring(
            diameter=outer, hole_diameter=inner, height=thickness, cross_section="flat"
        )
    if is_round(cavity):
        diameter = _floored(cavity.width - 2.0 * inset)
        return _disc(diameter), Cylinder(diameter=diameter, height=thickness)
    share = 1.0 if isinstance(cavity, Box | Log) else SAME_AREA
    long, wide = (_floored(share * side - 2.0 * inset) for side in (cavity.length, cavity.width))
    return _rectangle(long, wide), Box(length=long, width=wide, height=thickness)


def _clear(cavity: Solid, solid: Solid, level: float) -> float:
    """Thinnest wall around a base at a level. [m]"""
    spacing = max(solid.length, solid.width) / 60
    return thinnest_wall(cavity, solid, level=level, spacing=spacing).thinnest


def _floored(metres: float) -> float:
    return math.floor(metres * 1e3 + 1e-6) / 1e3


def _disc(diameter: float, hole: float = 0.0) -> CutOutDict:
    cut = {"kind": "disc", "diameter": length(millimetres(diameter))}
    return {**cut, "hole_diameter": length(millimetres(hole))} if hole > 0.0 else cut


def _rectangle(long: float, wide: float) -> CutOutDict:
    return {
        "kind": "rectangle",
        "length": length(millimetres(long)),
        "width": length(millimetres(wide)),
    }


def _extent(cut: Mapping[str, str]) -> tuple[float, float]:
    keys = ("diameter", "diameter") if cut["kind"] == "disc" else ("length", "width")
    long, wide = (float(cut[key].removesuffix(" mm")) / 1e3 for key in keys)
    return max(long, wide), min(long, wide)
