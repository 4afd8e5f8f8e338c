"""Points spread over triangles."""

from __future__ import annotations

import numpy as np

from entremetry.shapes.solid import Floats, Wholes


def points_on_triangles(triangles: Floats, spacing: float) -> tuple[Floats, Wholes]:
    """Return points on triangles (m, 3, 3), corners included, and the triangle of each. [m]"""
    edges = np.linalg.norm(triangles - np.roll(triangles, 1, axis=1), axis=2)
    steps = np.maximum(np.ceil(edges.max(axis=1) / spacing - 1e-9).astype(int), 1)
    points, owners = [], []
    for count in np.unique(steps):
        of_count = np.flatnonzero(steps == count)
        lattice = _lattice(int(count))
        points.append(np.einsum("kc,mcd->mkd", lattice, triangles[of_count]).reshape(-1, 3))
        owners.append(np.repeat(of_count, len(lattice)))
    return np.concatenate(points), np.concatenate(owners)


def _lattice(steps: int) -> Floats:
    """Return barycentric coordinates of a lattice over a triangle. (k, 3)"""
    i, j = np.meshgrid(np.arange(steps + 1), np.arange(steps + 1), indexing="ij")
    kept = i + j <= steps
    first, second = i[kept] / steps, j[kept] / steps
    return np.stack([first, second, 1.0 - first - second], axis=-1)
