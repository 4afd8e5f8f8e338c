"""One portion cut out of a filled frame."""

from __future__ import annotations

from dataclasses import replace

from entremetry.dessert.document import PortionsDocument
from entremetry.dessert.placed import Filled, Inclusion, Placed
from entremetry.shapes import Box


def cut_portion(placed: Placed, portions: PortionsDocument) -> Placed:
    """The part of a frame that one portion is: the same layers over a smaller area.

    Inserts are left where they are only if they run through, as bases do.
    """
    whole = placed.cavity
    share = portions.length * portions.width / (whole.length * whole.width)
    box = Box(length=portions.length, width=portions.width, height=whole.height)
    return replace(
        placed,
        cavity=box,
        inclusions=tuple(_cut(part, portions) for part in placed.inclusions if part.is_base),
        filled=tuple(_share(part, share) for part in placed.filled),
        walls=(),
    )


def _cut(base: Inclusion, portions: PortionsDocument) -> Inclusion:
    solid = Box(length=portions.length, width=portions.width, height=base.solid.height)
    return replace(base, solid=solid)


def _share(part: Filled, share: float) -> Filled:
    return replace(part, volume=part.volume * share)
