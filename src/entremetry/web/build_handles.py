"""Handles on the drawing: what can be pulled up and down, in the drawing's own units."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from entremetry.dessert.batch_sheet import BatchSheet, DrawnPart, Position
from entremetry.publish.drawing import Plate
from entremetry.publish.stage import Stage
from entremetry.web.part_path import address_of
from entremetry.words import decimal, say, say_later

PLACES = {
    "layer": Position.FILLING,
    "filling": Position.FILLING,
    "insert": Position.INSERT,
    "base": Position.BASE,
}
LEAST = 1e-3  # m; nothing is pulled thinner


@dataclass(frozen=True, slots=True, kw_only=True)
class Handle:
    """One measure that follows the finger. Values in mm; `y`, `left`, `right` and `unit` (of one
    mm) in units of the drawing; `down` is 1 if the value grows as the finger goes down, else -1."""

    path: str
    label: str
    value: float
    least: float
    most: float
    y: float
    left: float
    right: float
    unit: float
    down: int

    @property
    def said(self) -> str:
        """The value as it is read and heard."""
        return f"{decimal(str(self.value))} mm"


@dataclass(frozen=True, slots=True, kw_only=True)
class Grips:
    """All handles, and the frame of the drawing they lie on."""

    width: float
    height: float
    handles: tuple[Handle, ...]


def grips(
    sheet: BatchSheet, scene: Stage, plate: Plate, placement: Sequence[Mapping[str, Any]]
) -> Grips:
    """Handles for the drawing of a sheet, which grew from this placement."""
    upside_down, height = sheet.section.served_upside_down, sheet.section.height
    found = []
    for index, entry, part in _drawn(sheet, placement):
        for name, level, value, most, up in _measures(entry, part, height):
            served = level if upside_down else height - level
            found.append(
                Handle(
                    path=address_of(("placement", index, name)),
                    label=say(WORDS[name], name=part.name),
                    value=round(value * 1e3, 1),
                    least=0.0 if name in DEPTHS else LEAST * 1e3,
                    most=round(most * 1e3, 1),
                    y=plate.y + (served * 1e3 - scene.top) * plate.scale,
                    left=plate.x,
                    right=plate.x + (scene.right - scene.left) * plate.scale,
                    unit=plate.scale,
                    down=up if upside_down else -up,
                )
            )
    return Grips(width=plate.width, height=plate.height, handles=tuple(found))


DEPTHS = ("below_rim", "from_closed_end")
WORDS = {
    "height": say_later("{name}: height of the layer"),
    "thickness": say_later("{name}: thickness"),
    "below_rim": say_later("{name}: depth below the rim"),
    "from_closed_end": say_later("{name}: height above the closed end"),
}


def _drawn(
    sheet: BatchSheet, placement: Sequence[Mapping[str, Any]]
) -> Iterator[tuple[int, Mapping[str, Any], DrawnPart]]:
    """Yield each entry of the placement with the part that is drawn of it, by their order."""
    left = list(sheet.section.parts)
    for index, entry in enumerate(placement):
        position = PLACES.get(str(entry.get("as")))
        part = next(
            (p for p in left if p.position is position and p.component == entry.get("component")),
            None,
        )
        if part is not None:
            left.remove(part)
            yield index, entry, part


def _measures(
    entry: Mapping[str, Any], part: DrawnPart, height: float
) -> Iterator[tuple[str, float, float, float, int]]:
    """Yield the name of a measure, the level of its handle, its value, the most it may be, and
    whether it grows (1) or shrinks (-1) with the level. [m]"""
    place = entry.get("as")
    if place == "layer":
        yield "height", part.high, part.high - part.low, height - part.low, 1
    elif place == "insert" and "below_rim" in entry:
        room = height - (part.high - part.low)
        yield "below_rim", part.high, height - part.high, room, -1
    elif place == "insert":
        yield "from_closed_end", part.low, part.low, height - (part.high - part.low), 1
    elif place == "base" and entry.get("sits") != "under":
        yield "thickness", part.low, part.high - part.low, height, -1
    elif place == "base":
        yield "thickness", part.high, part.high - part.low, height, 1
