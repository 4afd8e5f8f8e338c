"""Volumes and areas below a level of a closed mesh, exactly."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from entremetry.shapes.solid import Floats


@dataclass(frozen=True, slots=True)
class Facets:
    """Faces of a closed mesh: levels of their corners, and their area seen from above.

    Notes
    -----
    By Gauss' theorem, with the field (0, 0, z - level), the volume below a level is the
    integral of the depth below it over the faces as seen from above; its derivative is the
    area at the level. Over a triangle cut by the level both are closed forms.
    """

    levels: Floats
    seen: Floats

    @classmethod
    def of(cls, triangles: Floats) -> Facets:
        """Return the facets of triangles (m, 3, 3), upright ones left out."""
        edges = triangles[:, 1:, :2] - triangles[:, :1, :2]
        seen = -0.5 * (edges[:, 0, 0] * edges[:, 1, 1] - edges[:, 0, 1] * edges[:, 1, 0])
        kept = seen != 0.0
        return cls(np.sort(triangles[kept, :, 2], axis=1), seen[kept])

    def volume_below(self, level: float) -> float:
        """Volume below a level. [m3]"""
        depth = level - self.levels
        first, last = self._cut_corners(depth)
        mean = np.mean(depth, axis=1)
        whole = np.where(depth[:, 1] > 0.0, mean - last * depth[:, 2] / 3.0, 0.0)
        share = np.where(depth[:, 1] > 0.0, whole, first * depth[:, 0] / 3.0)
        return max(float(np.sum(self.seen * share)), 0.0)

    def area_at(self, level: float) -> float:
        """Area of the section at a level. [m2]"""
        depth = level - self.levels
        first, last = self._cut_corners(depth)
        share = np.where(depth[:, 1] > 0.0, 1.0 - last, first)
        return max(float(np.sum(self.seen * share)), 0.0)

    def _cut_corners(self, depth: Floats) -> tuple[Floats, Floats]:
        """Share of each triangle in its lowest corner if only that is below, and in its
        highest corner if only that is above."""
        low, middle, high = depth.T
        spans = (low - middle) * (low - high), (high - low) * (high - middle)
        first, last = (np.where(span > 0.0, span, np.inf) for span in spans)
        return np.maximum(low, 0.0) ** 2 / first, np.minimum(high, 0.0) ** 2 / last
