"""Plan outlines, checked: closed, not crossing, holes where holes can be."""

from __future__ import annotations

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.shapes.crossing import edges_of, first_crossing
from entremetry.shapes.dimension import GREATEST, require_length
from entremetry.shapes.outline import enclosed_area, signed_distance
from entremetry.shapes.solid import Floats
from entremetry.words import say, say_later

MOST_POINTS = 4000


def require_outlines(lines: tuple[Floats, ...]) -> None:
    """Raise OutsideRange unless an outer outline and its holes bound one plan."""
    count = sum(len(line) for line in lines)
    if count > MOST_POINTS:
        most = say("up to {number}", number=MOST_POINTS)
        raise OutsideRange.of(say("points of the outline"), f"{count}", most)
    for line in lines:
        _require_outline(line)
    _require_no_crossing(lines)
    _require_area(lines)
    _require_holes_inside(lines)


def _require_outline(line: Floats) -> None:
    """Raise OutsideRange unless one outline has corners enough and encloses an area."""
    if len(line) < 3 or line.ndim != 2:
        found = say("{number} points", number=len(line))
        raise OutsideRange.of(say("outline"), found, say("3 or more"))
    if not np.all(np.isfinite(line)):
        raise OutsideRange.of(say("outline"), say("a point that is not a number"), say("lengths"))
    length, width = np.ptp(line, axis=0)
    require_length(say_later("length of the outline"), float(length))
    require_length(say_later("width of the outline"), float(width))
    if np.any(np.all(line == np.roll(line, 1, axis=0), axis=1)):
        raise OutsideRange(say("outline: a point is repeated; accepted: every corner once"))


def _require_area(lines: tuple[Floats, ...]) -> None:
    """Raise OutsideRange if an outline encloses no area."""
    for line in lines:
        if abs(enclosed_area(line)) < 1e-12 * float(np.ptp(line)) * GREATEST:
            raise OutsideRange(say("outline: it encloses no area; accepted: a line round an area"))


def _require_no_crossing(lines: tuple[Floats, ...]) -> None:
    """Raise OutsideRange if any edges cross or touch."""
    edges = np.concatenate([edges_of(line) for line in lines])
    found = first_crossing(edges, tuple(len(line) for line in lines))
    if found:
        raise OutsideRange(
            say(
                "outline: its lines {one} and {other} cross or touch; "
                "accepted: outlines that cross neither themselves nor one another",
                one=found[0] + 1,
                other=found[1] + 1,
            )
        )


def _require_holes_inside(lines: tuple[Floats, ...]) -> None:
    """Raise OutsideRange unless each hole lies inside the outer outline and in no other hole."""
    outer, *holes = lines
    for place, hole in enumerate(holes):
        if signed_distance(hole[:1], (outer,))[0] <= 0.0:
            raise OutsideRange(
                say("outline: a hole lies outside it; accepted: one outline with holes")
            )
        others = holes[:place] + holes[place + 1 :]
        if any(signed_distance(hole[:1], (other,))[0] > 0.0 for other in others):
            raise OutsideRange(say("outline: a hole lies in a hole; accepted: holes side by side"))
