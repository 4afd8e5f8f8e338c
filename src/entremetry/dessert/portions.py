"""How many pieces one cavity gives."""

from __future__ import annotations

from entremetry.dessert.dessert import Dessert
from entremetry.errors import FitError
from entremetry.quantities import format_length
from entremetry.shapes.cutting import bars_in_frame
from entremetry.words import say


def pieces_per_cavity(dessert: Dessert) -> int:
    """One, or as many as the frame is cut into.

    Raises
    ------
    FitError
        If the frame is smaller than one piece with its trim.
    """
    portions = dessert.document.portions
    if portions is None:
        return 1
    solid = dessert.mould.solid
    count = bars_in_frame(
        solid.length, solid.width, portions.length, portions.width, portions.trim
    ).count
    if count:
        return count
    room = min(solid.length, solid.width) - 2.0 * portions.trim
    missing = max(0.0, min(portions.length, portions.width) - room)
    raise FitError(
        say(
            "not one portion of {length} × {width} comes out of {mould}",
            length=format_length(portions.length),
            width=format_length(portions.width),
            mould=dessert.mould.name,
        ),
        parts=(say("the portion"), dessert.mould.name),
        missing=missing,
    )
