"""A mould known by a mesh of triangles."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from entremetry.shapes.dimension import inside_height, require_factor, require_spacing
from entremetry.shapes.filling import level_by_bisection, require_volume
from entremetry.shapes.mesh_distance import Wall
from entremetry.shapes.mesh_filling import Facets
from entremetry.shapes.mesh_slice import slice_outlines
from entremetry.shapes.outline import signed_distance
from entremetry.shapes.solid import Flags, Floats, Wholes
from entremetry.shapes.triangle_points import points_on_triangles

FLAT = 1e-5
"""A face is part of the opening if it lies this close to the rim level, as a share of the
height: meshes are stored in single precision."""


@dataclass(frozen=True, kw_only=True, eq=False)
class MeshSolid:
    """A closed mesh with its faces turned outward; made by `mesh_from_stl`.

    Volumes and areas at a level are exact for the mesh, which itself lies inside a convex
    curved mould: a round body drawn with N sides is low by about 6.6 / N**2.
    """

    vertices: Floats
    faces: Wholes

    @property
    def height(self) -> float:
        """Distance from the closed end to the rim. [m]"""
        return float(self.vertices[:, 2].max())

    @property
    def length(self) -> float:
        """Greatest extent along x. [m]"""
        return float(np.ptp(self.vertices[:, 0]))

    @property
    def width(self) -> float:
        """Greatest extent along y. [m]"""
        return float(np.ptp(self.vertices[:, 1]))

    @cached_property
    def _triangles(self) -> Floats:
        """Corners of every face. (m, 3, 3) [m]"""
        return self.vertices[self.faces]

    @cached_property
    def _opening(self) -> Flags:
        """Tell which faces are the opening."""
        flat: Flags = self._triangles[:, :, 2].min(axis=1) >= self.height * (1.0 - FLAT)
        return flat

    @cached_property
    def _facets(self) -> Facets:
        """The faces as seen from above, for filling."""
        return Facets.of(self._triangles)

    @cached_property
    def _wall(self) -> Wall:
        """The faces of the wall, for distances."""
        return Wall.of(self._triangles[~self._opening])

    @cached_property
    def _rim(self) -> tuple[Floats, ...]:
        """Outlines of the opening, none if it is closed. [m]"""
        return self.plan(self.height) if self._opening.any() else ()

    @property
    def volume(self) -> float:
        """Volume up to the rim. [m3]"""
        return self._facets.volume_below(self.height)

    @property
    def wall_area(self) -> float:
        """Area of all faces but the opening. [m2]"""
        edges = self._triangles[:, 1:] - self._triangles[:, :1]
        areas = 0.5 * np.linalg.norm(np.cross(edges[:, 0], edges[:, 1]), axis=1)
        return float(np.sum(areas[~self._opening]))

    def volume_below(self, level: float) -> float:
        """Volume between the closed end and a level. [m3]"""
        return self._facets.volume_below(inside_height(level, self.height))

    def level_at(self, volume: float) -> float:
        """Level to which a volume fills. [m]"""
        volume = require_volume(volume, self.volume)
        return level_by_bisection(self.volume_below, self.height, volume)

    def area_at(self, level: float) -> float:
        """Horizontal cross-section area at a level. [m2]"""
        return self._facets.area_at(self._off_the_ends(level))

    def section(self) -> tuple[Floats, ...]:
        """Closed outlines of the section along x, largest first. [m]"""
        return slice_outlines(self.vertices, self.faces, axis=1, place=0.0)

    def plan(self, level: float) -> tuple[Floats, ...]:
        """Closed outlines of the horizontal section, largest first. [m]"""
        place = self._off_the_ends(level)
        return slice_outlines(self.vertices, self.faces, axis=2, place=place)

    def _off_the_ends(self, level: float) -> float:
        """Level kept from flat ends, whose corners differ by rounding. [m]"""
        edge = FLAT * self.height
        return min(max(inside_height(level, self.height), edge), self.height - edge)

    def surface(self, spacing: float) -> Floats:
        """Points on every face, at most `spacing` apart. (n, 3) [m]"""
        require_spacing(spacing, self.wall_area)
        return points_on_triangles(self._triangles, spacing)

    def clearance(self, points: Floats) -> Floats:
        """Distance of points (n, 3) from the wall. [m]

        Exact for the mesh where the nearest face is among those of the nearest samples;
        above the rim never too large.
        """
        lowered = points.copy()
        lowered[:, 2] = np.minimum(points[:, 2], self.height) if self._rim else points[:, 2]
        found = self._wall.clearance(lowered)
        above = points[:, 2] > self.height
        if self._rim and above.any():
            found[above] = self._above_rim(points[above], np.abs(found[above]))
        return found

    def _above_rim(self, points: Floats, from_wall: Floats) -> Floats:
        """Distance of points above the rim from the wall continued straight up."""
        beside = signed_distance(points[:, :2], self._rim)
        nearest = np.minimum(np.abs(beside), np.hypot(from_wall, points[:, 2] - self.height))
        return np.copysign(nearest, beside)

    def scaled(self, factor: float) -> MeshSolid:
        """Similar body with every length multiplied."""
        require_factor(factor)
        return MeshSolid(vertices=self.vertices * factor, faces=self.faces)
