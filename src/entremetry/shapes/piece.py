"""Pieces of a profile: straight lines and circular arcs in a half-plane (u, z).

u is the distance from the axis (or from the middle plane), z the level. A piece never turns
back in z, so at each level it has one u; its integrals over z are closed forms.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Protocol

import numpy as np

from entremetry.shapes.dimension import CHORD_ERROR
from entremetry.shapes.solid import Floats

Point = tuple[float, float]


class Piece(Protocol):
    """What a profile asks of each of its pieces."""

    @property
    def start(self) -> Point:
        """First point (u, z)."""

    @property
    def end(self) -> Point:
        """Last point (u, z)."""

    @property
    def path_length(self) -> float:
        """Length along the piece. [m]"""

    @property
    def path_moment(self) -> float:
        """Integral of u along the piece; times 2 pi it is the area it sweeps. [m2]"""

    def distance_at(self, levels: Floats) -> Floats:
        """Distance u from the axis at levels within the piece. [m]"""

    def area_below(self, level: float) -> float:
        """Integral of u over z from the lower end to a level. [m2]"""

    def square_below(self, level: float) -> float:
        """Integral of u squared over z from the lower end to a level. [m3]"""

    def nearest(self, u: Floats, z: Floats) -> Floats:
        """Distance of points from the piece. [m]"""

    def points(self, spacing: float) -> Floats:
        """Points from start to end, both included, at most `spacing` apart. (n, 2) [m]"""

    def drawn(self) -> Floats:
        """Points from start to end, close enough together to draw the piece. (n, 2) [m]"""

    def scaled(self, factor: float) -> Piece:
        """Similar piece, every length multiplied."""


def counted(length: float, spacing: float) -> int:
    """Return how many equal steps of at most `spacing` cover a length, one at least."""
    return max(1, math.ceil(length / spacing - 1e-9))


@dataclass(frozen=True, slots=True)
class Segment:
    """A straight line."""

    start: Point
    end: Point

    @property
    def path_length(self) -> float:
        """Length along the piece. [m]"""
        return math.dist(self.start, self.end)

    @property
    def path_moment(self) -> float:
        """Integral of u along the piece. [m2]"""
        return self.path_length * (self.start[0] + self.end[0]) / 2.0

    def distance_at(self, levels: Floats) -> Floats:
        """Distance u from the axis at levels within the piece. [m]"""
        (u0, z0), (u1, z1) = self.start, self.end
        return u0 + (u1 - u0) * ((levels - z0) / (z1 - z0))

    def _clipped(self, level: float) -> tuple[float, float, float]:
        """Return rise, u at the lower end and u at the level."""
        (u0, z0), (u1, z1) = sorted((self.start, self.end), key=lambda point: point[1])
        rise = min(max(level, z0), z1) - z0
        return rise, u0, u0 + (u1 - u0) * (rise / (z1 - z0)) if z1 > z0 else u0

    def area_below(self, level: float) -> float:
        """Integral of u over z from the lower end to a level. [m2]"""
        rise, u0, u1 = self._clipped(level)
        return rise * (u0 + u1) / 2.0

    def square_below(self, level: float) -> float:
        """Integral of u squared over z from the lower end to a level. [m3]"""
        rise, u0, u1 = self._clipped(level)
        return rise * (u0 * u0 + u0 * u1 + u1 * u1) / 3.0

    def nearest(self, u: Floats, z: Floats) -> Floats:
        """Distance of points from the piece. [m]"""
        (u0, z0), (u1, z1) = self.start, self.end
        along_u, along_z = u1 - u0, z1 - z0
        share = ((u - u0) * along_u + (z - z0) * along_z) / (along_u**2 + along_z**2)
        share = np.clip(share, 0.0, 1.0)
        return np.hypot(u - u0 - share * along_u, z - z0 - share * along_z)

    def points(self, spacing: float) -> Floats:
        """Points from start to end, both included, at most `spacing` apart. (n, 2) [m]"""
        return np.linspace(self.start, self.end, counted(self.path_length, spacing) + 1)

    def drawn(self) -> Floats:
        """Points from start to end that draw the piece. (2, 2) [m]"""
        return np.array([self.start, self.end])

    def scaled(self, factor: float) -> Segment:
        """Similar piece, every length multiplied."""
        (u0, z0), (u1, z1) = self.start, self.end
        return Segment((u0 * factor, z0 * factor), (u1 * factor, z1 * factor))


@dataclass(frozen=True, slots=True, kw_only=True)
class Arc:
    """Part of a circle, on its outer (`side` 1) or inner (`side` -1) half."""

    centre: Point
    radius: float
    side: int
    levels: tuple[float, float]

    def _angle(self, level: float) -> float:
        """Angle from the lowest point of the circle to the point at a level. [rad]"""
        rise = level - (self.centre[1] - self.radius)
        return 2.0 * math.asin(math.sqrt(min(max(rise / (2.0 * self.radius), 0.0), 1.0)))

    def _at_angle(self, angles: Floats) -> Floats:
        """Points at angles from the lowest point."""
        u = self.centre[0] + self.side * self.radius * np.sin(angles)
        return np.stack([u, self.centre[1] - self.radius * np.cos(angles)], axis=-1)

    def _end(self, level: float) -> Point:
        """End of the arc at one of its levels; the level itself is kept exactly."""
        u = self.centre[0] + self.side * self.radius * math.sin(self._angle(level))
        return (u, level)

    @property
    def start(self) -> Point:
        """First point (u, z)."""
        return self._end(self.levels[0])

    @property
    def end(self) -> Point:
        """Last point (u, z)."""
        return self._end(self.levels[1])

    @property
    def opened(self) -> float:
        """Angle the arc covers. [rad]"""
        return abs(self._angle(self.levels[1]) - self._angle(self.levels[0]))

    @property
    def path_length(self) -> float:
        """Length along the piece. [m]"""
        return self.radius * self.opened

    @property
    def path_moment(self) -> float:
        """Integral of u along the piece; on a sphere only the height counts. [m2]"""
        rise = abs(self.levels[1] - self.levels[0])
        return self.centre[0] * self.path_length + self.side * self.radius * rise

    def distance_at(self, levels: Floats) -> Floats:
        """Distance u from the axis at levels within the piece. [m]"""
        rise = levels - (self.centre[1] - self.radius)
        half_chord = np.sqrt(np.maximum(rise * (2.0 * self.radius - rise), 0.0))
        return self.centre[0] + self.side * half_chord

    def area_below(self, level: float) -> float:
        """Integral of u over z from the lower end to a level. [m2]"""
        low, high = sorted(self.levels)
        top = min(max(level, low), high)
        return self.centre[0] * (top - low) + self.side * self._segment(low, top)

    def square_below(self, level: float) -> float:
        """Integral of u squared over z from the lower end to a level. [m3]"""
        low, high = sorted(self.levels)
        top = min(max(level, low), high)
        pole = self.centre[1] - self.radius
        p, q = low - pole, top - pole
        ball = (q - p) * (self.radius * (p + q) - (p * p + p * q + q * q) / 3.0)
        swept = 2.0 * self.centre[0] * self.side * self._segment(low, top)
        return self.centre[0] ** 2 * (top - low) + swept + ball

    def _segment(self, low: float, top: float) -> float:
        """Area of the half disc between two levels. [m2]"""
        angles = (2.0 * self._angle(low), 2.0 * self._angle(top))
        return 0.25 * self.radius**2 * (_excess(angles[1]) - _excess(angles[0]))

    def nearest(self, u: Floats, z: Floats) -> Floats:
        """Distance of points from the piece. [m]"""
        across, up = u - self.centre[0], z - self.centre[1]
        angle = np.arctan2(self.side * across, -up)
        low, high = sorted((self._angle(self.levels[0]), self._angle(self.levels[1])))
        beside = (angle >= low) & (angle <= high)
        to_start = np.hypot(u - self.start[0], z - self.start[1])
        to_end = np.hypot(u - self.end[0], z - self.end[1])
        return np.where(
            beside, np.abs(np.hypot(across, up) - self.radius), np.minimum(to_start, to_end)
        )

    def points(self, spacing: float) -> Floats:
        """Points from start to end, both included, at most `spacing` apart. (n, 2) [m]"""
        found = self._at_angle(self._angles(spacing / self.radius))
        found[0], found[-1] = self.start, self.end
        return found

    def _angles(self, step: float) -> Floats:
        """Angles from start to end, the widest place among them, at most `step` apart."""
        first, last = (self._angle(level) for level in self.levels)
        low, high = min(first, last), max(first, last)
        stops = [first, 0.5 * math.pi, last] if low < 0.5 * math.pi < high else [first, last]
        runs = [
            np.linspace(a, b, counted(abs(b - a), step) + 1)
            for a, b in zip(stops, stops[1:], strict=False)
        ]
        return np.concatenate([runs[0], *(run[1:] for run in runs[1:])])

    def drawn(self) -> Floats:
        """Points from start to end that draw the piece within the chord error. (n, 2) [m]"""
        sagitta = min(CHORD_ERROR, 0.01 * self.radius)
        step = 2.0 * math.acos(1.0 - sagitta / self.radius)
        return self.points(self.radius * step)

    def scaled(self, factor: float) -> Arc:
        """Similar piece, every length multiplied."""
        return Arc(
            centre=(self.centre[0] * factor, self.centre[1] * factor),
            radius=self.radius * factor,
            side=self.side,
            levels=(self.levels[0] * factor, self.levels[1] * factor),
        )


def _excess(angle: float) -> float:
    """Return angle - sin(angle), without loss of digits where both are small."""
    if angle > 1.0:
        return angle - math.sin(angle)
    square, term, total, order = angle * angle, angle**3 / 6.0, 0.0, 3
    while abs(term) > 1e-18 * abs(total):
        total += term
        term *= -square / ((order + 1) * (order + 2))
        order += 2
    return total
