"""A smooth outline around the cells of a grid that lie in a piece."""

from __future__ import annotations

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from entremetry.shapes import Floats

Corner: TypeAlias = tuple[int, int]
STRAIGHT = 6.0  # cells from which on an edge is taken as straight and keeps its ends
SHARP = 4.0  # cells from which on two edges make a true corner
ROUNDED = 2.5  # cells of a straight edge that go into the bend at its end


def smooth_outlines(inside: NDArray[np.bool_], across: Floats, down: Floats) -> tuple[Floats, ...]:
    """Outlines around the inside of a grid of even cells, their stairs made slopes.

    Each step of the stairs gives its middle as a point, so that a round wall looks round; two
    long edges keep the corner between them.
    """
    return tuple(
        np.column_stack([_places(across, ring[:, 1]), _places(down, ring[:, 0])])
        for ring in (_sloped(ring) for ring in _stairs(inside))
    )


def _places(middles: Floats, index: Floats) -> Floats:
    """Places of edges counted in cells from the first edge."""
    step = (middles[-1] - middles[0]) / (len(middles) - 1)
    return np.asarray(middles[0] + (index - 0.5) * step)


def _stairs(inside: NDArray[np.bool_]) -> list[list[Corner]]:
    """Corners of each way around the inside, which stays on the right hand."""
    following: dict[Corner, list[Corner]] = {}
    cells = np.pad(inside, 1)
    for row, column in np.argwhere(inside):
        r, c = int(row), int(column)
        sides = (
            (cells[r, c + 1], (r, c), (r, c + 1)),
            (cells[r + 1, c + 2], (r, c + 1), (r + 1, c + 1)),
            (cells[r + 2, c + 1], (r + 1, c + 1), (r + 1, c)),
            (cells[r + 1, c], (r + 1, c), (r, c)),
        )
        for neighbour, start, end in sides:
            if not neighbour:
                following.setdefault(start, []).append(end)
    return _rings(following)


def _rings(following: dict[Corner, list[Corner]]) -> list[list[Corner]]:
    rings = []
    while following:
        start = next(iter(following))
        ring, here = [start], _next(following, start)
        while here != start:
            ring.append(here)
            here = _next(following, here)
        rings.append(ring)
    return rings


def _next(following: dict[Corner, list[Corner]], here: Corner) -> Corner:
    ends = following[here]
    end = ends.pop()
    if not ends:
        del following[here]
    return end


def _sloped(ring: list[Corner]) -> Floats:
    """Points of a way around, in rows and columns: middles of short edges, ends of long ones."""
    corners = _turns(np.array(ring, dtype=float))
    sizes = np.abs(np.roll(corners, -1, axis=0) - corners).sum(axis=1)
    points: list[Floats] = []
    for k, (start, size) in enumerate(zip(corners, sizes, strict=True)):
        end = corners[(k + 1) % len(corners)]
        if sizes[k - 1] >= SHARP and size >= SHARP:
            points.append(start)
        if size < STRAIGHT:
            points.append((start + end) / 2.0)
        else:
            inset = (end - start) * ROUNDED / size
            points += [start + inset, end - inset]
    return np.array(points)


def _turns(ring: Floats) -> Floats:
    """Corners where the way turns."""
    before, after = ring - np.roll(ring, 1, axis=0), np.roll(ring, -1, axis=0) - ring
    return np.asarray(ring[(before != after).any(axis=1)])
