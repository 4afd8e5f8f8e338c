"""Outlines of a closed mesh cut by a plane."""

from __future__ import annotations

import numpy as np

from entremetry.shapes.outline import enclosed_area, without_repeats
from entremetry.shapes.solid import Flags, Floats, Wholes

Edge = tuple[int, int]


def slice_outlines(
    vertices: Floats, faces: Wholes, *, axis: int, place: float
) -> tuple[Floats, ...]:
    """Return the closed outlines at a place along an axis, largest first. (n, 2) [m]

    The plane is moved by a billionth of the body if a vertex lies on it, so that every face
    it cuts is cut along one line between two of its edges.
    """
    nudge = 1e-9 * float(np.ptp(vertices[:, axis]))
    height = vertices[:, axis] - place
    height = np.where(np.abs(height) < nudge, nudge, height)
    links = _links(height > 0.0, faces)
    kept = [other for other in range(3) if other != axis]
    flat = vertices[:, kept]
    outlines = [
        np.array([_crossing(flat, height, edge) for edge in loop]) for loop in _loops(links)
    ]
    outlines = [without_repeats(line) for line in outlines]
    real = [line for line in outlines if len(line) > 2]
    return tuple(sorted(real, key=lambda line: -abs(enclosed_area(line))))


def _links(above: Flags, faces: Wholes) -> dict[Edge, list[Edge]]:
    """Return for each edge that is cut the edges cut in the same faces."""
    cut = faces[above[faces].any(axis=1) & ~above[faces].all(axis=1)]
    links: dict[Edge, list[Edge]] = {}
    for face in cut:
        corners = [int(corner) for corner in face]
        one, other = (
            (min(a, b), max(a, b))
            for a, b in zip(corners, corners[1:] + corners[:1], strict=True)
            if above[a] != above[b]
        )
        links.setdefault(one, []).append(other)
        links.setdefault(other, []).append(one)
    return links


def _loops(links: dict[Edge, list[Edge]]) -> list[list[Edge]]:
    """Follow the links round until every edge is used."""
    loops = []
    while links:
        edge = next(iter(links))
        loop = []
        while edge in links:
            loop.append(edge)
            onward = [other for other in links.pop(edge) if other in links]
            edge = onward[0] if onward else edge
        loops.append(loop)
    return loops


def _crossing(flat: Floats, height: Floats, edge: Edge) -> Floats:
    """Point where the plane cuts an edge."""
    a, b = edge
    share = height[a] / (height[a] - height[b])
    point: Floats = flat[a] + share * (flat[b] - flat[a])
    return point
