"""Whether what is placed fits: walls around inserts, and parts that run into one another."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import Any

from entremetry.dessert.placed import Inclusion, InsertWall
from entremetry.errors import FitError
from entremetry.shapes import MeshSolid, Solid, WallThickness, gap_between, thinnest_wall
from entremetry.words import decimal, say, say_later

TOUCHING = 1e-6  # m
POINTS_ACROSS = 60  # an insert is measured at so many points along its longest side
TOO_LARGE = {
    "rim": say_later(
        "{name} does not fit into the mould: it is {excess} mm too large towards the rim"
    ),
    "closed end": say_later(
        "{name} does not fit into the mould: it is {excess} mm too large towards the closed end"
    ),
    "side": say_later(
        "{name} does not fit into the mould: it is {excess} mm too large towards the side"
    ),
}
"""An insert that is too large, by the part of the cavity it is nearest to."""


def insert_walls(cavity: Solid, inclusions: Sequence[Inclusion]) -> tuple[InsertWall, ...]:
    """Thinnest wall around each insert.

    Raises
    ------
    FitError
        If an insert or a base is larger than the mould, with the millimetres.
    """
    walls = [(part, _wall(cavity, part)) for part in inclusions]
    return tuple(wall for part, wall in walls if not part.is_base)


def require_no_overlap(cavity: Solid, inclusions: Sequence[Inclusion]) -> None:
    """Raise FitError if a part stands above the rim or two run into one another."""
    for part in inclusions:
        above = part.high - cavity.height
        if above > TOUCHING:
            raise overlap(part.name, say("the rim of the mould"), above)
    for index, one in enumerate(inclusions):
        for two in inclusions[index + 1 :]:
            shared = min(one.high, two.high) - max(one.low, two.low)
            if shared > TOUCHING and _gap(one, two) < -TOUCHING:
                raise overlap(one.name, two.name, shared)


def overlap(one: str, two: str, missing: float) -> FitError:
    """Refusal of two parts that share some millimetres of height."""
    return FitError(
        say(
            "{one} and {two} overlap: {missing} mm are missing; "
            "make one of them thinner, move it, or take a deeper mould",
            one=one,
            two=two,
            missing=decimal(f"{missing * 1e3:.1f}"),
        ),
        parts=(one, two),
        missing=missing,
    )


def _wall(cavity: Solid, part: Inclusion) -> InsertWall:
    solids: tuple[Any, Any] = (cavity, part.solid)
    meshed = any(isinstance(solid, MeshSolid) for solid in solids)
    measure = _thinnest if meshed else _thinnest_kept
    wall = measure(*solids, part.low, part.aside, part.turned)
    if wall.thinnest < -TOUCHING:
        raise FitError(
            say(
                TOO_LARGE[wall.towards],
                name=part.name,
                excess=decimal(f"{-wall.thinnest * 1e3:.1f}"),
            ),
            parts=(part.name, say("the mould")),
            missing=-wall.thinnest,
        )
    return InsertWall(inclusion=part, thinnest=wall.thinnest, towards=wall.towards)


def _thinnest(
    cavity: Solid, insert: Solid, level: float, aside: float, turned: bool
) -> WallThickness:
    """Thinnest wall around an insert."""
    return thinnest_wall(
        cavity,
        insert,
        level=level,
        offset=(aside, 0.0),
        turned=turned,
        spacing=_spacing(insert),
    )


_thinnest_kept = lru_cache(maxsize=256)(_thinnest)
"""The same for bodies of a few numbers; most changes of a dessert leave them as they were."""


def _spacing(solid: Solid) -> float:
    return max(solid.length, solid.width) / POINTS_ACROSS


def _gap(one: Inclusion, two: Inclusion) -> float:
    return gap_between(
        one.solid,
        one.low,
        (one.aside, 0.0),
        two.solid,
        two.low,
        (two.aside, 0.0),
        turned_a=one.turned,
        turned_b=two.turned,
        spacing=min(_spacing(one.solid), _spacing(two.solid)),
    )
