"""The answer to 'where does it sit, and how big is it?' as an entry of the placement."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from entremetry.errors import QuantityError, nearest_names
from entremetry.quantities import parse_length, parse_mass
from entremetry.words import quoted, say, say_later

PLACES = (
    ("filling", say_later("It fills what is left in the mould")),
    ("layer", say_later("A level layer")),
    ("insert", say_later("A frozen insert inside")),
    ("base", say_later("A base cut from a sheet")),
    ("coating", say_later("A coating over the piece")),
    ("soak", say_later("A syrup brushed on a base")),
    ("garnish", say_later("On top, outside the mould")),
    ("used", say_later("It goes into another component")),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeQuestion:
    """What to ask about the size of a component in its place; `text` is a message."""

    text: str
    example: str


SIZES = {
    "layer": SizeQuestion(text=say_later("how high is the layer?"), example="12 mm"),
    "insert": SizeQuestion(
        text=say_later("in which mould of the shelf is the insert frozen?"), example="hemisphere-40"
    ),
    "base": SizeQuestion(
        text=say_later("how wide and how thick is the base? A rectangle has two sides."),
        example="60 mm × 5 mm",
    ),
    "coating": SizeQuestion(text=say_later("how thick is the film?"), example="2 mm"),
    "soak": SizeQuestion(text=say_later("how much goes on one base?"), example="4 g"),
    "garnish": SizeQuestion(text=say_later("how much goes on one piece?"), example="3 g"),
    "used": SizeQuestion(text=say_later("how much of it goes in?"), example="20 g"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacingAnswer:
    """One entry of the placement."""

    entry: Mapping[str, Any]


def placing_answer(
    component: str, place: str, size: str | None, moulds: Mapping[str, Mapping[str, Any]]
) -> PlacingAnswer | str:
    """The entry, or the words of what is still to be asked.

    `moulds` are the shapes of the shelf as documents write them, by id.
    """
    entry: dict[str, Any] = {"component": component, "as": place}
    if place == "filling":
        return PlacingAnswer(entry=entry)
    question = say(SIZES[place].text)
    if size is None:
        return question
    try:
        return PlacingAnswer(entry=entry | _measures(place, size, moulds))
    except QuantityError as error:
        return say("{question} ({problem})", question=question, problem=error)


def _measures(place: str, size: str, moulds: Mapping[str, Any]) -> dict[str, Any]:
    if place == "insert":
        return {"shape": _shape(size, moulds)}
    if place == "base":
        return _base(size)
    if place in {"garnish", "soak", "used"}:
        parse_mass(size)
        return {"mass": size}
    parse_length(size)
    return {"height": size} if place == "layer" else {"film": size}


def _shape(size: str, moulds: Mapping[str, Any]) -> dict[str, Any]:
    if size not in moulds:
        accepted = say("the id of a mould of the shelf")
        raise QuantityError(quoted(size), accepted, nearest_names(size, moulds))
    return dict(moulds[size])


def _base(size: str) -> dict[str, Any]:
    sides = [side.strip() for side in re.split(r"[×x*]", size)]
    accepted = say("diameter × thickness, or length × width × thickness, each with its unit")
    if len(sides) not in {2, 3}:
        raise QuantityError(quoted(size), accepted)
    for side in sides:
        parse_length(side)
    if len(sides) == 2:
        return {"cut_out": {"kind": "disc", "diameter": sides[0]}, "thickness": sides[1]}
    cut = {"kind": "rectangle", "length": sides[0], "width": sides[1]}
    return {"cut_out": cut, "thickness": sides[2]}
