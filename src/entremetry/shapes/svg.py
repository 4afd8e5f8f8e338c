"""A prism from the outline in an SVG path."""

from __future__ import annotations

import re
from typing import Any

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.shapes.dimension import CHORD_ERROR, require_length
from entremetry.shapes.outline import enclosed_area, without_repeats
from entremetry.shapes.piece import Point
from entremetry.shapes.prism import Prism
from entremetry.shapes.solid import Floats
from entremetry.words import say, say_later

LONGEST_TEXT = 50_000
PATH_DATA = re.compile(r"\s*[Mm][MmLlHhVvCcSsQqTtAaZz0-9eE+\-.,\s]*")
MILLIMETRE = 0.001
MOST_STEPS = 256


def prism_from_svg(path_text: str, height: float, width: float | None = None) -> Prism:
    """Return the prism over the outline that SVG path data draws.

    Parameters
    ----------
    path_text : str
        The text of a path's `d`: commands and numbers, nothing else. One outline; further
        closed lines inside it are holes. One unit is a millimetre unless `width` is given.
    height : float
        Height of the prism. [m]
    width : float, optional
        Extent of the drawing from left to right, to which it is scaled. [m]

    Raises
    ------
    OutsideRange
        If the text is no path data, a line is open or crosses itself, or holes lie outside.
    """
    lines = [line * MILLIMETRE for line in _lines(_require_path_data(path_text), 1.0)]
    if width is not None:
        require_length(say_later("width of the outline"), width)
        drawn = float(np.ptp(np.concatenate(lines)[:, 0]))
        if not drawn > 0.0:
            raise OutsideRange(say("outline: it has no width; accepted: a line round an area"))
        factor = width / drawn
        lines = [line * MILLIMETRE * factor for line in _lines(path_text, factor)]
    outer, *holes = sorted(lines, key=lambda line: -abs(enclosed_area(line)))
    return Prism(outline=_points(outer), holes=tuple(map(_points, holes)), height=height)


def _require_path_data(text: str) -> str:
    """Return the text if it holds only path commands and numbers."""
    if len(text) > LONGEST_TEXT:
        found = say("{number} characters", number=len(text))
        accepted = say("SVG path data up to {most}", most=LONGEST_TEXT)
        raise OutsideRange.of(say("outline"), found, accepted)
    if not PATH_DATA.fullmatch(text):
        accepted = say("SVG path data, such as '{example}'", example="M0 0 H60 V40 H0 Z")
        raise OutsideRange.of(say("outline"), f"{text[:40]!r}", accepted)
    return text


def _lines(text: str, factor: float) -> list[Floats]:
    """Return the closed lines of a path, y upward, curves drawn finely enough. [drawing units]"""
    import svgelements

    try:
        path = svgelements.Path(text)
        runs = [list(run) for run in path.as_subpaths()]
    except (ValueError, IndexError, TypeError, AttributeError, ZeroDivisionError) as error:
        accepted = say("complete SVG path data")
        raise OutsideRange.of(say("outline"), f"{text[:40]!r}", accepted) from error
    tolerance = 0.25 * CHORD_ERROR / (MILLIMETRE * factor) if factor > 0.0 else 1.0
    lines = [_closed_line(run, tolerance) for run in runs]
    if not lines:
        raise OutsideRange(say("outline: it draws nothing; accepted: a closed line"))
    return lines


def _closed_line(run: list[Any], tolerance: float) -> Floats:
    """Return the corners of one line of a path, refused unless it ends where it began."""
    import svgelements

    drawn = [segment for segment in run if not isinstance(segment, svgelements.Move)]
    parts = [_corners(segment, tolerance) for segment in drawn]
    if not parts:
        raise OutsideRange(say("outline: a line has no length; accepted: a closed line"))
    line = np.concatenate(parts)
    if not np.all(np.isfinite(line)):
        raise OutsideRange.of(say("outline"), say("a point that is not a number"), say("lengths"))
    closed = isinstance(run[-1], svgelements.Close)
    if not closed and np.max(np.abs(line[0] - line[-1])) > tolerance:
        raise OutsideRange(say("outline: a line is not closed; accepted: lines that end with Z"))
    return without_repeats(line * (1.0, -1.0))


def _corners(segment: Any, tolerance: float) -> Floats:
    """Return points along a piece of a path, close enough together to draw it."""
    import svgelements

    if isinstance(segment, svgelements.Line | svgelements.Close):
        return np.array([tuple(segment.start), tuple(segment.end)], dtype=float)
    steps = 4
    while steps < MOST_STEPS:
        fine = _sampled(segment, 2 * steps)
        sagitta = np.abs(fine[1::2] - (fine[:-1:2] + fine[2::2]) / 2.0)
        if not np.max(sagitta) > tolerance:
            break
        steps *= 2
    return _sampled(segment, steps)


def _sampled(segment: Any, steps: int) -> Floats:
    """Return points of a curve at equal steps of its parameter."""
    found = [segment.point(step / steps) for step in range(steps + 1)]
    return np.array([(point.x, point.y) for point in found], dtype=float)


def _points(line: Floats) -> tuple[Point, ...]:
    """Return an outline as pairs."""
    return tuple((float(x), float(y)) for x, y in line)
