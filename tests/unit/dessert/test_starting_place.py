"""Places to begin with fit the mould they are made for."""

from __future__ import annotations

import pytest
from pydantic import TypeAdapter

from entremetry.dessert.placement import Placement
from entremetry.dessert.starting_place import (
    IN_THE_MOULD,
    SHAPES,
    Room,
    starting_place,
    starting_shape,
)
from entremetry.errors import QuantityError
from entremetry.kitchen.shape_document import ShapeDocument
from entremetry.quantities import parse_length

LONG = Room(length=250e-3, width=80e-3, height=70e-3, is_round=False)


@pytest.mark.parametrize("place", IN_THE_MOULD)
@pytest.mark.parametrize("room", [Room(), LONG], ids=["round", "long"])
def test_every_place_is_one_that_a_document_accepts(place: str, room: Room) -> None:
    entry = starting_place("part", place, room, base="base")
    TypeAdapter(Placement).validate_python(entry)


@pytest.mark.parametrize("kind", SHAPES)
@pytest.mark.parametrize("room", [Room(), LONG], ids=["round", "long"])
def test_every_shape_leaves_a_wall(kind: str, room: Room) -> None:
    shape = starting_shape(kind, room)
    TypeAdapter(ShapeDocument).validate_python(shape)
    for name in {"diameter", "width"} & set(shape):
        assert parse_length(shape[name]) < 0.7 * room.width
    if "height" in shape:
        assert parse_length(shape["height"]) < 0.6 * room.height


def test_a_soak_needs_a_base() -> None:
    with pytest.raises(QuantityError, match="a base in the mould first"):
        starting_place("syrup", "soak", Room())


@pytest.mark.parametrize("wrong", ["", "used", "somewhere"])
def test_no_other_place_is_known(wrong: str) -> None:
    with pytest.raises(QuantityError, match="one of filling"):
        starting_place("part", wrong, Room())


def test_no_other_shape_is_known() -> None:
    with pytest.raises(QuantityError, match="one of cylinder"):
        starting_shape("mesh", Room())
