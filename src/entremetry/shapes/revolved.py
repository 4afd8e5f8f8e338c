"""What every body of revolution can tell, once its profile is known."""

from __future__ import annotations

import math

import numpy as np

from entremetry.shapes.dimension import inside_height, require_spacing
from entremetry.shapes.filling import level_by_bisection, require_volume
from entremetry.shapes.outline import circle, without_repeats
from entremetry.shapes.piece import counted
from entremetry.shapes.profile import Profile
from entremetry.shapes.solid import Floats


class Revolved:
    """A body swept by a profile about the vertical axis; subclasses set `profile`."""

    __slots__ = ()
    profile: Profile

    @property
    def volume(self) -> float:
        """Volume up to the rim. [m3]"""
        return math.pi * self.profile.square_below(self.profile.height)

    @property
    def wall_area(self) -> float:
        """Area of the wall, by Pappus' first theorem. [m2]"""
        return 2.0 * math.pi * self.profile.path_moment

    @property
    def length(self) -> float:
        """Greatest diameter. [m]"""
        return 2.0 * self.profile.widest

    @property
    def width(self) -> float:
        """Greatest diameter. [m]"""
        return self.length

    def volume_below(self, level: float) -> float:
        """Volume between the closed end and a level. [m3]"""
        level = inside_height(level, self.profile.height)
        return math.pi * self.profile.square_below(level)

    def level_at(self, volume: float) -> float:
        """Level to which a volume fills. [m]"""
        volume = require_volume(volume, self.volume)
        return level_by_bisection(self.volume_below, self.profile.height, volume)

    def area_at(self, level: float) -> float:
        """Horizontal cross-section area at a level. [m2]"""
        radii = self.profile.crossings(inside_height(level, self.profile.height))
        squares = [radius**2 for radius in radii]
        return math.pi * (sum(squares[::2]) - sum(squares[1::2]))

    def section(self) -> tuple[Floats, ...]:
        """Closed outlines of the section through the axis. [m]"""
        right = self.profile.drawn()
        left = right[::-1] * (-1.0, 1.0)
        if right[0, 0] > 0.0:
            return right, left
        return (without_repeats(np.concatenate([right[1:], left])),)

    def plan(self, level: float) -> tuple[Floats, ...]:
        """Circles that bound the horizontal section, outer first. [m]"""
        radii = self.profile.crossings(inside_height(level, self.profile.height))
        return tuple(circle(radius) for radius in radii if radius > 0.0)

    def surface(self, spacing: float) -> Floats:
        """Points on wall and opening, at most `spacing` apart. (n, 3) [m]"""
        require_spacing(spacing, self.wall_area)
        meridian = self.profile.points(spacing)
        rim = self.profile.rim()
        if rim:
            inner = rim[1] if len(rim) > 1 else 0.0
            radii = np.linspace(inner, rim[0], counted(rim[0] - inner, spacing) + 1)
            face = np.stack([radii, np.full_like(radii, self.profile.height)], axis=-1)
            meridian = np.concatenate([meridian, face])
        return np.concatenate([_turned(u, z, spacing) for u, z in meridian])

    def clearance(self, points: Floats) -> Floats:
        """Distance of points (n, 3) from the wall, by the nearest point of the profile. [m]"""
        return self.profile.clearance(np.hypot(points[:, 0], points[:, 1]), points[:, 2])


def _turned(u: float, z: float, spacing: float) -> Floats:
    """Points of the circle that one point of the profile sweeps."""
    angles = np.arange(count := counted(2.0 * math.pi * u, spacing)) * (2.0 * math.pi / count)
    return np.stack([u * np.cos(angles), u * np.sin(angles), np.full(count, z)], axis=-1)
