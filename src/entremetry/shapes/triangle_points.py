"""Points spread over triangles."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from entremetry.shapes.solid import Floats, Wholes


def points_on_triangles(triangles: Floats, spacing: float) -> Floats:
    """Return points on triangles (m, 3, 3), corners included, at most `spacing` apart. [m]"""
    points, _ = _spread(triangles, spacing, _corners)
    return points


def samples_on_triangles(triangles: Floats, spacing: float) -> tuple[Floats, Wholes]:
    """Return points inside triangles, one at least in each, and the triangle of each. [m]"""
    return _spread(triangles, spacing, _middles)


def _spread(
    triangles: Floats, spacing: float, lattice: Callable[[int], Floats]
) -> tuple[Floats, Wholes]:
    """Lay a lattice, as fine as the spacing asks, over every triangle."""
    edges = np.linalg.norm(triangles - np.roll(triangles, 1, axis=1), axis=2)
    steps = np.maximum(np.ceil(edges.max(axis=1) / spacing - 1e-9).astype(int), 1)
    points, owners = [], []
    for count in np.unique(steps):
        of_count = np.flatnonzero(steps == count)
        shares = lattice(int(count))
        points.append(np.einsum("kc,mcd->mkd", shares, triangles[of_count]).reshape(-1, 3))
        owners.append(np.repeat(of_count, len(shares)))
    return np.concatenate(points), np.concatenate(owners)


def _corners(steps: int) -> Floats:
    """Barycentric coordinates of the corners of a triangle cut into small ones. (k, 3)"""
    i, j = np.meshgrid(np.arange(steps + 1.0), np.arange(steps + 1.0), indexing="ij")
    kept = i + j <= steps
    return _barycentric(i[kept] / steps, j[kept] / steps)


def _middles(steps: int) -> Floats:
    """Barycentric coordinates of the middles of the small triangles. (k, 3)"""
    i, j = np.meshgrid(np.arange(float(steps)), np.arange(float(steps)), indexing="ij")
    upright, turned = i + j <= steps - 1, i + j <= steps - 2
    first = np.concatenate([i[upright] + 1.0 / 3.0, i[turned] + 2.0 / 3.0])
    second = np.concatenate([j[upright] + 1.0 / 3.0, j[turned] + 2.0 / 3.0])
    return _barycentric(first / steps, second / steps)


def _barycentric(first: Floats, second: Floats) -> Floats:
    """Complete two barycentric coordinates."""
    return np.stack([first, second, 1.0 - first - second], axis=-1)
