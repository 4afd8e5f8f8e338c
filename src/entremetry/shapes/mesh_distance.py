"""Distances from a wall of triangles."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

from entremetry.shapes.solid import Floats, Wholes
from entremetry.shapes.triangle_points import samples_on_triangles

SAMPLES = 20_000
"""About how many points stand for the wall when the nearest faces are looked up."""

CANDIDATES = 12
"""Nearest samples whose faces are measured exactly."""

BLOCK = 20_000


@dataclass(frozen=True, slots=True)
class Wall:
    """Faces, their outward normals, and samples on them in a search tree."""

    triangles: Floats
    normals: Floats
    owners: Wholes
    tree: Any

    @classmethod
    def of(cls, triangles: Floats) -> Wall:
        """Return the wall made of triangles (m, 3, 3); slivers without area are left out."""
        from scipy.spatial import cKDTree

        cross = np.cross(triangles[:, 1] - triangles[:, 0], triangles[:, 2] - triangles[:, 0])
        size = np.linalg.norm(cross, axis=1)
        kept = size > 1e-12 * size.max()
        triangles, normals = triangles[kept], cross[kept] / size[kept, None]
        spacing = math.sqrt(float(size.sum()) / SAMPLES)
        samples, owners = samples_on_triangles(triangles, spacing)
        return cls(triangles, normals, owners, cKDTree(samples))

    def clearance(self, points: Floats) -> Floats:
        """Distance of points (n, 3) from the nearest face, positive inside. [m]"""
        parts = [
            self._clearance(points[first : first + BLOCK]) for first in range(0, len(points), BLOCK)
        ]
        return np.concatenate(parts) if parts else np.zeros(0)

    def _clearance(self, points: Floats) -> Floats:
        """Measure a block; of faces equally near the one faced most squarely gives the sign."""
        count = min(CANDIDATES, len(self.owners))
        _, found = self.tree.query(points, k=[*range(1, count + 1)])
        faces = self.owners[found]
        shape = faces.shape
        repeated = np.repeat(points, count, axis=0)
        nearest = nearest_on_triangles(self.triangles[faces.ravel()], repeated)
        away = repeated - nearest
        distance = np.linalg.norm(away, axis=1).reshape(shape)
        along = np.sum(away * self.normals[faces.ravel()], axis=1).reshape(shape)
        least = distance.min(axis=1, keepdims=True)
        equal = distance <= least * (1.0 + 1e-7) + 1e-12
        squarest = np.argmax(np.where(equal, np.abs(along), -1.0), axis=1)
        outward = along[np.arange(len(points)), squarest]
        signed: Floats = np.where(outward > 0.0, -least[:, 0], least[:, 0])
        return signed


def nearest_on_triangles(triangles: Floats, points: Floats) -> Floats:
    """Return the nearest point of each triangle (n, 3, 3) to each point (n, 3). [m]"""
    corner = triangles[:, 0]
    u, v = triangles[:, 1] - corner, triangles[:, 2] - corner
    away = points - corner
    uu, uv, vv = _dot(u, u), _dot(u, v), _dot(v, v)
    au, av = _dot(away, u), _dot(away, v)
    area = uu * vv - uv * uv
    s, t = (vv * au - uv * av) / area, (uu * av - uv * au) / area
    best = corner + s[:, None] * u + t[:, None] * v
    inside = (s >= 0.0) & (t >= 0.0) & (s + t <= 1.0)
    least = np.where(inside, _dot(points - best, points - best), np.inf)
    for start, end in ((0, 1), (1, 2), (2, 0)):
        run = triangles[:, end] - triangles[:, start]
        share = _dot(points - triangles[:, start], run) / _dot(run, run)
        on_edge = triangles[:, start] + np.clip(share, 0.0, 1.0)[:, None] * run
        square = _dot(points - on_edge, points - on_edge)
        nearer = square < least
        best = np.where(nearer[:, None], on_edge, best)
        least = np.where(nearer, square, least)
    return best


def _dot(one: Floats, other: Floats) -> Floats:
    """Row by row product."""
    product: Floats = np.einsum("ij,ij->i", one, other)
    return product
