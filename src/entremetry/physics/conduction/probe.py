"""Points of a body whose temperature is read between the cells."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import product

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.physics.conduction.body import Body
from entremetry.physics.conduction.march import Probes

CORNERS = 8


def probes(body: Body, points: Mapping[str, Sequence[float]]) -> Probes:
    """Cells and weights for points given as (across, level) or (length, width, height). [m]

    Raises
    ------
    OutsideRange
        If a point is not finite or not in the body, by more than one cell.
    """
    cell = np.full((len(points), CORNERS), body.cells.pad, dtype=np.int64)
    weight = np.zeros((len(points), CORNERS))
    for row, (name, place) in enumerate(points.items()):
        found = _corners(body, _coordinates(body, name, place))
        if not found:
            raise OutsideRange(f"point {name} at {tuple(place)} m is not in the body")
        whole = sum(w for _, w in found)
        for column, (number, w) in enumerate(found):
            cell[row, column] = number + body.cells.pad
            weight[row, column] = w / whole
    return Probes(cell, weight)


def _coordinates(body: Body, name: str, place: Sequence[float]) -> list[float]:
    flat = body.origin[0] == 0.0 and body.spacing[0] == 1.0 and body.cells.shape[0] == 1
    wanted = 2 if flat else 3
    if len(place) != wanted or not np.isfinite(np.asarray(place, dtype=float)).all():
        raise OutsideRange(f"point {name} needs {wanted} finite coordinates")
    return [0.5, float(place[1]), float(place[0])] if flat else [float(x) for x in place]


def _corners(body: Body, place: Sequence[float]) -> list[tuple[int, float]]:
    """Cells around a point with their weights; the nearest filled ones if some are empty."""
    axes = []
    for axis in range(3):
        n = body.cells.shape[axis]
        where = (place[axis] - body.origin[axis]) / body.spacing[axis] - 0.5
        if not -1.6 <= where <= n + 0.6:
            return []
        low = min(max(int(np.floor(where)), 0), max(n - 2, 0))
        part = where - low if n > 1 else 0.0
        if axis == 2 and body.axis_at_origin and where < 0.0:
            part = 0.0  # the field is even about the axis
        axes.append(((low, 1.0 - part), (min(low + 1, n - 1), part if n > 1 else 0.0)))
    found = []
    for corner in product(*axes):
        number = int(np.ravel_multi_index(tuple(c[0] for c in corner), body.cells.shape))
        w = float(np.prod([c[1] for c in corner]))
        if w != 0.0 and body.cells.volume[number + body.cells.pad] > 0.0:
            found.append((number, w))
    if abs(sum(w for _, w in found)) < 0.25:
        return []
    return found
