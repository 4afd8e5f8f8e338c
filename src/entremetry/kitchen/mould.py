"""A mould or vessel, ready to be filled."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from entremetry.kitchen.mould_document import MouldDocument
from entremetry.kitchen.shape_building import build, described
from entremetry.shapes.solid import Solid


@dataclass(frozen=True, slots=True, kw_only=True)
class Mould:
    """A cavity, how it is filled and how many there are.

    `fills_upside_down`: the closed end becomes the top of what is served. A frame or ring stands
    open and is filled as it is served.
    """

    id: str
    name: str
    size: str
    solid: Solid
    material: str
    wall: float | None
    cavities: int
    owned: int
    fills_upside_down: bool
    vessel: bool
    measured: bool


def mould(document: MouldDocument, *, read_mesh: Callable[[str], bytes]) -> Mould:
    """Make a mould of what the document says of it.

    Raises
    ------
    OutsideRange
        If its measures make no shape.
    """
    upright = document.vessel if document.fills is None else document.fills == "upright"
    return Mould(
        id=document.id,
        name=document.name,
        size=described(document.shape),
        solid=build(document.shape, read_mesh=read_mesh),
        material=document.material,
        wall=document.wall,
        cavities=document.cavities,
        owned=document.owned,
        fills_upside_down=not upright,
        vessel=document.vessel,
        measured=document.shape.kind == "measured",
    )
