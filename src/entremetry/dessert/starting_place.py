"""Where a component may lie to begin with: measures that fit the mould, to be changed at once.

The shares are our own, common practice without a source: an insert of half the width leaves a
wall that holds, a base a little narrower than the rim can be covered.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, get_args

from entremetry.dessert.placing_answer import PLACES
from entremetry.errors import QuantityError
from entremetry.kitchen.shape_document import Box, ShapeDocument
from entremetry.quantities import format_length
from entremetry.words import one_of, quoted, say

SHAPES = (*("cylinder", "hemisphere", "cap", "sphere", "cone", "ellipsoid", "box", "log", "ring"),)
"""Shapes of an insert that are drawn from their measures alone."""
IN_THE_MOULD = tuple(word for word, _ in PLACES if word != "used")
WALL, DEEP, WIDE = 0.55, 0.4, 0.9  # shares of the cavity's width, height and width


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """Extent of the cavity of a mould. [m]"""

    length: float = 60e-3
    width: float = 60e-3
    height: float = 40e-3
    is_round: bool = True


def starting_place(
    component: str, place: str, room: Room, base: str | None = None
) -> dict[str, Any]:
    """An entry of the placement; a soak goes on `base`.

    Raises
    ------
    QuantityError
        If there is no such place, or no base to soak.
    """
    entry = {"component": component, "as": place}
    if place == "soak" and base is None:
        raise QuantityError(say("a soak without a base"), say("a base in the mould first"))
    starts: dict[str, dict[str, Any]] = {
        "filling": {},
        "layer": {"height": _written(room.height / 4.0)},
        "insert": {"shape": starting_shape("cylinder" if room.is_round else "box", room)},
        "base": _starting_base(room),
        "coating": {"film": "2 mm"},
        "soak": {"on": base, "mass": "4 g"},
        "garnish": {"mass": "2 g"},
    }
    if place not in starts:
        raise QuantityError(quoted(place[:40]), one_of(IN_THE_MOULD))
    return entry | starts[place]


def starting_shape(kind: str, room: Room) -> dict[str, Any]:
    """A shape of an insert that leaves a wall around it.

    Raises
    ------
    QuantityError
        If it is none of `SHAPES`.
    """
    if kind not in SHAPES:
        raise QuantityError(quoted(kind[:40]), one_of(SHAPES))
    across = WALL * room.width
    measures: Mapping[str, float] = {
        "diameter": across,
        "base_diameter": 0.8 * across,
        "hole_diameter": 0.4 * across,
        "length": WALL * room.length if room.is_round else room.length - (1.0 - WALL) * room.width,
        "width": across,
        "height": DEEP * room.height,
    }
    return {"kind": kind} | {name: _written(measures[name]) for name in _needed(kind)}


def _needed(kind: str) -> list[str]:
    """Measures without which a shape is none."""
    every: tuple[type[Box], ...] = get_args(get_args(ShapeDocument)[0])
    model = next(m for m in every if kind in get_args(m.model_fields["kind"].annotation))
    return [n for n, field in model.model_fields.items() if field.is_required() and n != "kind"]


def _starting_base(room: Room) -> dict[str, Any]:
    thickness = _written(max(3e-3, room.height / 10.0))
    width = _written(WIDE * room.width)
    if room.is_round:
        return {"cut_out": {"kind": "disc", "diameter": width}, "thickness": thickness}
    length = _written(room.length - (1.0 - WIDE) * room.width)
    cut = {"kind": "rectangle", "length": length, "width": width}
    return {"cut_out": cut, "thickness": thickness}


def _written(metres: float) -> str:
    return format_length(max(1e-3, round(metres, 3)))
